package wattle.rules;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Section;
import wattle.model.Wiring;

/** The outlet at the end of a home run, and what the home run is made with: what NFPA 70 210.12(A) and (E) turn on. */
final class FirstOutlet {
  private static final Set<String> METAL = Set.of("RMC", "IMC", "EMT");
  private static final Set<String> ARMORED = Set.of("MC", "AC", "AC90");

  private FirstOutlet() {}

  /** The device of some sort that the branch comes to before all others of it; absent where a fork leads past it. */
  static Optional<Device> of(Facts facts, Branch branch, Predicate<Device> sort) {
    List<Device> found = facts.devicesOf(branch).stream().filter(sort).toList();
    return found.stream().filter(d -> found.stream().allMatch(other -> other == d || isBefore(facts, branch, d, other))).findFirst();
  }

  private static boolean isBefore(Facts facts, Branch branch, Device first, Device other) {
    int at = facts.pointIndexOf(first);
    return facts.pointIndexOf(other) == at || Facts.wayTo(branch, facts.pointIndexOf(other)).stream().anyMatch(s -> s.from() == at);
  }

  /** Whether each run up to the first outlet is in metal; null where there is no first outlet. */
  static Boolean isArmored(Facts facts, Branch branch) {
    Optional<Device> first = of(facts, branch, d -> d.kind().outlet());
    return first.map(d -> Facts.wayTo(branch, facts.pointIndexOf(d)).stream().map(Section::wiring).allMatch(FirstOutlet::isMetal))
        .orElse(null);
  }

  private static boolean isMetal(Wiring wiring) {
    return wiring.raceway().map(r -> METAL.contains(r.toUpperCase(Locale.ROOT))).orElseGet(() -> ARMORED.contains(wiring.type()));
  }
}
