package wattle.server;

import java.nio.file.Path;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import wattle.finding.Source;
import wattle.finding.Span;
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

  /** Where a span of the plan's own files lies, as the editor names the file. */
  java.util.Optional<Location> location(Span span) {
    return analysis
        .fileOf(span)
        .map(path -> new Location(analysis.buffers().uri(path), analysis.lines().get(path).range(span)));
  }
}
