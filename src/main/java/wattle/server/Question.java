package wattle.server;

import java.nio.file.Path;
import org.eclipse.lsp4j.Position;
import wattle.finding.Source;
import wattle.syntax.PlanTree;

/**
 * What is asked about: a document, in the plan that it is part of.
 *
 * @param lines positions in that document
 */
record Question(Analysis analysis, Path file, PlanTree tree, LineIndex lines) {
  Source source() {
    return tree.source();
  }

  int offset(Position position) {
    return lines.offset(position);
  }
}
