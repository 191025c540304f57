package wattle.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.CableKind;
import wattle.model.Metal;
import wattle.model.Stretch;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/**
 * What a feeder without a ground is run in to have one: not below what its breaker requires (NFPA 70 250.122, CSA C22.1 10-616), and thick
 * enough that no fault at its panel or behind it brings a finding that the house does not have as it is.
 *
 * <p>A cable has the ground that its type is made with, so that a thicker ground comes with thicker hots. Where no size of the type will
 * do, it is the thinnest that the code allows, and its objection is the one reported.
 */
final class GroundedFeeder {
  private static final String WITHOUT = " without ground";

  private GroundedFeeder() {}

  /** The wiring with its ground; absent for what has one, and for a cable that is not made with one. */
  static Optional<Wiring> of(Facts facts, FeederOf feeder) {
    List<Wiring> candidates = candidates(facts, feeder);
    return candidates.stream().filter(w -> stands(facts, feeder, w)).findFirst().or(() -> candidates.stream().findFirst());
  }

  private static List<Wiring> candidates(Facts facts, FeederOf feeder) {
    Wiring wiring = feeder.stretch().wiring();
    if (wiring.ground().isPresent()) {
      return List.of();
    }
    return (wiring.race().isPresent() ? inRaceway(facts, wiring) : ofCable(facts, wiring)).stream()
        .filter(w -> isByCode(facts, feeder, w)).toList();
  }

  private static boolean stands(Facts facts, FeederOf feeder, Wiring wiring) {
    Stretch as = feeder.stretch();
    return facts.standsWith(feeder.panel().isolated(new Stretch(as.length(), wiring, as.surroundings(), as.origin())));
  }

  /** What to do, in the imperative; without a size where none will do. */
  static String order(Facts facts, FeederOf feeder) {
    Optional<Wiring> grounded = of(facts, feeder).filter(w -> stands(facts, feeder, w));
    if (grounded.isEmpty()) {
      return "run a ground with its feeder";
    }
    WireSize size = grounded.get().ground().orElseThrow().size();
    return grounded.get().race().isPresent()
        ? "run a ground of " + size + " with its feeder"
        : "run its feeder in " + grounded.get().text() + ", with its ground of " + size;
  }

  private static boolean isByCode(Facts facts, FeederOf feeder, Wiring wiring) {
    Optional<Quantity> rating = SupplyProperties.supplyRating(facts, feeder.panel());
    Optional<WireSize> needed = SupplyProperties.sufficient(facts, feeder);
    if (rating.isEmpty() || needed.isEmpty()) {
      return false;
    }
    return LeastGround.enlarged(facts, wiring, Derivation.stated("rating", "I", rating.get()), needed.get())
        .filter(least -> wiring.ground().orElseThrow().size().compareTo(least) >= 0).isPresent();
  }

  /** Each size of the type that has a ground of its own, from the size of the hots up; thinnest first. */
  private static List<Wiring> ofCable(Facts facts, Wiring wiring) {
    Optional<CableKind> kind = facts.library().cable(wiring.type()).filter(k -> !k.ground().equals("none"));
    String size = wiring.hot().size().key();
    List<Wiring> made = new ArrayList<>();
    if (kind.isEmpty() || !wiring.text().endsWith(WITHOUT) || !wiring.text().startsWith(size)) {
      return made;
    }
    String behind = wiring.text().substring(size.length(), wiring.text().length() - WITHOUT.length());
    kind.get().groundSizes().entrySet().stream()
        .flatMap(e -> WireSize.parse(e.getKey()).stream().filter(s -> s.compareTo(wiring.hot().size()) >= 0).sorted()
            .flatMap(s -> WireSize.parse(e.getValue()).map(g -> with(wiring, s.key() + behind, s, g, kind.get())).stream()))
        .sorted((a, b) -> a.hot().size().compareTo(b.hot().size()))
        .forEach(made::add);
    boolean listed = kind.get().groundSizes().containsKey(size);
    if (!listed) { // a size that is not listed has a ground of its own size
      made.add(0, with(wiring, size + behind, wiring.hot().size(), wiring.hot().size(), kind.get()));
    }
    return made;
  }

  private static Wiring with(Wiring wiring, String text, WireSize size, WireSize ground, CableKind kind) {
    List<Wire> wires = new ArrayList<>();
    wiring.wires().forEach(w -> wires.add(new Wire(w.purpose(), size, w.metal(), w.color())));
    wires.add(new Wire(Wire.Purpose.GROUND, ground, wiring.hot().metal(), kind.ground().equals("bare") ? "bare" : "green"));
    return as(wiring, text, wires);
  }

  /** A ground of copper beside the conductors that are there; of several in parallel each set has one (NFPA 70 250.122(F)). */
  private static List<Wiring> inRaceway(Facts facts, Wiring wiring) {
    return facts.conductors().ampacities().sizes(Metal.COPPER).stream()
        .map(size -> {
          List<Wire> wires = new ArrayList<>(wiring.wires());
          wires.add(new Wire(Wire.Purpose.GROUND, size, Metal.COPPER, "green"));
          return as(wiring, wiring.text() + ", " + written(size) + " Cu ground", wires);
        })
        .toList();
  }

  /** As a plan writes a size before a metal. */
  private static String written(WireSize size) {
    return size.kind() == WireSize.Kind.AWG ? size.key() : size.toString();
  }

  private static Wiring as(Wiring wiring, String text, List<Wire> wires) {
    return new Wiring(text, wiring.type(), wiring.race(), wiring.insulationCelsius(), wires, wiring.sets(), wiring.origin());
  }
}
