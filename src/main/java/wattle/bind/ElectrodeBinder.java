package wattle.bind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.model.Electrode;
import wattle.model.Origin;
import wattle.model.Status;
import wattle.model.Words;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Electrodes of a service, or of a panel in another building. */
final class ElectrodeBinder {
  private ElectrodeBinder() {}

  /** @param usual their status where a line says none */
  static List<Electrode> bind(List<Tree.Earth> earths, Status usual, WiringBinder wirings, Scope scope) {
    List<Electrode> electrodes = new ArrayList<>();
    for (Tree.Earth earth : earths) {
      Optional<Quantity> resistance = Optional.empty();
      for (Tree.Expression amount : earth.amounts()) {
        Optional<Quantity> value = scope.evaluator().valueOf(amount, Dimension.RESISTANCE, "the resistance of an electrode");
        if (value.isPresent() && resistance.isPresent()) {
          scope.reportSecond(amount, "the resistance of an electrode", resistance.get());
        }
        resistance = resistance.or(() -> value);
      }
      Optional<String> kind = scope.word(Words.ELECTRODES, earth.electrode());
      if (kind.isEmpty()) {
        continue;
      }
      electrodes.add(
          new Electrode(
              kind.get(),
              earth.wiring().flatMap(wirings::bind),
              resistance,
              Scope.status(earth.status(), usual),
              new Origin(earth.electrode().span(), earth.span())));
    }
    return electrodes;
  }
}
