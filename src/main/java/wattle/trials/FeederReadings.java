package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Reads what the feeders of panels carry, and what is left of the voltage at their ends. */
final class FeederReadings {
  private FeederReadings() {}

  static List<TrialResult.FeederReading> list(TrialResult result) {
    List<TrialResult.FeederReading> readings = new ArrayList<>();
    for (Panel panel : result.house().panels().values()) {
      HouseNetwork.PanelBox box = result.network().panels().get(panel.name());
      if (box != null && panel.feeder().isPresent()) {
        reading(result, panel, box).ifPresent(readings::add);
      }
    }
    return readings;
  }

  private static Optional<TrialResult.FeederReading> reading(TrialResult result, Panel panel, HouseNetwork.PanelBox box) {
    List<HouseNetwork.Conductor> own = result.network().conductors().stream().filter(c -> c.panel().equals(Optional.of(panel.name())))
        .toList();
    Optional<Derivation> most = own.stream().filter(c -> c.kind() == HouseNetwork.Kind.HOT).map(result.figures()::amps)
        .max(Comparator.comparingDouble(Derivation::si));
    if (most.isEmpty()) {
      return Optional.empty();
    }
    Optional<Derivation> neutral = own.stream().filter(c -> c.kind() == HouseNetwork.Kind.NEUTRAL).map(result.figures()::amps).findFirst();
    boolean lines = box.legs().length > 1;
    double nominal = lines ? panel.system().legToLegVolts() : panel.system().legToNeutralVolts();
    Pair pair = worst(result, panel, box);
    String of = lines ? "between legs at panel " : "at panel ";
    Derivation rated = Derivation.stated("nominal voltage of panel " + panel.name(), "U_n", Quantity.of(nominal, Units.VOLT));
    Derivation volts = Figures.solved("voltage " + of + panel.name(), pair.volts, Units.VOLT,
        lines ? "Of the pair of legs with the lowest voltage." : "");
    return Optional.of(
        new TrialResult.FeederReading(panel.name(), from(panel), most.get(), neutral, rated, volts,
            share("voltage fall up to panel " + panel.name(), "(U_n − U) / U_n", nominal - pair.volts, nominal, List.of(rated, volts)),
            share("voltage lost on the feeder of panel " + panel.name(), "(U_0 − U) / U_n", pair.before - pair.volts, nominal,
                List.of(rated, volts,
                    Figures.solved("voltage at the other end of the feeder of " + panel.name(), pair.before, Units.VOLT, "")
                        .named("voltage at the other end of the feeder of " + panel.name(), "U_0")))));
  }

  /** Volts at the panel, and between the same conductors where its feeder begins. */
  private record Pair(double volts, double before) {}

  private static Pair worst(TrialResult result, Panel panel, HouseNetwork.PanelBox box) {
    Optional<HouseNetwork.PanelBox> above = panel.supply() instanceof PanelSupply.FromBreaker from
        ? Optional.ofNullable(result.network().panels().get(from.breaker().panel()))
        : panel.supply() instanceof PanelSupply.FromService service
            ? Optional.ofNullable(result.network().entrances().get(service.service()))
            : Optional.empty();
    List<wattle.model.Leg> upper = panel.supply() instanceof PanelSupply.FromBreaker from
        ? result.house().panels().get(from.breaker().panel()).legs()
        : panel.system().legs();
    Pair worst = null;
    int legs = box.legs().length;
    for (int i = 0; i < legs; i++) {
      int other = legs == 1 ? box.neutral() : box.legs()[(i + 1) % legs];
      double volts = result.solution().volts(box.box(), box.legs()[i], other).magnitude();
      double before = volts;
      if (above.isPresent()) {
        int one = upper.indexOf(panel.legs().get(i));
        int two = legs == 1 ? -1 : upper.indexOf(panel.legs().get((i + 1) % legs));
        if (one >= 0 && (legs == 1 || two >= 0)) {
          HouseNetwork.PanelBox at = above.get();
          before = result.solution().volts(at.box(), at.legs()[one], legs == 1 ? at.neutral() : at.legs()[two]).magnitude();
        }
      }
      worst = worst == null || volts < worst.volts ? new Pair(volts, before) : worst;
    }
    return worst;
  }

  private static String from(Panel panel) {
    return panel.supply() instanceof PanelSupply.FromBreaker from
        ? from.breaker().toString()
        : panel.supply() instanceof PanelSupply.FromService service ? service.service() : "";
  }

  private static Derivation share(String name, String formula, double part, double whole, List<Derivation> inputs) {
    return Derivation.computed(name, "", formula, new Value.Amount(new Quantity(part / whole, Units.PERCENT)), inputs);
  }
}
