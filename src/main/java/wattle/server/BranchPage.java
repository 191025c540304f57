package wattle.server;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.derivation.DerivationUnits;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Section;
import wattle.model.Wire;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/** What a branch is made of, what it carries, and what its weakest run may carry, step by step. */
final class BranchPage {
  private BranchPage() {}

  static Page of(Branch branch, Analysis analysis) {
    House house = analysis.house();
    Page page = new Page().title("branch " + branch.name(), branch.label().orElse(""));
    List<Breaker> breakers = breakers(branch, house);
    breakers.forEach(b -> page.line(BreakerLine.of(b)));
    page.line(made(branch, house.units()));
    Optional<Panel> panel = branch.panel().map(house.panels()::get);
    panel.ifPresent(p -> page.line(ThingPages.loads(analysis.compilation().figures().loads().branch(branch.name()), p.system())));
    analysis
        .derived()
        .fall(branch.name())
        .ifPresent(o -> page.line("voltage falls most at " + o.name() + ", with every stated load on: " + o.volts() + "; " + o.fall()));
    weakest(branch, breakers, analysis.compilation().figures().conductors())
        .ifPresent(
            run -> {
              page.line("least ampacity, on the run to " + run.to + ":").chain(new DerivationUnits(house.units()).shown(run.ampacity));
              page.caution();
            });
    return page;
  }

  static List<Breaker> breakers(Branch branch, House house) {
    List<BreakerId> ids = branch.hots().stream().map(h -> h.breaker()).distinct().toList();
    return ids.stream().flatMap(id -> house.breaker(id).stream()).toList();
  }

  private static String made(Branch branch, UnitSystem units) {
    double meters = branch.sections().stream().flatMap(s -> s.length().stream()).mapToDouble(Quantity::si).sum();
    int boxes = branch.points().size() - 1;
    if (boxes < 1) {
      return ""; // half typed: nothing is reached yet
    }
    List<String> wirings = branch.sections().stream().map(s -> s.wiring().text()).distinct().toList();
    return String.join(", ", wirings) + "; " + boxes + (boxes == 1 ? " box, " : " boxes, ")
        + units.shown(Quantity.of(meters, Units.METER)) + (branch.sections().stream().anyMatch(s -> s.length().isEmpty()) ? " so far" : "");
  }

  private record Run(String to, Derivation ampacity) {}

  private static Optional<Run> weakest(Branch branch, List<Breaker> breakers, Conductors conductors) {
    List<Run> runs = new ArrayList<>();
    for (Section section : branch.sections()) {
      Wire wire = section.wiring().hot();
      Optional<Conditions> conditions = conductors.runs().of(branch, section, wire);
      Optional<Quantity> rating = breakers.stream().flatMap(b -> b.rating().stream()).findFirst();
      Optional<Derivation> ampacity = conditions.flatMap(
          c -> rating
              .map(r -> Derivation.stated("rating of the breaker", "I_n", r))
              .flatMap(r -> conductors.ampacities().between(c, r, conductors.terminations().of(branch, section, r)))
              .or(() -> conductors.ampacities().of(c).map(a -> a.allowed())));
      ampacity.ifPresent(a -> runs.add(new Run(branch.points().get(section.to()).box().orElse(""), a)));
    }
    return runs.stream().min(Comparator.comparingDouble(r -> r.ampacity.si()));
  }
}
