package wattle.server;

import java.util.Optional;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.library.CableKind;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.syntax.Tree;

/** What there is to know of the size of a cable: its conductors and what they carry. */
final class CableSizePages {
  /** At which the ampacities of the tables hold, °C. */
  private static final double USUAL_CELSIUS = 30;

  private CableSizePages() {}

  /** Absent where the type is unknown, or where the sizes are listed one by one. */
  static Optional<Page> of(Tree.CableWiring wiring, Analysis analysis) {
    Optional<CableKind> kind = wiring.type().flatMap(t -> analysis.compilation().library().cable(t.text()));
    if (kind.isEmpty() || wiring.sizes().size() != 1 || wiring.sizes().get(0).unit().isPresent()) {
      return Optional.empty();
    }
    String[] written = wiring.sizes().get(0).span().text().split("/");
    boolean aught = written.length > 1 && written[1].equals("0");
    String size = aught ? written[0] + "/0" : written[0];
    Optional<String> count = written.length > (aught ? 2 : 1) ? Optional.of(written[aught ? 2 : 1]) : Optional.empty();
    return WireSize.parse(size).map(s -> page(wiring, kind.get(), s, count, analysis));
  }

  private static Page page(Tree.CableWiring wiring, CableKind kind, WireSize size, Optional<String> count, Analysis analysis) {
    Page page = new Page().title(wiring.span().text(), kind.label());
    String metal = wiring.metal().map(m -> m.text().equals("Al") ? "aluminum" : "copper").orElse(kind.metal().word());
    count.ifPresent(n -> page.line(n + " insulated conductors of " + size + " " + metal
        + (wiring.withoutGround() ? ", without a ground" : "")));
    double use = Math.min(kind.ampacityCelsius(), kind.insulationCelsius());
    Derivation air = Derivation.assumed("ambient", "T_a", Quantity.of(USUAL_CELSIUS, Units.CELSIUS));
    Derivation together = Derivation.assumed("conductors together", "n", Quantity.of(3, Units.ONE));
    Conditions conditions = new Conditions(
        size, metal.equals("aluminum") ? wattle.model.Metal.ALUMINUM : wattle.model.Metal.COPPER, kind.insulationCelsius(), use, air,
        together);
    analysis.compilation().figures().conductors().ampacities().of(conditions)
        .ifPresent(a -> page.line("good for " + Quantity.plain(a.amperes(), 3) + " A at "
            + analysis.house().units().known(Quantity.of(USUAL_CELSIUS, Units.CELSIUS)) + ", not bundled; breakers of small wire have "
            + "their own limits"));
    return page;
  }
}
