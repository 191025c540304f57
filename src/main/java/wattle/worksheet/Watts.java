package wattle.worksheet;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Units;

/** A calculation by a code that counts watts: the same figures and all that they rest on, in watts. */
final class Watts {
  private final Map<Derivation, Derivation> done = new IdentityHashMap<>();

  Derivation of(Derivation derivation) {
    Derivation known = done.get(derivation);
    if (known != null) {
      return known;
    }
    List<Derivation> inputs = derivation.inputs().stream().map(this::of).toList();
    Value value = derivation.value() instanceof Value.Amount amount && amount.quantity().unit().equals(Units.VOLT_AMPERE)
        ? new Value.Amount(amount.quantity().shownIn(Units.WATT))
        : derivation.value();
    Derivation made = new Derivation(
        derivation.name(), derivation.symbol(), value, derivation.basis(), derivation.formula(), inputs, derivation.sources(),
        derivation.remark());
    done.put(derivation, made);
    return made;
  }

  Optional<Derivation> of(Optional<Derivation> derivation) {
    return derivation.map(this::of);
  }

  Line of(Line line) {
    return new Line(
        line.name(), line.article(), of(line.connected()), of(line.factor()), of(line.result()), line.runningSum(), line.devices(),
        line.remark());
  }
}
