package wattle.bind;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Facts that a block may state, each of one dimension. */
record Facts(String where, Map<String, Dimension> figures, Set<String> flags) {
  static final Facts OF_DWELLING = new Facts(
      "a dwelling",
      Map.of(
          "floor-area", Dimension.AREA, "basement-area", Dimension.AREA, "garage-area", Dimension.AREA,
          "storeys", Dimension.NONE, "dwellings", Dimension.NONE, "year", Dimension.NONE),
      Set.of("gas-heated", "gas-cooking", "gas-water-heating", "oil-heated", "fireplace"));

  static final Facts OF_SERVICE = new Facts("a service", Map.of(
      "available", Dimension.CURRENT, "frequency", Dimension.FREQUENCY, "peak-demand", Dimension.POWER),
      Set.of("surge-protection", "outdoor-disconnect", "gas-bonded", "water-bonded", "intersystem-bonding", "buried-water-pipe",
          "footing-rebar", "steel-frame"));

  static final Facts OF_PANEL = new Facts(
      "a panel",
      Map.of("interrupting", Dimension.CURRENT, "height", Dimension.LENGTH, "depth", Dimension.LENGTH,
          "working-depth", Dimension.LENGTH, "working-width", Dimension.LENGTH, "working-height", Dimension.LENGTH),
      Set.of("over-steps", "readily-accessible", "metal-path", "meters", "center-fed", "farm", "buried-water-pipe", "footing-rebar",
          "steel-frame"));

  static final Facts OF_ROOM = new Facts(
      "a room",
      Map.of(
          "area", Dimension.AREA, "ambient", Dimension.TEMPERATURE, "floor", Dimension.NONE, "height",
          Dimension.LENGTH, "wall", Dimension.LENGTH, "counter", Dimension.LENGTH, "length", Dimension.LENGTH,
          "vehicle-spaces", Dimension.NONE, "risers", Dimension.NONE),
      Set.of("attached", "finished", "grade-level", "entrance", "island", "bonding-grid", "equipotential-plane", "storage", "equipment",
          "damp", "wet",
          "corrosive"));

  /** Reads figures by name, and tells of names that mean nothing here. */
  Map<String, Quantity> read(List<Tree.Fact> written, Scope scope, Map<String, Boolean> flagsFound) {
    Map<String, Quantity> values = new LinkedHashMap<>();
    for (Tree.Fact fact : written) {
      String name = fact.name().text();
      Dimension dimension = figures.get(name);
      if (fact.denied() && !flags.contains(name)) {
        undeniable(fact, dimension != null, scope);
      } else if (dimension != null && fact.amount().isPresent()) {
        scope
            .evaluator()
            .statedOf(fact.amount().get(), dimension, "'" + name + "'")
            .ifPresent(value -> state(values, name, value, fact, scope));
      } else if (flags.contains(name) && fact.amount().isEmpty()) {
        flag(flagsFound, name, fact, scope);
      } else if (dimension != null) {
        scope.report(
            Finding.error(Mistake.FACT_WITHOUT_FIGURE, "'" + name + "' has no figure")
                .at(fact.name().span().after(), dimension.trade() + " is expected here"));
      } else {
        unknown(fact, scope);
      }
    }
    return values;
  }

  private static void flag(Map<String, Boolean> flagsFound, String name, Tree.Fact fact, Scope scope) {
    if (flagsFound.putIfAbsent(name, !fact.denied()) != null) {
      scope.report(
          Finding.error(Mistake.FACT_TWICE, "'" + name + "' is stated twice")
              .at(fact.span(), flagsFound.get(name) ? "already stated" : "stated with no before")
              .fix(Fix.takenOut("take it out here", fact.span())));
    }
  }

  /** Only what is or is not can be denied; of a figure the figure is written. */
  private void undeniable(Tree.Fact fact, boolean figure, Scope scope) {
    if (!figure) {
      unknown(fact, scope);
      return;
    }
    scope.report(
        Finding.error(Mistake.FACT_DENIED, "'" + fact.name() + "' is a figure; no goes only before a yes-or-no fact")
            .at(fact.span(), figures.get(fact.name().text()).trade() + " is expected after its name")
            .fix("take out no and write the figure")
            .fix(Fix.takenOut("leave it out where the figure is not known", fact.span())));
  }

  private static void state(Map<String, Quantity> values, String name, Quantity value, Tree.Fact fact, Scope scope) {
    if (values.putIfAbsent(name, value) != null) {
      scope.report(
          Finding.error(Mistake.FACT_TWICE, "'" + name + "' is stated twice")
              .at(fact.span(), "stated as " + values.get(name) + " before")
              .fix(Fix.takenOut("take it out here", fact.span())));
    }
  }

  private void unknown(Tree.Fact fact, Scope scope) {
    String name = fact.name().text();
    Set<String> known = new java.util.TreeSet<>(figures.keySet());
    known.addAll(flags);
    Finding.Builder finding = Finding.error(Mistake.FACT_UNKNOWN, where + " has no '" + name + "'")
        .at(fact.name().span(), String.join(", ", known) + " are known here");
    NearNames.of(name, known).forEach(n -> finding.fix(Fix.safe("write " + n, fact.name().span(), n)));
    scope.report(finding);
  }
}
