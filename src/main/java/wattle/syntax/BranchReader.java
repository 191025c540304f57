package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import wattle.finding.Span;
import wattle.syntax.grammar.WattleParser.*;

/** Reads branches and the raceways they go through. */
final class BranchReader {
  private final Pieces pieces;

  BranchReader(Pieces pieces) {
    this.pieces = pieces;
  }

  Optional<Tree.Item> branch(BranchContext context) {
    Optional<Tree.Wiring> wiring = Optional.empty();
    List<SurroundingsContext> surroundings = new ArrayList<>();
    Optional<Tree.Word> kind = Optional.empty();
    Optional<Tree.Status> status = Optional.empty();
    for (BranchItemContext item : context.branchItem()) {
      if (item.wiring() != null) {
        wiring = pieces.wiring(item.wiring());
      } else if (item.surroundings() != null) {
        surroundings.add(item.surroundings());
      } else if (item.status() != null) {
        status = pieces.status(item.status());
      } else {
        kind = pieces.word(item.word());
      }
    }
    Optional<Tree.Wiring> by = wiring;
    Optional<Tree.Word> is = kind;
    Optional<Tree.Status> stated = status;
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Branch(
                name, pieces.text(context.STRING()), by, pieces.surroundings(surroundings), is, stated,
                Pieces.each(context.chain(), this::chain), pieces.span(context)));
  }

  private Optional<Tree.Chain> chain(ChainContext context) {
    if (context.place().isEmpty()) {
      return Optional.empty();
    }
    Optional<Tree.Place> from = place(context.place(0));
    if (from.isEmpty()) {
      return Optional.empty();
    }
    List<Tree.Run> runs = new ArrayList<>();
    for (int i = 0; i < context.run().size() && i + 1 < context.place().size(); i++) {
      Optional<Tree.Place> to = place(context.place(i + 1));
      if (to.isEmpty()) {
        break; // the chain is broken here, and the parser has said so
      }
      runs.add(run(context.run(i), to.get()));
    }
    return Optional.of(new Tree.Chain(from.get(), runs, pieces.span(context)));
  }

  private Optional<Tree.Place> place(PlaceContext context) {
    Optional<Tree.Word> hot = Optional.empty();
    Optional<Tree.Word> wired = Optional.empty();
    for (PlaceItemContext item : context.placeItem()) {
      if (item.mark() != null) {
        hot = pieces.word(item.mark());
      } else if (item.exception == null) {
        wired = Optional.of(pieces.word(item.getStart()));
      }
    }
    Optional<Tree.Word> on = hot;
    Optional<Tree.Word> by = wired;
    Optional<Tree.Path> path = pieces.path(context.path());
    if (path.isEmpty() && Pieces.hasToken(context, "later")) {
      Tree.Word later = pieces.word(context.getStart());
      path = Optional.of(new Tree.Path(java.util.List.of(later), later.span()));
    }
    return path.map(p -> new Tree.Place(p, on, by, pieces.span(context)));
  }

  private Tree.Run run(RunContext context, Tree.Place to) {
    Optional<Tree.Wiring> wiring = Optional.empty();
    List<SurroundingsContext> surroundings = new ArrayList<>();
    Optional<Tree.Status> status = Optional.empty();
    for (RunItemContext item : context.runItem()) {
      if (item.wiring() != null) {
        wiring = pieces.wiring(item.wiring());
      } else if (item.surroundings() != null) {
        surroundings.add(item.surroundings());
      } else {
        status = pieces.status(item.status());
      }
    }
    RunLengthContext length = context.runLength();
    Span dashes = pieces.span(context);
    // A line end may follow the closing dashes; it is no part of the run.
    Token last = context.getStop();
    if (last != null && last.getText().isBlank()) {
      dashes = dashes.source().span(dashes.start(), dashes.start() + dashes.text().stripTrailing().length());
    }
    return new Tree.Run(
        length == null ? Optional.empty() : pieces.amount(length.amount()),
        length != null && length.amount() == null,
        wiring,
        pieces.surroundings(surroundings),
        status,
        dashes,
        to,
        dashes.to(to.span()));
  }

  Optional<Tree.Item> raceway(RacewayContext context) {
    Optional<Tree.RaceSize> size = Optional.empty();
    Optional<Tree.Expression> length = Optional.empty();
    List<SurroundingsContext> surroundings = new ArrayList<>();
    Optional<Tree.Status> status = Optional.empty();
    for (RacewayItemContext item : context.racewayItem()) {
      if (item.raceSize() != null) {
        size = pieces.raceSize(item.raceSize());
        length = pieces.amount(item.amount());
      } else if (item.surroundings() != null) {
        surroundings.add(item.surroundings());
      } else {
        status = pieces.status(item.status());
      }
    }
    Optional<Tree.RaceSize> by = size;
    Optional<Tree.Expression> along = length;
    Optional<Tree.Status> stated = status;
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Raceway(
                name, pieces.text(context.STRING()), by, along, pieces.surroundings(surroundings), stated,
                pieces.span(context)));
  }
}
