package wattle.server;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;

/** From a name to where its thing is made, and to all places that speak of it. */
final class References {
  private References() {}

  private static Optional<Occurrence> at(Question question, Position position) {
    return question.analysis().derived().nameAt(question.source(), question.offset(position));
  }

  /** Where the thing at a position is made: in the plan, or in the standard library as text. */
  static List<Location> definition(Question question, Position position, LibraryTexts library) {
    return at(question, position)
        .flatMap(
            name -> question
                .analysis()
                .derived()
                .declaration(name.thing())
                .flatMap(d -> question.analysis().location(d.span()))
                .or(() -> library.find(name.thing(), question.analysis().compilation().library())))
        .or(() -> usedFile(question, position))
        .map(List::of)
        .orElse(List.of());
  }

  /** The file that a {@code use} line at a position names. */
  private static Optional<Location> usedFile(Question question, Position position) {
    int offset = question.offset(position);
    return question.tree().items().stream()
        .filter(i -> i instanceof wattle.syntax.Tree.Use use && use.quoted() && question.touches(use, offset, offset))
        .map(i -> question.file().resolveSibling(((wattle.syntax.Tree.Use) i).target().text()).normalize())
        .filter(question.analysis().files()::containsKey)
        .map(f -> new Location(question.analysis().buffers().uri(f), question.analysis().lines(f).range(0, 0)))
        .findFirst();
  }

  /** All places of the thing at a position, in every file of the plan. */
  static List<Location> references(Question question, Position position, boolean withDeclaration) {
    Analysis analysis = question.analysis();
    return at(question, position).stream()
        .flatMap(name -> analysis.derived().of(name.thing()).stream())
        .filter(o -> withDeclaration || !o.declares())
        .flatMap(o -> analysis.location(o.span()).stream())
        .toList();
  }

  /** The same in one document, to be lit up. */
  static List<DocumentHighlight> highlights(Question question, Position position) {
    return at(question, position).stream()
        .flatMap(name -> question.analysis().derived().of(name.thing()).stream())
        .filter(o -> o.span().source() == question.source())
        .map(
            o -> new DocumentHighlight(
                question.lines().range(o.span()), o.declares() ? DocumentHighlightKind.Write : DocumentHighlightKind.Read))
        .toList();
  }
}
