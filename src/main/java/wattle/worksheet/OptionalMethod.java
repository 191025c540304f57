package wattle.worksheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.LoadClass;

/** The optional method of NFPA 70 220.82 for a dwelling on a service or feeder of 100 A or more. */
final class OptionalMethod implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    List<Objection> objections = new ArrayList<>(Conditions.single(inputs));
    objections.addAll(Conditions.whole(inputs));
    Derivation least = figures.limit("optional-least");
    if (inputs.rating().isPresent() && inputs.rating().get().si() < least.si()) {
      objections.add(
          Objection.error(
              "optional-below-100", inputs.name(),
              "'" + inputs.name() + "' is rated " + inputs.rating().get() + ", and the optional method starts at " + least.value().text(),
              "Its factor of 40 % comes from larger services and is too low for a small one.",
              "use the standard method, or enlarge '" + inputs.name() + "' to " + least.value().text()));
    }
    objections.addAll(Conditions.threeWires(inputs));
    return objections;
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Derivation general = OptionalGeneral.list(inputs, figures, load, "220.82(B)");
    List<String> devices = OptionalGeneral.devices(inputs, figures);
    load.list("subtotal, general loads", general, List.of(), "220.82(B)");
    for (Figures.Tier tier : figures.tiers("optional-demand", general)) {
      load.add("general loads, " + tier.name(), tier.part(), tier.factor(), devices);
    }
    addClimate(inputs, figures, load);
    new FarmLoads(inputs, figures).add(load, new Tally());
    return Capacity.of(
        method, inputs, figures, load, StandardMethod.neutral(inputs, figures),
        Optional.of(figures.limit("optional-least")));
  }

  /** One of the ways of heating and cooling of 220.82(C), as lines. */
  private record Choice(String name, List<Part> parts) {
    double demand() {
      return parts.stream().mapToDouble(p -> Sums.total(p.loads) * p.factor.si()).sum();
    }
  }

  private record Part(String name, List<ConnectedLoad> loads, Derivation factor) {}

  private static void addClimate(Inputs inputs, Figures figures, Tally load) {
    List<Choice> choices = choices(inputs, figures);
    Optional<Choice> largest = choices.stream().max(Comparator.comparingDouble(Choice::demand));
    if (largest.isEmpty()) {
      return;
    }
    for (Part part : largest.get().parts) {
      load.add(part.name, Sums.ofLoads(part.name, part.loads), part.factor, Sums.names(part.loads));
    }
    for (Choice other : choices) {
      if (other != largest.get()) {
        List<ConnectedLoad> loads = other.parts.stream().flatMap(p -> p.loads.stream()).toList();
        load.leaveOut(
            other.name + ", left out", Sums.ofLoads(other.name, loads), Sums.names(loads), "220.82(C)",
            "The method counts only the largest heating or cooling load.");
      }
    }
  }

  private static List<Choice> choices(Inputs inputs, Figures figures) {
    List<ConnectedLoad> pumps = inputs.all(LoadClass.HEAT_PUMP);
    List<ConnectedLoad> central = inputs.all(LoadClass.HEATING);
    List<ConnectedLoad> rooms = inputs.all(LoadClass.ROOM_HEATING);
    List<Choice> choices = new ArrayList<>();
    List<Part> pump = new ArrayList<>();
    add(pump, figures, "heat pump", "heat-pump", pumps);
    add(pump, figures, pumps.isEmpty() ? "central heating" : "supplementary heating", pumps.isEmpty() ? "central" : "supplementary",
        central);
    choose(choices, pumps.isEmpty() ? "central heating" : "heat pump", pump);
    choose(choices, "cooling", add(new ArrayList<>(), figures, "cooling", "cooling", inputs.all(LoadClass.COOLING)));
    boolean many = Sums.count(rooms) >= figures.limit("rooms-many").si();
    String few = many ? "rooms-many" : "rooms-few";
    choose(choices, "room heating", add(new ArrayList<>(), figures, Sums.count(rooms) + " room heaters", few, rooms));
    List<ConnectedLoad> storage = inputs.all(LoadClass.STORAGE_HEATING);
    choose(choices, "storage heating", add(new ArrayList<>(), figures, "storage heating", "storage", storage));
    return choices;
  }

  private static List<Part> add(List<Part> parts, Figures figures, String name, String kind, List<ConnectedLoad> loads) {
    if (!loads.isEmpty()) {
      parts.add(new Part(name, loads, figures.findWord("optional-climate", "demand factor", "factor", kind)));
    }
    return parts;
  }

  private static void choose(List<Choice> choices, String name, List<Part> parts) {
    if (!parts.isEmpty()) {
      choices.add(new Choice(name, parts));
    }
  }
}
