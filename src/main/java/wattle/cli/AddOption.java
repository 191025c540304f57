package wattle.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.sheet.worksheet.AdditionSheets;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.Device;
import wattle.model.Panel;
import wattle.worksheet.Addition;
import wattle.worksheet.Additions;
import wattle.worksheet.ConnectedLoad;
import wattle.worksheet.ObjectionFindings;

/** "Can I add this?": loads of the command line, and what the services and feeders of a plan say to them. */
final class AddOption {
  private static final String ADD = "--add";
  private static final String ROOM = "added-on-the-command-line";

  @Option(
      names = ADD,
      paramLabel = "LOAD",
      description = "Checks whether this load can be added, written as in a room, such as \"vehicle charger 7.7 kW\". Can be repeated.")
  private List<String> loads = List.of();

  @Option(names = "--to", paramLabel = "PANEL", description = "The panel for --add; its feeder is calculated too.")
  private String to;

  boolean isGiven() {
    if (loads.isEmpty() && to != null) {
      throw new Failure("--to says where " + ADD + " goes; give " + ADD + " too");
    }
    return !loads.isEmpty();
  }

  int print(String file, PlanInput input, SheetFormat format, ResultOutput output, CommandSpec spec) {
    Compilation plan = input.compile(file, List.of(asRoom()));
    List<Finding> ours = plan.findings().stream().filter(AddOption::isOfLoads).toList();
    spec.commandLine().getErr().print(new TextFindings(false).render(ours));
    if (ours.stream().anyMatch(f -> f.severity() == Severity.ERROR)) {
      return ExitCode.USAGE;
    }
    Optional<Panel> panel = panel(plan);
    Additions additions = plan.figures().additions();
    Map<String, List<Addition>> answers = additions.calculate(connected(plan), panel);
    if (answers.isEmpty()) {
      throw new Failure(file + " has no service" + (panel.isPresent() ? " above panel '" + to + "'" : "") + "; add one to calculate");
    }
    boolean lacking = answers.values().stream().anyMatch(List::isEmpty);
    if (lacking) {
      spec.commandLine().getErr()
          .print(new TextFindings(false).render(new ObjectionFindings(plan.house()).of(additions.objections(panel))));
    }
    format.write(AdditionSheets.of(String.join(", ", loads), answers, plan.figures().worksheets().methods(), format.isForPeople(output)),
        plan.house().units(), output,
        spec.commandLine().getOut());
    // The lines that were added hang on no branch, and that is no fault of the plan.
    boolean fits = !lacking && answers.values().stream().allMatch(a -> a.get(0).fits());
    return fits ? ExitCode.FINE : ExitCode.FOUND;
  }

  /** The loads as the text of a room, so that one grammar reads both. */
  private Source asRoom() {
    List<String> lines = new ArrayList<>();
    for (String load : loads) {
      if (load.chars().anyMatch(c -> c < ' ' || c == '{' || c == '}' || c == ':')) {
        throw new Failure(ADD + " takes one load, written as in a room, such as \"vehicle charger 7.7 kW\"");
      }
      lines.add("load" + (lines.size() + 1) + ": " + load);
    }
    return new Source(ADD, "room " + ROOM + " {\n" + String.join("\n", lines) + "\n}\n");
  }

  private static boolean isOfLoads(Finding finding) {
    return !Mistake.DEVICE_UNFED.is(finding)
        && finding.place().map(m -> m.span().source().name().equals(ADD)).orElse(false);
  }

  private Optional<Panel> panel(Compilation plan) {
    if (to == null) {
      if (plan.house().dwellings().size() > 1) {
        throw new Failure("the plan has several dwellings; say with --to which panel the load goes to");
      }
      return Optional.empty();
    }
    Panel panel = plan.house().panels().get(to);
    if (panel == null) {
      List<String> near = NearNames.of(to, plan.house().panels().keySet());
      List<String> shown = near.isEmpty() ? List.copyOf(plan.house().panels().keySet()) : near;
      throw new Failure("no panel is called '" + to + "'; there is " + String.join(", ", shown));
    }
    return Optional.of(panel);
  }

  private List<ConnectedLoad> connected(Compilation plan) {
    List<ConnectedLoad> connected = new ArrayList<>();
    for (int i = 0; i < loads.size(); i++) {
      Device device = plan.house().devices().get(ROOM + ".load" + (i + 1));
      String load = loads.get(i);
      connected.add(
          Optional.ofNullable(device)
              .flatMap(d -> Additions.asLoad(d, plan.library()))
              .map(c -> c.named(load))
              .orElseThrow(
                  () -> new Failure(
                      "'" + load + "' adds nothing to a load calculation: it states no load, feeds back, or is in the floor area")));
    }
    return connected;
  }
}
