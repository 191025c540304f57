package wattle.trials;

import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Key;
import wattle.library.Library;
import wattle.model.Electrode;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Resistances that the plan leaves open and the earth's part of a trial rests on.
 *
 * @param supply of the transformer's neutral to far earth
 * @param body of a person who touches
 */
record EarthFigures(Library library, Derivation supply, Derivation body) {
  static EarthFigures of(Library library) {
    return new EarthFigures(
        library, limit(library, "supply-earth", "R_t", 5), limit(library, "body-resistance", "R_p", 1000));
  }

  private static Derivation limit(Library library, String name, String symbol, double usual) {
    return library
        .limit(name)
        .map(l -> l.derivation(symbol))
        .orElseGet(() -> Derivation.assumed(name, symbol, Quantity.of(usual, Units.OHM)));
  }

  /** Of an electrode to far earth: as stated, or as usual for its kind. */
  Derivation of(Electrode electrode) {
    return electrode
        .resistance()
        .filter(r -> r.si() > 0)
        .map(r -> Derivation.stated("resistance of " + electrode.kind(), "R_e", r))
        .or(() -> usual(electrode.kind()))
        .or(() -> usual("unstated"))
        .orElseGet(() -> Derivation.assumed("resistance of " + electrode.kind(), "R_e", Quantity.of(25, Units.OHM)));
  }

  private Optional<Derivation> usual(String kind) {
    return library
        .table("electrode-resistance")
        .flatMap(
            t -> t.find("resistance of " + kind, "R_e", "resistance", Key.is("kind", Derivation.stated("kind", "", kind))));
  }
}
