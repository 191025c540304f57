package wattle.conductors;

import wattle.derivation.Derivation;
import wattle.model.Metal;
import wattle.quantity.WireSize;

/**
 * What decides how much current a conductor may carry.
 *
 * @param insulationCelsius temperature rating of its insulation
 * @param useCelsius column of the ampacity table that its use is held to; equals the former where nothing lowers it
 * @param ambient the air around it
 * @param together how many current-carrying conductors lie together
 * @param sets how many alike share the current in parallel; usually 1
 */
public record Conditions(
    WireSize size,
    Metal metal,
    double insulationCelsius,
    double useCelsius,
    Derivation ambient,
    Derivation together,
    int sets) {
  /** Of a conductor that has the current to itself. */
  public Conditions(
      WireSize size, Metal metal, double insulationCelsius, double useCelsius, Derivation ambient, Derivation together) {
    this(size, metal, insulationCelsius, useCelsius, ambient, together, 1);
  }

  /** Of the figures alone, without how they were come by: it is asked for at every run of a house. */
  @Override
  public int hashCode() {
    int hash = 31 * size.hashCode() + metal.hashCode();
    hash = 31 * hash + Double.hashCode(insulationCelsius);
    hash = 31 * hash + Double.hashCode(useCelsius);
    hash = 31 * hash + Double.hashCode(ambient.si());
    return 31 * (31 * hash + Double.hashCode(together.si())) + sets;
  }

  /** The same for another size. */
  public Conditions with(WireSize other) {
    return new Conditions(other, metal, insulationCelsius, useCelsius, ambient, together, sets);
  }

  /** As in {@code 12 AWG copper} or {@code 3 × 350 kcmil copper}. */
  public String conductor() {
    return (sets > 1 ? sets + " × " : "") + size + " " + metal.word();
  }
}
