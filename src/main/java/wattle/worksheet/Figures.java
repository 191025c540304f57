package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Cell;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.library.Table;
import wattle.model.SupplySystem;
import wattle.quantity.Units;

/** The tables and limits that methods ask for. A pack that lacks one stops the method, which then names it. */
final class Figures {
  private final Library library;

  Figures(Library library) {
    this.library = library;
  }

  /** A pack of the plan lacks a figure that a method of it asks for. */
  static final class Missing extends RuntimeException {
    private static final long serialVersionUID = 1;

    Missing(String what) {
      super(what, null, false, false);
    }
  }

  Derivation limit(String name) {
    return maybe(name).orElseThrow(() -> new Missing("limit " + name));
  }

  /**
   * The factor of ranges and dryers for the neutral. Where two legs of a wye are fed, the neutral carries as much as
   * they do and there is none: NFPA 70 220.61(C).
   */
  Derivation neutralAppliance(SupplySystem system) {
    return system.kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE
        ? limit("neutral-two-legs-of-wye").remarking(
            "Two hots and the neutral of a wye: no reduction. Informative Annex D5(a) takes 70 % on such a feeder; the text of the article"
                + " governs.")
        : limit("neutral-appliance");
  }

  Optional<Derivation> maybe(String name) {
    return library.limit(name).map((Limit l) -> l.derivation("f"));
  }

  /** A cell of the row that fits a number. */
  Derivation find(String table, String what, String column, Derivation number) {
    Table rows = table(table);
    String key = rows.columns().get(0).name();
    return rows.find(what, "f", column, Key.notBelow(key, number))
        .orElseThrow(() -> new Missing("table " + table + ", " + key + " " + number.value().text() + ", " + column));
  }

  /** The factor of a kind that is named by a word. */
  Derivation findWord(String table, String what, String column, String word) {
    Table rows = table(table);
    String key = rows.columns().get(0).name();
    return rows.find(what, "f", column, Key.is(key, Derivation.stated(key, "", word)))
        .orElseThrow(() -> new Missing("table " + table + ", " + key + " " + word + ", " + column));
  }

  /** The least entry of a one-column table that is not below a figure; absent where the table ends before it. */
  Optional<Derivation> notBelow(String table, String what, String column, Derivation figure) {
    return table(table).find(what, "I_n", column, Key.notBelow(column, figure));
  }

  Table table(String name) {
    return library.table(name).orElseThrow(() -> new Missing("table " + name));
  }

  /** One step of a demand that falls with the load: the part of the load in it, and its factor. */
  record Tier(String name, Derivation part, Derivation factor) {}

  /** Splits a load over the steps of a table whose first column is a range. */
  List<Tier> tiers(String table, Derivation load) {
    Table rows = table(table);
    List<Tier> tiers = new ArrayList<>();
    int factor = rows.indexOf("factor").orElseThrow(() -> new Missing("table " + table + ", factor"));
    for (Table.Row row : rows.rows()) {
      if (!(row.cells().get(0) instanceof Cell.Range range) || load.si() <= range.least().si() && !tiers.isEmpty()) {
        continue;
      }
      double part = Math.min(load.si(), range.most().si()) - Math.max(0, range.least().si());
      String name = name(range, tiers.isEmpty());
      Derivation in = Derivation.computed(name, "P", "part of P", part, Units.VOLT_AMPERE, load.named(load.name(), "P"));
      Derivation found = Derivation.lookedUp(
          "demand factor", "f", row.cells().get(factor).value(), "table " + table + ", " + name, List.of(),
          rows.sourcesOf(row));
      tiers.add(new Tier(name, in, found));
    }
    if (tiers.isEmpty()) {
      throw new Missing("table " + table + ", a range");
    }
    return tiers;
  }

  private static String name(Cell.Range range, boolean first) {
    if (Double.isInfinite(range.most().si())) {
      return "the part above " + range.least();
    }
    return first ? "the first " + range.most() : "from " + range.least() + " to " + range.most();
  }
}
