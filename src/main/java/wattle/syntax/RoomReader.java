package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.syntax.grammar.WattleParser.*;

/** Reads rooms, boxes and devices. */
final class RoomReader {
  private final Pieces pieces;

  RoomReader(Pieces pieces) {
    this.pieces = pieces;
  }

  Optional<Tree.Item> room(RoomContext context) {
    Optional<Tree.Word> kind = Optional.empty();
    List<Tree.Fact> facts = new ArrayList<>();
    Optional<Tree.Status> status = Optional.empty();
    for (RoomItemContext item : context.roomItem()) {
      if (item.status() != null) {
        status = pieces.status(item.status());
      } else if (item.amount() != null) {
        pieces
            .word(item.word())
            .ifPresent(
                name -> facts.add(
                    new Tree.Fact(name, false, pieces.amount(item.amount()), Optional.empty(), pieces.span(item))));
      } else if (item.WORD() != null) {
        facts.add(
            new Tree.Fact(
                pieces.word(item.WORD().getSymbol()), Pieces.hasToken(item, "no"), Optional.empty(), Optional.empty(),
                pieces.span(item)));
      } else {
        kind = pieces.word(item.word());
      }
    }
    Optional<Tree.Word> is = kind;
    Optional<Tree.Status> stated = status;
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Room(
                name, pieces.text(context.STRING()), is, facts, stated, Pieces.each(context.box(), this::box),
                Pieces.each(context.device(), this::device), pieces.span(context)));
  }

  private Optional<Tree.Box> box(BoxContext context) {
    Optional<Integer> gangs = Optional.empty();
    List<Tree.Expression> amounts = new ArrayList<>();
    List<Tree.Word> words = new ArrayList<>();
    Optional<Tree.Status> status = Optional.empty();
    for (BoxItemContext item : context.boxItem()) {
      if (item.NUMBER() != null) {
        gangs = Optional.of((int) Pieces.number(item.NUMBER()));
      } else if (item.amount() != null) {
        pieces.amount(item.amount()).ifPresent(amounts::add);
      } else if (item.status() != null) {
        status = pieces.status(item.status());
      } else {
        pieces.word(item.word()).ifPresent(words::add);
      }
    }
    Optional<Integer> counted = gangs;
    Optional<Tree.Status> stated = status;
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Box(
                name, counted, amounts, words, stated, Pieces.each(context.device(), this::device),
                pieces.span(context)));
  }

  private Optional<Tree.Device> device(DeviceContext context) {
    List<Tree.Word> words = new ArrayList<>();
    List<Tree.DeviceAmount> amounts = new ArrayList<>();
    List<Tree.Path> controls = new ArrayList<>();
    Optional<Tree.Word> at = Optional.empty();
    Optional<Tree.Word> hot = Optional.empty();
    Optional<Tree.Status> status = Optional.empty();
    Optional<Tree.Text> label = Optional.empty();
    Optional<Tree.Terminals> terminals = Optional.empty();
    Optional<Tree.Word> before = Optional.empty();
    for (DeviceItemContext item : context.deviceItem()) {
      Optional<Tree.Word> previous = before;
      before = Optional.empty();
      if (item.amount() != null) {
        pieces.amount(item.amount()).ifPresent(value -> amounts.add(new Tree.DeviceAmount(previous, value)));
      } else if (item.terminals() != null) {
        terminals = pieces.terminals(item.terminals());
      } else if (item.status() != null) {
        status = pieces.status(item.status());
      } else if (item.STRING() != null) {
        label = pieces.text(item.STRING());
      } else if (Pieces.hasToken(item, "for")) {
        controls.addAll(Pieces.each(item.path(), pieces::path));
      } else if (Pieces.hasToken(item, "at")) {
        at = pieces.word(item.word());
      } else if (Pieces.hasToken(item, "on")) {
        hot = pieces.word(item.mark());
      } else {
        before = item.word() == null ? pieces.word(item.breakerTrait()) : pieces.word(item.word());
        before.ifPresent(words::add);
      }
    }
    Optional<Tree.Word> place = at;
    Optional<Tree.Word> on = hot;
    Optional<Tree.Terminals> marked = terminals;
    Optional<Tree.Status> stated = status;
    Optional<Tree.Text> named = label;
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Device(
                name, words, amounts, controls, place, on, marked, stated, named, pieces.span(context)));
  }
}
