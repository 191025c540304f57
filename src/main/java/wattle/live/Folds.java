package wattle.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.DerivationUnits;
import wattle.emit.document.report.LinkedSteps;
import wattle.quantity.UnitSystem;

/** Figures that were shown, to be told one by one when a reader opens them: all of them at once would be most of a page. */
final class Folds {
  private final List<Derivation> figures = new ArrayList<>();
  private final LinkedSteps unfolding = new LinkedSteps();
  private final DerivationUnits units;

  /** @param units in which figures are told */
  Folds(UnitSystem units) {
    this.units = new DerivationUnits(units);
  }

  /** The empty place for how a figure was come by; pages ask for it by its number. */
  String place(Derivation figure) {
    figures.add(figure);
    return "<div class=\"fold\" data-figure=\"" + (figures.size() - 1) + "\"></div>";
  }

  /** How a figure was come by; absent for a number that no figure has. */
  synchronized Optional<String> figure(int number) {
    return number >= 0 && number < figures.size() ? Optional.of(unfolding.body(units.shown(figures.get(number)))) : Optional.empty();
  }

  /** A step that was linked to in what was told before. */
  synchronized Optional<String> step(int number) {
    return unfolding.told(number);
  }
}
