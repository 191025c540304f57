package wattle.server;

import java.nio.file.Path;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

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

  /** A span of the document, as the editor counts. */
  Range range(Span span) {
    return lines.range(analysis.placed(span));
  }

  /** Whether some of a tree of the document stands between two offsets. */
  boolean touches(Tree tree, int from, int to) {
    Span span = analysis.placed(tree.span());
    return span.start() <= to && span.end() >= from;
  }

  /** An offset of the document, counted as the spans of an item count that stands there. */
  int within(Tree.Item item, int offset) {
    return offset - analysis.placed(item.span()).start() + item.span().start();
  }
}
