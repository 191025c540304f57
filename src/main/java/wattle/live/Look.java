package wattle.live;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import wattle.emit.document.findings.FindingCounts;
import wattle.emit.document.glance.AtAGlance;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetHtml;
import wattle.emit.media.table.SheetUnits;
import wattle.emit.media.text.Json;
import wattle.emit.sheet.trial.TrialSheets;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;

/**
 * All that a page shows of one situation.
 *
 * @param folds figures that can be opened
 * @param json for the page: its parts as markup, the lines as they were read
 */
record Look(Folds folds, String json) {
  private static final int ROWS = 12;

  /** @param number under which figures are asked for */
  static Look of(long number, Version version, Asked asked) {
    Situation situation = Situation.of(version.shown(), asked);
    House house = version.shown().house();
    Optional<Branch> branch = branch(house, situation, asked);
    Optional<Panel> panel = panel(house, branch, asked);
    Folds folds = new Folds(house.units());
    ObjectNode root = Json.object().put("look", number).put("version", version.number()).put("title", version.title());
    ArrayNode events = root.putArray("events");
    situation.lines().forEach(l -> events.add(l.text()));
    root.put("branch", branch.map(Branch::name).orElse("")).put("panel", panel.map(Panel::name).orElse(""));
    root.put("told", DangerPart.summary(situation.dangers()));
    root.put("status", status(version)).put("trouble", version.trouble().orElse(""));
    ObjectNode parts = root.putObject("parts");
    parts.put("glance", AtAGlance.markup(version.shown()));
    parts.put("events", new EventPart(situation).html());
    parts.put("dangers", new DangerPart(situation, folds::place).html());
    parts.put("panels", new PanelPart(situation).html(panel, asked.panelWidth()));
    parts.put("branches", new BranchPart(situation).html(branch, asked.place(), asked.width()));
    parts.put("loads", new LoadPart(situation).html());
    parts.put("figures", figures(situation, folds, asked.everyRow()));
    parts.put("findings", FindingPart.html(version));
    return new Look(folds, Json.text(root));
  }

  private static String status(Version version) {
    return FindingCounts.of(version.facts()).words() + " in " + version.shown().source().name() + ", read at " + version.read();
  }

  private static Optional<Branch> branch(House house, Situation situation, Asked asked) {
    return asked.branch().map(house.branches()::get)
        .or(() -> situation.result().mainBranch().map(house.branches()::get))
        .or(() -> house.branches().values().stream().findFirst());
  }

  private static Optional<Panel> panel(House house, Optional<Branch> branch, Asked asked) {
    return asked.panel().map(house.panels()::get)
        .or(() -> branch.flatMap(Branch::panel).map(house.panels()::get))
        .or(() -> house.panels().values().stream().findFirst());
  }

  private static String figures(Situation situation, Folds folds, boolean everyRow) {
    List<Sheet> sheets = SheetUnits.shown(TrialSheets.of(situation.result(), "What was clicked", everyRow ? Integer.MAX_VALUE : ROWS),
        situation.plan().house().units());
    StringBuilder out = new StringBuilder();
    sheets.forEach(s -> out.append(SheetHtml.render(s, folds::place)));
    return out.toString();
  }
}
