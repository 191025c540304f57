package wattle.rules;

import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import wattle.conductors.RacewayFill;
import wattle.conductors.Raceways;
import wattle.derivation.Derivation;
import wattle.model.Doubt;
import wattle.model.Race;
import wattle.model.Raceway;
import wattle.model.Wiring;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;

/** What rules may say of raceways with a name, and of the raceways of runs, feeders and services. */
final class RacewayProperties {
  private RacewayProperties() {}

  static Map<String, Property> raceway() {
    Properties<Raceway> properties = new Properties<>(Raceway.class, Doubt.WAY)
        .words("name", "its name", (f, r) -> Optional.of(r.name())).sure()
        .words("status", "new, existing or to-remove", (f, r) -> f.statusWord(r.status())).rests(Doubt.STATUS)
        .words("kind", "such as EMT", (f, r) -> r.race().map(Race::kind)).sure()
        .truth("added-to", "whether a new run or feeder passes through it", RacewayProperties::isAddedTo).rests(Doubt.WAY, Doubt.STATUS)
        .figure("length", Dimension.LENGTH, "from box to box", (f, r) -> r.length());
    return add(properties, (f, r) -> f.conductors().raceways().of(r), (f, r) -> f.conductors().raceways().fitting(r),
        (f, r) -> r.race().map(race -> !f.conductors().raceways().fills().isUnlisted(race)).orElse(null)).made();
  }

  private static boolean isAddedTo(Facts facts, Raceway raceway) {
    return facts.house().branches().values().stream().flatMap(b -> b.sections().stream())
        .anyMatch(s -> facts.isNew(s.status()) && s.surroundings().raceways().contains(raceway.name()))
        || facts.house().panels().values().stream().anyMatch(p -> facts.isNew(p.status())
            && p.feeder().filter(f -> f.surroundings().raceways().contains(raceway.name())).isPresent());
  }

  /** Adds what is said of the raceway of a run, a feeder or a service. */
  static <T> Properties<T> addTo(
      Properties<T> properties, BiFunction<Facts, T, Optional<Wiring>> wiring, BiFunction<Facts, T, Optional<Quantity>> length) {
    return add(
        properties,
        (f, t) -> wiring.apply(f, t).flatMap(w -> raceways(f).of(w, length.apply(f, t))),
        (f, t) -> wiring.apply(f, t).flatMap(w -> raceways(f).fitting(w, length.apply(f, t))),
        (f, t) -> wiring.apply(f, t).flatMap(Wiring::race).map(race -> !raceways(f).fills().isUnlisted(race)).orElse(null));
  }

  private static Raceways raceways(Facts facts) {
    return facts.conductors().raceways();
  }

  private static <T> Properties<T> add(
      Properties<T> properties, BiFunction<Facts, T, Optional<RacewayFill.Fill>> fill,
      BiFunction<Facts, T, Optional<Derivation>> fitting, BiFunction<Facts, T, Boolean> listed) {
    return properties
        .truth("raceway-overfilled", "whether the conductors overfill its raceway; not known for cables",
            (f, t) -> fill.apply(f, t).map(RacewayFill.Fill::over).orElse(null))
        .figure("raceway-fill", Dimension.NONE, "fill of its raceway",
            (f, t) -> fill.apply(f, t).flatMap(x -> x.fill().quantity()))
        .figure("raceway-most", Dimension.NONE, "allowed fill of its raceway",
            (f, t) -> fill.apply(f, t).flatMap(x -> x.most().quantity()))
        .words("raceway-sum", "the sum of the areas of the conductors in its raceway",
            (f, t) -> fill.apply(f, t).map(x -> x.needs().value().text() + " = " + x.needs().worked()))
        .figure("raceway-room", Dimension.AREA, "area inside its raceway that they may fill",
            (f, t) -> fill.apply(f, t).flatMap(x -> x.room().quantity()))
        .words("raceway-fitting", "smallest trade size of the kind that fits them",
            (f, t) -> fitting.apply(f, t).map(x -> x.value().text()))
        .truth("raceway-listed", "whether its raceway is made in that trade size; not known for a kind without a table", listed);
  }
}
