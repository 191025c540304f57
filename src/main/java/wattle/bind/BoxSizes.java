package wattle.bind;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.derivation.Derivation;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
import wattle.library.Key;
import wattle.library.Table;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** How much a box holds: the volume that is written, or that of the trade size whose sides are, by the table of the code. */
final class BoxSizes {
  private static final int SIDES = 3;

  private final Scope scope;

  BoxSizes(Scope scope) {
    this.scope = scope;
  }

  /**
   * The volume of a box.
   *
   * @param amounts every figure that is said of its size
   * @param traits what is said of its shape, such as {@code square}
   * @param gangs of a masonry, FS or FD box, whose volume is listed for each
   * @param at where a size is missed
   */
  Optional<Quantity> volume(List<Tree.Expression> amounts, Collection<String> traits, int gangs, Span at) {
    Optional<Quantity> volume = Optional.empty();
    List<Quantity> sides = new ArrayList<>();
    Optional<Span> written = Optional.empty();
    for (Tree.Expression amount : amounts) {
      Optional<Quantity> value = scope.evaluator().valueOf(amount);
      if (value.isEmpty()) {
        continue;
      }
      if (value.get().dimension().equals(Dimension.LENGTH)) {
        if (!scope.evaluator().isStatable(value.get(), amount, "a side of a box")) {
          continue;
        }
        sides.add(value.get());
        written = Optional.of(written.map(w -> w.to(amount.span())).orElse(amount.span()));
        continue;
      }
      if (volume.isPresent() && value.get().dimension().equals(Dimension.VOLUME)) {
        scope.reportSecond(amount, "the volume of a box", volume.get());
        continue;
      }
      volume = scope.evaluator().statedOf(amount, Dimension.VOLUME, "the size of a box");
    }
    if (sides.isEmpty()) {
      return volume.or(() -> ofCastBox(traits, gangs));
    }
    if (volume.isPresent()) {
      scope.report(
          Finding.error("said-twice", "the size of a box is stated twice")
              .at(written.orElse(at), "its sides, and its volume of " + volume.get() + " besides")
              .because("A box marked with a volume has that volume, whatever its sides.")
              .fix(written.isPresent()
                  ? Fix.takenOut("take out its sides, or its volume", written.get())
                  : Fix.of("take out its sides, or its volume")));
      return volume;
    }
    boolean each = traits.contains("masonry");
    return ofTradeSize(sides, shape(traits), written.orElse(at)).map(v -> each ? times(v, gangs) : v);
  }

  private static Quantity times(Quantity volume, int gangs) {
    return Quantity.of(volume.value() * gangs, volume.unit());
  }

  /** FS and FD boxes are known by their letters; those with several gangs have more room in each. */
  private Optional<Quantity> ofCastBox(Collection<String> traits, int gangs) {
    return Stream.of("FS", "FD").filter(traits::contains).findFirst().flatMap(letters -> {
      Derivation shape = Derivation.stated("shape", "", gangs > 1 ? letters + "-several" : letters);
      return scope.library().table("box-volume").flatMap(t -> t.find("volume of the box", "V", "volume", Key.is("shape", shape)))
          .flatMap(Derivation::quantity).map(v -> times(v, gangs));
    });
  }

  /** Round boxes share the lines of octagonal ones; a box that is neither is one for a device. */
  private static String shape(Collection<String> traits) {
    return traits.contains("masonry")
        ? "masonry"
        : traits.contains("square") ? "square" : traits.contains("octagon") || traits.contains("round") ? "octagon" : "device";
  }

  /** Two sides say a square or an octagonal box: how wide, and how deep. */
  private Optional<Quantity> ofTradeSize(List<Quantity> written, String shape, Span span) {
    List<Quantity> sides = written;
    if (written.size() == 2 && !shape.equals("device")) {
      sides = List.of(written.get(0), written.get(0), written.get(1));
    }
    Optional<Table> table = scope.library().table("box-volume");
    if (table.isPresent() && sides.size() == SIDES) {
      Optional<Derivation> found = table.get().find(
          "volume of the box", "V", "volume", Key.is("shape", Derivation.stated("shape", "", shape)),
          side("height", sides.get(0)), side("width", sides.get(1)), side("depth", sides.get(2)));
      if (found.isPresent()) {
        return found.get().quantity();
      }
    }
    scope.report(
        Finding.error("box-size-unknown", "a box of " + sides.stream().map(Quantity::toString).collect(Collectors.joining(" × "))
            + " is not a trade size")
            .at(span, "three sides of a box in the code's table, or a volume such as 18 in3, are expected here")
            .because(table.map(t -> "For " + shape + " boxes it has " + sizes(t, shape) + ".")
                .orElse("The plan names no code with a table of boxes."))
            .fix("write the volume that is marked inside the box, such as 18 in3"));
    return Optional.empty();
  }

  private static Key side(String column, Quantity length) {
    return Key.is(column, Derivation.stated(column, "", length));
  }

  private static String sizes(Table table, String shape) {
    return table.rows().stream()
        .filter(r -> r.cells().get(0).text().equals(shape))
        .map(r -> r.cells().stream().skip(1).limit(SIDES).map(c -> c.text().replace(" in", "")).collect(Collectors.joining(" × ")) + " in")
        .collect(Collectors.joining(", "));
  }
}
