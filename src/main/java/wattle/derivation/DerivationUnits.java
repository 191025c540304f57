package wattle.derivation;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/**
 * Derivations in the units of a plan, for people. Lengths, areas and what is measured for each of them change as one, so that
 * a sum still comes out: Ω/kft with ft. What a table says is told as the table has it and then in the reader's unit, and so
 * is every temperature, since formulas count in °C. Sizes of wire stay as the trade has them.
 *
 * <p>One is for the derivations of one page: a step that they share is shared when shown.
 */
public final class DerivationUnits {
  private final UnitSystem units;
  private final Map<Derivation, Derivation> shown = new IdentityHashMap<>();

  public DerivationUnits(UnitSystem units) {
    this.units = units;
  }

  /** The same figure, and all that it rests on, in the reader's units; itself where nothing changes. */
  public Derivation shown(Derivation derivation) {
    Derivation known = shown.get(derivation);
    if (known != null) {
      return known;
    }
    Value value = shown(derivation.value(), derivation.basis());
    List<Derivation> inputs = new ArrayList<>();
    boolean changed = value != derivation.value();
    for (Derivation input : derivation.inputs()) {
      Derivation converted = shown(input);
      inputs.add(converted);
      changed |= converted != input;
    }
    Derivation result = changed
        ? new Derivation(
            derivation.name(), derivation.symbol(), value, derivation.basis(), derivation.formula(), inputs, derivation.sources(),
            derivation.remark())
        : derivation;
    shown.put(derivation, result);
    return result;
  }

  private Value shown(Value value, Derivation.Basis basis) {
    if (value instanceof Value.Amount amount) {
      return shown(amount, basis == Derivation.Basis.LOOKED_UP);
    }
    if (value instanceof Value.Between between && converts(between.least().unit())) {
      return new Value.Between(units.shown(between.least()), units.shown(between.most()));
    }
    return value;
  }

  private Value shown(Value.Amount amount, boolean quoted) {
    Quantity own = amount.quantity();
    if (units == UnitSystem.CUSTOMARY && own.unit().equals(Units.FAHRENHEIT)) {
      return new Value.Converted(Quantity.of(own.in(Units.CELSIUS), Units.CELSIUS), own);
    }
    if (!converts(own.unit())) {
      return amount;
    }
    Quantity read = units.shown(own);
    return quoted || own.isLike(Dimension.TEMPERATURE) ? new Value.Converted(own, read) : new Value.Amount(read);
  }

  /** Millimeters are those of the diameters of wires, whose formulas have millimeters in them. */
  private boolean converts(Unit unit) {
    return !unit.equals(Units.MILLIMETER) && !units.shown(unit).equals(unit);
  }
}
