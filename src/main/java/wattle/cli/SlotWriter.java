package wattle.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import wattle.balance.Move;
import wattle.balance.PanelBalance;
import wattle.compiler.Compilation;
import wattle.edit.Renumbering;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.file.Output;
import wattle.finding.Finding;
import wattle.finding.Source;

/** Writes a proposal of slots into the files of a plan: all of them or none, and only where no new finding comes of it. */
final class SlotWriter {
  private final PlanInput input;
  private final Compilation plan;
  private final String file;

  SlotWriter(PlanInput input, Compilation plan, String file) {
    this.input = input;
    this.plan = plan;
    this.file = file;
  }

  void write(List<PanelBalance> balances, PrintWriter err) {
    Map<String, Map<String, String>> slots = new LinkedHashMap<>();
    balances.forEach(b -> slots.put(b.panel().name(), slots(b)));
    Renumbering.Renumbered renumbered = new Renumbering(slots).apply(plan.items());
    if (!renumbered.refused().isEmpty()) {
      throw new Failure(
          "nothing written:\n" + String.join("\n", renumbered.refused())
              + "\ngive the placements the same loads, write those panels out, or name the panels to be moved with --panel");
    }
    Map<Source, String> changed = renumbered.texts();
    if (changed.isEmpty()) {
      err.println(file + ": not changed, nothing to move");
      return;
    }
    Map<Path, String> unsaved = new HashMap<>();
    changed.forEach((source, text) -> unsaved.put(Path.of(source.name()).toAbsolutePath().normalize(), text));
    List<Finding> added = added(plan.findings(), input.compile(file, unsaved).findings());
    if (!added.isEmpty()) {
      throw new Failure(
          "nothing written, because the moves would cause new findings:\n" + new TextFindings(false).render(added).stripTrailing());
    }
    List<Output> outputs = new ArrayList<>();
    changed.forEach((source, text) -> outputs.add(Output.revision(Path.of(source.name()), source.text(), text)));
    ResultOutput.write(outputs, false);
    changed.keySet().forEach(source -> err.println(source.name() + ": slots changed"));
  }

  private static Map<String, String> slots(PanelBalance balance) {
    Map<String, String> slots = new HashMap<>();
    for (Move move : balance.moves()) {
      for (int b = 0; b < move.breakers().size(); b++) {
        for (int pole = 0; pole < move.to().get(b).size(); pole++) {
          slots.put(
              move.breakers().get(b).poles().get(pole).slot().toString(), move.to().get(b).get(pole).toString());
        }
      }
    }
    return slots;
  }

  /** Findings whose rule now counts more: the words of one may name a slot, so words are not compared. */
  private static List<Finding> added(List<Finding> before, List<Finding> after) {
    Map<String, Long> counts = before.stream().collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
    Map<String, List<Finding>> now = after.stream().collect(Collectors.groupingBy(Finding::rule, LinkedHashMap::new, Collectors.toList()));
    List<Finding> added = new ArrayList<>();
    now.forEach((rule, findings) -> {
      if (findings.size() > counts.getOrDefault(rule, 0L)) {
        added.addAll(findings);
      }
    });
    return added;
  }
}
