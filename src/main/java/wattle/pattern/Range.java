package wattle.pattern;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** The numbers that a repetition goes through; none where it cannot be read, which is told. */
record Range(int from, int to) {
  private static final int LARGEST = 99_999_999;
  private static final Range NONE = new Range(1, 0);

  static Range of(Tree.Repetition repetition, Frame frame, PiecePlacer pieces) {
    OptionalInt from = bound(repetition.from(), frame, pieces);
    OptionalInt to = bound(repetition.to(), frame, pieces);
    if (from.isEmpty() || to.isEmpty()) {
      return NONE;
    }
    Range range = new Range(from.getAsInt(), to.getAsInt());
    if (range.to < range.from) {
      frame.ledger().report(
          Finding.error("repetition-empty", "a repetition from " + range.from + " to " + range.to + " places nothing")
              .at(frame.span(repetition.from().span().to(repetition.to().span())), "the first number is larger than the last")
              .fix(new Fix("write the smaller number first", List.of(
                  new Edit(frame.span(repetition.from().span()), repetition.to().span().text()),
                  new Edit(frame.span(repetition.to().span()), repetition.from().span().text())), Fix.Safety.OFFERED)));
      return NONE;
    }
    if (range.to - (long) range.from >= frame.ledger().most()) {
      TooMany.report(frame.ledger(), frame.span(repetition.span()));
      return NONE;
    }
    return range;
  }

  /**
   * The first of its numbers, where it goes through more than there can be of a thing; that is told.
   *
   * @param what there are so many of at most, as in {@code a panel has 400 slots}
   */
  Range atMost(int most, String what, Tree.Repetition repetition, Frame frame) {
    if (to - (long) from < most) {
      return this;
    }
    frame.ledger().report(
        Finding.error("count-out-of-range", "a repetition from " + from + " to " + to + " is too long")
            .at(frame.span(repetition.from().span().to(repetition.to().span())), what)
            .because("The lines after the first " + most + " were not read."));
    return new Range(from, from + most - 1);
  }

  private static OptionalInt bound(Tree.Expression written, Frame frame, PiecePlacer pieces) {
    Optional<Quantity> value = frame.ledger().evaluator().valueOf(pieces.expression(written));
    if (value.isEmpty()) {
      return OptionalInt.empty();
    }
    double number = value.get().si();
    if (value.get().dimension().equals(Dimension.NONE) && number > LARGEST) {
      TooMany.report(frame.ledger(), frame.span(written.span()));
      return OptionalInt.empty();
    }
    if (!value.get().dimension().equals(Dimension.NONE) || number != Math.rint(number) || number < 0) {
      frame.ledger().report(
          Finding.error("count-out-of-range", "a repetition cannot count to " + value.get())
              .at(frame.span(written.span()), "a whole number of 0 or more is expected here"));
      return OptionalInt.empty();
    }
    return OptionalInt.of((int) number);
  }

  List<Integer> numbers() {
    return IntStream.rangeClosed(from, to).boxed().toList();
  }
}
