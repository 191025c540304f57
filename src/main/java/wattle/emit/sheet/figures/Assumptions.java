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

/**
 * Everything that a plan does not say and that was taken as usual: what binding assumed of its things, and every assumed figure that
 * the figures of its tables and trials rest on. They are read from the derivations themselves, so that none can be forgotten.
 */
public final class Assumptions {
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
    Map<String, List<String>> resting = new LinkedHashMap<>();
    UnitSystem units = plan.house().units();
    gather(PlanFigures.of(plan, units).all(), resting);
    for (Trial trial : plan.house().trials().values()) {
      gather(PlanFigures.of(plan, trial, units).all(), resting);
    }
    resting.forEach((assumed, figures) -> all.add(new Assumed(assumed, figures)));
    return all;
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
    if (derivation.basis() == Derivation.Basis.ASSUMED && !derivation.name().startsWith(LoadFigures.USUAL_POWER_FACTOR)) {
      List<String> figures = resting.computeIfAbsent(derivation.name() + " " + derivation.value().text(), a -> new ArrayList<>());
      if (figures.isEmpty() || !figures.get(figures.size() - 1).equals(figure)) {
        figures.add(figure);
      }
    }
    derivation.inputs().forEach(input -> gather(input, figure, seen, resting));
  }
}
