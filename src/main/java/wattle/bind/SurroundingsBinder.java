package wattle.bind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.model.Surroundings;
import wattle.model.Words;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Where a run goes; what a run says of itself is laid over what its branch says. */
final class SurroundingsBinder {
  private final Scope scope;

  SurroundingsBinder(Scope scope) {
    this.scope = scope;
  }

  Surroundings bind(List<Tree.Surroundings> written, Surroundings base) {
    if (written.isEmpty()) {
      return base;
    }
    Optional<String> place = base.place();
    Optional<Quantity> ambient = base.ambient();
    int bundled = base.bundledWith();
    List<String> raceways = base.raceways();
    Optional<Quantity> buried = base.buried();
    Optional<Quantity> supported = base.supported();
    Optional<Quantity> held = base.held();
    Optional<Quantity> fromEdge = base.fromEdge();
    boolean nailPlated = base.nailPlated();
    boolean underground = base.underground();
    for (Tree.Surroundings each : written) {
      if (each instanceof Tree.InPlace in) {
        place = scope.word(Words.RUN_PLACES, in.place()).or(() -> base.place());
        if (in.temperature().isPresent()) {
          ambient = scope.evaluator().valueOf(in.temperature().get(), Dimension.TEMPERATURE, "the ambient");
        }
      } else if (each instanceof Tree.Bundled together) {
        bundled = scope.evaluator().countOf(together.count(), "the number of cables in a bundle", 1, 200).orElse(bundled);
      } else if (each instanceof Tree.Through through) {
        raceways = new ArrayList<>(through.raceways().stream().map(Tree.Word::text).toList());
      } else if (each instanceof Tree.Buried depth) {
        underground = true;
        if (depth.depth().isPresent()) {
          buried = scope.evaluator().valueOf(depth.depth().get(), Dimension.LENGTH, "the depth of a run");
        }
      } else if (each instanceof Tree.Supported apart) {
        supported = scope.evaluator().valueOf(apart.apart(), Dimension.LENGTH, "the distance between supports");
      } else if (each instanceof Tree.Held from) {
        held = scope.evaluator().valueOf(from.fromBox(), Dimension.LENGTH, "the distance of a support from a box");
      } else if (each instanceof Tree.FromEdge edge) {
        fromEdge = scope.evaluator().valueOf(edge.distance(), Dimension.LENGTH, "the distance from the edge of the framing");
      } else if (each instanceof Tree.NailPlated) {
        nailPlated = true;
      } else {
        throw new AssertionError(each);
      }
    }
    return new Surroundings(place, ambient, bundled, raceways, buried, supported, held, fromEdge, nailPlated, underground);
  }
}
