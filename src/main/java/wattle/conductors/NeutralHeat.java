package wattle.conductors;

import java.util.Comparator;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.House;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Wire;
import wattle.quantity.Units;

/**
 * How warm the neutral of a branch gets with a current that no breaker watches.
 *
 * @param section the run whose neutral gets warmest
 * @param neutral that neutral
 * @param ratedCelsius rating of its insulation
 * @param temperature absent where there is no steady one: it heats until something melts
 * @param heat of that conductor, for each meter; absent with the temperature
 */
public record NeutralHeat(
    Section section, Wire neutral, double ratedCelsius, Optional<Derivation> temperature, Optional<Derivation> heat) {

  /** Absent where the code has no figures for it, or the branch has no neutral. */
  public static Optional<NeutralHeat> of(House house, Library library, Branch branch, Derivation amperes) {
    RunConditions runs = new RunConditions(house, library);
    Ampacities ampacities = new Ampacities(library);
    Impedances impedances = new Impedances(library);
    return branch.sections().stream()
        .flatMap(s -> s.conductors().stream().filter(u -> u.role() instanceof Role.Neutral).findFirst().stream()
            .flatMap((ConductorUse u) -> of(s, u.wire(), runs.of(branch, s, u.wire()), ampacities, impedances, amperes).stream()))
        .max(Comparator.comparingDouble(NeutralHeat::above));
  }

  private static Optional<NeutralHeat> of(
      Section section, Wire wire, Optional<Conditions> conditions, Ampacities ampacities, Impedances impedances, Derivation amperes) {
    Optional<Ampacity> ampacity = conditions.flatMap(ampacities::of);
    Optional<Impedance> impedance = impedances.of(wire, section.wiring());
    if (ampacity.isEmpty() || impedance.isEmpty()) {
      return Optional.empty();
    }
    Conditions laid = conditions.get();
    Resistance resistance = impedance.get().resistance();
    Optional<Derivation> temperature = RunningTemperature.derive(amperes, ampacity.get(), laid, resistance);
    Optional<Derivation> heat = RunningTemperature.of(
        amperes.si(), ampacity.get().base().si() * ampacity.get().bundlingFactor().si(), laid.insulationCelsius(),
        laid.ambient().quantity().orElseThrow().in(Units.CELSIUS), resistance).map(t -> t.heat(amperes, resistance));
    return Optional.of(new NeutralHeat(section, wire, laid.insulationCelsius(), temperature, heat));
  }

  /** Kelvins above the rating of its insulation; without bound where there is no steady temperature. */
  double above() {
    return celsius().map(c -> c - ratedCelsius).orElse(Double.MAX_VALUE);
  }

  /** Of its metal; absent where there is no steady one. */
  public Optional<Double> celsius() {
    return temperature.map(t -> t.quantity().orElseThrow().in(Units.CELSIUS));
  }

  /** In a sentence, with its stop, as in {@code 12 AWG copper would settle near 160 °C; its insulation is rated 90 °C.} */
  public String sentence() {
    String conductor = neutral.size() + " " + neutral.metal().word();
    return conductor + celsius().map(c -> " would settle near " + Math.round(c / 5) * 5 + " °C").orElse(" would heat up until "
        + "something melts")
        + "; its insulation is rated " + Math.round(ratedCelsius) + " °C.";
  }
}
