package wattle.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.file.Output;
import wattle.emit.media.table.Sheet;
import wattle.emit.sheet.trial.TrialList;
import wattle.emit.sheet.trial.TrialSheets;
import wattle.finding.Finding;
import wattle.finding.NearNames;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.Event;
import wattle.model.Trial;
import wattle.trials.SolvedTrials;
import wattle.trials.TrialResult;

/** {@code trial}: what happens when something is on, open or wrong. */
@Command(
    name = "trial",
    description = "Calculates volts, amperes and watts when something is on, open or faulty.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle trial examples/alder-court/house.wattle",
        "  wattle trial examples/alder-court/house.wattle breakfast",
        "  wattle trial examples/alder-court/house.wattle breakfast --event \"open neutral of counter\"",
        "  wattle trial examples/alder-court/house.wattle --event \"fault hot to ground at garage.b1\" --format csv",
        "  wattle trial examples/alder-court/house.wattle --stated",
        "  wattle trial examples/alder-court/house.wattle --stated --event \"open service neutral\"",
        "  wattle trial examples/marlow-croft/house.wattle --event \"lose main\" --event \"transfer E to yard.g\" --event \"yard.g on\"",
        "  wattle trial examples/alder-court/house.wattle warm-joint --picture joint.svg",
        "  wattle trial examples/alder-court/house.wattle warm-joint --picture joint.pdf --paper letter",
        "  wattle trial examples/alder-court/house.wattle --add \"vehicle charger 7.7 kW\"",
    })
final class TrialCommand implements Callable<Integer> {
  private static final String EVENT = "--event";
  private static final String ASKED = "asked-on-the-command-line";
  private static final int ROWS = 12;

  @Parameters(index = "0", paramLabel = "FILE", description = "The plan, or - for standard input.")
  private String file;

  @Parameters(index = "1", arity = "0..1", paramLabel = "NAME",
      description = "A trial of the plan. Without it and without --event, lists the trials.")
  private String name;

  @Option(names = {"-e", EVENT}, paramLabel = "EVENT",
      description = "An event to add to the trial, written as in a trial. Can be repeated.")
  private List<String> events = List.of();

  @Option(names = "--stated",
      description = "The house as stated: every stated load on at once, plus the events of --event.")
  private boolean stated;

  @Option(names = "--every", description = "Run every trial of the plan in turn.")
  private boolean every;

  @Option(names = {"-a", "--all"}, description = "Show every outlet and conductor, not just the worst.")
  private boolean all;

  @Mixin
  private AddOption add;

  @Mixin
  private TrialPictureOption picture;

  @Mixin
  private SheetFormat format;

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    if (add.isGiven()) {
      if (stated || all || every || name != null || !events.isEmpty()) {
        throw new Failure("--add stands alone; give it without a trial, --event, --stated, --every and --all");
      }
      return add.print(file, input, format, output, spec);
    }
    if (stated && name != null) {
      throw new Failure("--stated is its own scenario; give it without a trial, and add faults with --event");
    }
    if (every && (stated || name != null || !events.isEmpty())) {
      throw new Failure("--every runs all trials of the plan as they are; give it without a trial, --event and --stated");
    }
    if (events.stream().anyMatch(String::isBlank)) {
      throw new Failure("an " + EVENT + " says nothing; write one such as --event \"kitchen.c1.upper draws 10 A\"");
    }
    picture.file();
    List<Source> asked = events.isEmpty() ? List.of() : List.of(asTrial());
    Compilation plan = input.compile(file, asked);
    List<Finding> ours = plan.findings().stream().filter(TrialCommand::isOfEvents).toList();
    if (!ours.isEmpty()) {
      spec.commandLine().getErr().print(new TextFindings(false).render(ours));
    }
    if (ours.stream().anyMatch(f -> f.severity() == Severity.ERROR)) {
      return ExitCode.USAGE;
    }
    if (plan.house().trials().isEmpty() && !stated && name == null && events.isEmpty()) {
      throw new Failure("the plan has no trial; say what happens with " + EVENT + ", or give --stated");
    }
    if (!every && !stated && name == null && events.isEmpty() && picture.file().isEmpty()) {
      return list(plan);
    }
    List<Run> runs = runs(plan);
    List<Output> drawn = picture.of(plan, runs);
    int most = all ? Integer.MAX_VALUE : ROWS;
    List<Sheet> sheets = runs.stream().flatMap(r -> TrialSheets.of(r.result(), r.title(), most).stream()).toList();
    format.write(sheets, plan.house().units(), output, spec.commandLine().getOut());
    if (!drawn.isEmpty()) {
      output.write(drawn);
    }
    return BesideFindings.report(plan, spec);
  }

  private int list(Compilation plan) {
    format.write(List.of(TrialList.of(plan.house().trials().values())), plan.house().units(), output, spec.commandLine().getOut());
    if (format.isForPeople(output)) {
      spec.commandLine().getErr().println("to run one: wattle trial " + file + " NAME; all of them: --every");
    }
    return BesideFindings.report(plan, spec);
  }

  private static boolean isOfEvents(Finding finding) {
    return finding.place().map(m -> m.span().source().name().equals(EVENT)).orElse(false);
  }

  /** The events of the command line as the text of a trial, so that one grammar reads both. */
  private Source asTrial() {
    return new Source(EVENT, "trial " + ASKED + " {\n" + String.join("\n", events) + "\n}\n");
  }

  /** A trial that was worked out, and what it is called. */
  record Run(TrialResult result, String title) {}

  private List<Run> runs(Compilation plan) {
    SolvedTrials trials = plan.figures().trials();
    List<Event> more = new ArrayList<>();
    if (!events.isEmpty()) {
      more.addAll(plan.house().trials().get(ASKED).events());
    }
    if (stated) {
      return List.of(
          events.isEmpty()
              ? new Run(trials.stated(), "As stated")
              : new Run(trials.statedWith(more).value(), "As stated, " + String.join(", ", events)));
    }
    if (name == null && !events.isEmpty()) {
      return List.of(new Run(trials.result("", more).value(), String.join(", ", events)));
    }
    if (name != null) {
      Trial trial = trial(plan);
      List<Event> together = new ArrayList<>(trial.events());
      together.addAll(more);
      String title = trial.label().orElse(trial.name()) + (events.isEmpty() ? "" : ", " + String.join(", ", events));
      return List.of(new Run((events.isEmpty() ? trials.result(trial) : trials.result(trial.name(), together)).value(), title));
    }
    return plan.house().trials().values().stream()
        .map(t -> new Run(trials.result(t).value(), t.label().orElse(t.name())))
        .toList();
  }

  private Trial trial(Compilation plan) {
    Trial trial = plan.house().trials().get(name);
    if (trial == null) {
      List<String> near = NearNames.of(name, plan.house().trials().keySet());
      throw new Failure(
          "no trial is called '" + name + "'"
              + (near.isEmpty()
                  ? "; there are: " + String.join(", ", plan.house().trials().keySet())
                  : "; did you mean " + String.join(", ", near) + "?"));
    }
    return trial;
  }
}
