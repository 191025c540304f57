package wattle.emit.sheet.figures;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.compiler.Compilation;
import wattle.derivation.Derivation;
import wattle.emit.media.table.SheetFigure;
import wattle.loads.LoadFigures;
import wattle.model.Trial;
import wattle.quantity.UnitSystem;
import wattle.rules.Unstated;

/**
 * Everything that a plan does not say and that was taken as usual: what binding assumed of its things, and every assumed figure that
 * the figures of its tables and trials rest on. They are read from the derivations themselves, so that none can be forgotten.
 */
public final class Assumptions {
  /** More names than these are not read. */
  private static final int NAMED = 3;

  /** Where the code says what terminals are taken for that nothing marks. */
  private static final String UNMARKED_TERMINALS = "table terminal-temperature";

  private Assumptions() {}

  /**
   * One thing that was assumed.
   *
   * @param what in words, with its figure in the units of the plan
   * @param figures names of the figures that rest on it, the first first; none for what is assumed of things
   */
  public record Assumed(String what, List<String> figures) {
    public Assumed {
      figures = List.copyOf(figures);
    }

    /** In a line: of a figure with how many of the plan's figures rest on it, and the first of these. */
    public String line() {
      return figures.isEmpty()
          ? what
          : what + ", on which " + figures.get(0) + (figures.size() == 1 ? " rests" : " and " + (figures.size() - 1) + " more rest");
    }
  }

  /** In the units of the plan. */
  public static List<Assumed> of(Compilation plan) {
    List<Assumed> all = new ArrayList<>();
    plan.house().assumed().forEach(what -> all.add(new Assumed(what, List.of())));
    plan.presumed().forEach(u -> all.add(new Assumed(presumed(u), List.of())));
    Map<String, List<String>> resting = new LinkedHashMap<>();
    UnitSystem units = plan.house().units();
    gather(PlanFigures.of(plan, units).all(), resting);
    for (Trial trial : plan.house().trials().values()) {
      gather(PlanFigures.of(plan, trial, units).all(), resting);
    }
    resting.forEach((assumed, figures) -> all.add(new Assumed(assumed, figures)));
    return all;
  }

  /** What a rule goes on without: it takes the usual case, and a plan that states it is judged by that. */
  private static String presumed(Unstated unstated) {
    return unstated.fact() + " of " + some(unstated.places()) + " is not stated; " + some(unstated.rules())
        + (unstated.rules().size() == 1 ? " takes" : " take") + " the usual case; stated by " + unstated.how();
  }

  private static String some(List<String> names) {
    List<String> first = names.subList(0, Math.min(NAMED, names.size()));
    return names.size() > NAMED ? String.join(", ", first) + " and " + (names.size() - NAMED) + " more" : String.join(", ", first);
  }

  private static void gather(List<SheetFigure> figures, Map<String, List<String>> resting) {
    for (SheetFigure figure : figures) {
      Set<Derivation> seen = Collections.newSetFromMap(new IdentityHashMap<>());
      figure.derivation().ifPresent(d -> gather(d, figure.name(), seen, resting));
    }
  }

  private static void gather(Derivation derivation, String figure, Set<Derivation> seen, Map<String, List<String>> resting) {
    if (!seen.add(derivation)) {
      return;
    }
    // Power factors are told of their devices already, with what they are used for.
    if (derivation.basis() == Derivation.Basis.ASSUMED && !derivation.name().startsWith(LoadFigures.USUAL_POWER_FACTOR)
        || derivation.formula().startsWith(UNMARKED_TERMINALS)) {
      List<String> figures = resting.computeIfAbsent(derivation.name() + " " + derivation.value().text(), a -> new ArrayList<>());
      if (figures.isEmpty() || !figures.get(figures.size() - 1).equals(figure)) {
        figures.add(figure);
      }
    }
    derivation.inputs().forEach(input -> gather(input, figure, seen, resting));
  }
}
