package wattle.bind;

import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.finding.Finding;
import wattle.model.DeviceKind;
import wattle.motors.LockedRotor;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.syntax.Tree;

/** Findings about words that mean something of a motor alone, and about a code letter that says nothing. */
final class MotorWords {
  private static final Set<String> FIGURES = Set.of(LockedRotor.FIGURE, "overload", "service-factor", "temperature-rise");
  private static final Set<String> TRAITS = Set.of("thermally-protected", "no thermally-protected");

  private MotorWords() {}

  static void check(
      Scope scope, Tree.Device device, DeviceKind kind, Set<String> traits, Map<String, Quantity> loads, Map<String, Quantity> facts) {
    List<String> letters = traits.stream().filter(t -> t.startsWith(LockedRotor.CODE_LETTER)).sorted().toList();
    if (!kind.motor()) {
      facts.keySet().stream().filter(FIGURES::contains).sorted().findFirst()
          .or(() -> letters.stream().findFirst())
          .or(() -> traits.stream().filter(TRAITS::contains).findFirst())
          .ifPresent(
              word -> scope.report(
                  Finding.error("word-of-motor", "'" + word + "' means nothing of a " + kind.name())
                      .at(device.name().span(), "a " + kind.name() + " has no motor")
                      .fix("take it out, or write a kind that has a motor")));
      return;
    }
    if (letters.size() > 1) {
      scope.report(
          Finding.error("code-letters-several", "'" + device.name() + "' has code letters " + String.join(" and ", letters))
              .at(device.name().span(), "a nameplate has one")
              .because("The first of them was taken.")
              .fix("take out all but the letter that its nameplate has for the speed at which it starts"));
    }
    boolean horsepower = loads.values().stream().anyMatch(q -> q.unit().equals(Units.HORSEPOWER));
    if (!letters.isEmpty() && !horsepower) {
      scope.report(
          Finding.error("code-letter-without-horsepower", "'" + device.name() + "' has a code letter and no horsepower")
              .at(device.name().span(), letters.get(0))
              .because("A code letter stands for so many kVA for each horsepower (NFPA 70 table 430.7(B)); without it the current at the"
                  + " start is not known.")
              .fix("write its horsepower, such as 2 hp, or locked-rotor and the amperes of its nameplate (LRA)"));
    }
  }
}
