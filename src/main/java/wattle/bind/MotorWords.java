package wattle.bind;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;
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

  /** Where a word stands in the line of a device, with what belongs to it: its figure, or the {@code no} before it. */
  private static Optional<Span> outOf(Tree.Device device, String word) {
    Optional<Span> figure = device.amounts().stream()
        .filter(a -> a.before().filter(b -> b.text().equals(word)).isPresent())
        .map(a -> a.before().orElseThrow().span().to(a.span()))
        .findFirst();
    return figure.isPresent()
        ? figure
        : device.words().stream().filter(w -> w.text().equals(word)).map(Tree.Word::span).findFirst();
  }

  static void check(
      Scope scope, Tree.Device device, DeviceKind kind, Set<String> traits, Map<String, Quantity> loads, Map<String, Quantity> facts) {
    List<String> letters = traits.stream().filter(t -> t.startsWith(LockedRotor.CODE_LETTER)).sorted().toList();
    if (!kind.motor()) {
      facts.keySet().stream().filter(FIGURES::contains).sorted().findFirst()
          .or(() -> letters.stream().findFirst())
          .or(() -> traits.stream().filter(TRAITS::contains).findFirst())
          .ifPresent(
              word -> scope.report(
                  Finding.error("word-of-motor", "'" + word + "' is not a word for a " + kind.name())
                      .at(device.name().span(), "a " + kind.name() + " has no motor")
                      .fix(outOf(device, word)
                          .map(span -> Fix.takenOut("delete it, or write a kind that has a motor", span))
                          .orElseGet(() -> Fix.of("delete it, or write a kind that has a motor")))));
      return;
    }
    if (letters.size() > 1) {
      Finding.Builder several = Finding
          .error("code-letters-several", "'" + device.name() + "' has code letters " + String.join(" and ", letters))
          .at(device.name().span(), "a nameplate has one")
          .because("The first one was used. The nameplate gives one for the speed at which the motor starts.");
      for (String kept : letters) {
        List<Edit> edits = device.words().stream()
            .filter(w -> letters.contains(w.text()) && !w.text().equals(kept))
            .flatMap(w -> Fix.takenOut("", w.span()).edits().stream())
            .toList();
        several.fix(new Fix("keep " + kept + " where the nameplate has it, and take out the rest", edits, Fix.Safety.OFFERED));
      }
      scope.report(several);
    }
    boolean horsepower = loads.values().stream().anyMatch(q -> q.unit().equals(Units.HORSEPOWER));
    if (!letters.isEmpty() && !horsepower) {
      scope.report(
          Finding.error("code-letter-without-horsepower", "'" + device.name() + "' has a code letter and no horsepower")
              .at(device.name().span(), letters.get(0))
              .because("A code letter means so many kVA for each horsepower (NFPA 70 table 430.7(B)); without it the current at the"
                  + " start is not known.")
              .fix("write its horsepower, such as 2 hp, or locked-rotor and the amperes of its nameplate (LRA)"));
    }
  }
}
