package wattle.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.begin.Answers;
import wattle.begin.FirstPlan;
import wattle.begin.PlanOfSchedule;
import wattle.begin.ServiceSize;
import wattle.begin.SupplyChoice;
import wattle.begin.Work;
import wattle.edit.Formatter;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.file.Output;
import wattle.emit.media.text.VisibleWriter;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;

/** {@code begin}: a first plan from a few answers. */
@Command(
    name = "begin",
    description = {
        "Writes a first plan from options, or from answers to a few questions if no option is given.",
        "Separate names of rooms and appliances with commas.",
        "With --from: the plan of an existing house from its panel schedule; comments list what was assumed.",
    },
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle begin --bedrooms 3 --bathrooms 2 --appliances range,dryer,water-heater house.wattle",
        "  wattle begin --service 100 --area '900 ft2' --rooms living,laundry -",
        "  wattle begin --system 208Y/120 --dwellings 12 --area '70 m2' --bedrooms 1 --bathrooms 1 --rooms living block.wattle",
        "  wattle begin --work fuses --service 60 --bedrooms 2 --bathrooms 1 --appliances range cottage.wattle",
        "  wattle begin --from schedule.csv --service 200 --out house.wattle",
    })
final class BeginCommand implements Callable<Integer> {
  @Parameters(arity = "0..1", paramLabel = "FILE", description = "The plan to write, or - for standard output.")
  private String file;

  @Option(names = {"-o", "--out"}, paramLabel = "FILE", description = "The same as FILE.")
  private String out;

  @Option(names = "--from", paramLabel = "CSV",
      description = {
          "A panel schedule with the columns slot, rating, poles and description in any order, or - for standard input.",
          "Only --title, --country, --code, --system, --service and --work fuses can be combined with it.",
      })
  private String schedule;

  @ArgGroup(exclusive = false, heading = "The house:%n")
  private HouseOptions house;

  @Option(names = "--ask", description = "Ask the questions even if options are given or there is no terminal.")
  private boolean ask;

  @Option(names = "--force", description = "Replace a file that exists.")
  private boolean force;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    if ((file == null) == (out == null)) {
      throw new CommandLine.ParameterException(spec.commandLine(),
          file == null
              ? "which file? Name the plan to write, or - for standard output"
              : "FILE and --out name the same thing; leave one out");
    }
    file = file == null ? out : file;
    if (schedule != null) {
      return fromSchedule();
    }
    boolean asks = ask || house == null && System.console() != null;
    HouseOptions flags = house == null ? new HouseOptions() : house;
    HouseOptions given = asks ? new Questions(System.in, spec.commandLine().getErr()).ask(flags) : flags;
    Answers answers = given.leavesTheServiceOpen() ? withLeastService(given.answers()) : given.answers();
    String text = text(answers);
    write(text);
    tellErrors(text);
    return ExitCode.FINE;
  }

  private int fromSchedule() {
    HouseOptions flags = house == null ? new HouseOptions() : house;
    SupplyChoice system = HouseOptions.systemOf(flags.system);
    Work work = HouseOptions.workOf(flags.work);
    String code = HouseOptions.codeOf(system, flags.code == null ? HouseOptions.usualCode(system, flags.country) : flags.code);
    ServiceSize service = HouseOptions.serviceOf(system, 1, work == Work.NEW ? Work.BREAKERS : work,
        flags.service == null ? HouseOptions.usualService(system, 1) : flags.service);
    Checked<PlanOfSchedule> read = PlanOfSchedule.read(
        PlanInput.usual().readSheet(schedule), flags.title, code, system, service.amperes(), work == Work.FUSES);
    PrintWriter err = spec.commandLine().getErr();
    if (!read.findings().isEmpty()) {
      err.print(new TextFindings(Terminal.wantsColor(), Map.of(), VisibleWriter.columns(err)).render(read.findings()));
      err.println("wattle: " + schedule + ": no plan was written");
      return ExitCode.USAGE;
    }
    String text = inOrder(read.value().text());
    write(text);
    read.value().told().forEach(t -> err.println("assumed: " + t));
    tellErrors(text);
    return ExitCode.FINE;
  }

  private void write(String text) {
    if (file.equals("-")) {
      VisibleWriter.printWhole(spec.commandLine().getOut(), text);
      return;
    }
    Path path = ResultOutput.path(file);
    // A plan carries no mark of ours: once written it is the user's own work.
    if (!force && Files.exists(path)) {
      throw new Failure("cannot write " + file + ": it exists; choose another name, or replace it with --force");
    }
    ResultOutput.writePlan(Output.handedOver(path, text), force);
    spec.commandLine().getErr().println(file + ": a first plan; wattle check " + file + " shows what is still open");
  }

  private static String text(Answers answers) {
    return inOrder(FirstPlan.text(answers));
  }

  private static String inOrder(String plan) {
    Checked<String> text = Formatter.format(new Source("plan", plan));
    if (!text.findings().isEmpty()) {
      throw new IllegalStateException("the first plan cannot be read: " + text.findings().get(0).headline());
    }
    return text.value();
  }

  /** The least service that holds what is behind it; the largest where none does, and a finding says so. */
  private Answers withLeastService(Answers answers) {
    List<ServiceSize> sizes = ServiceSize.of(answers.system(), answers.dwellings(), answers.work());
    int below = -1;
    int holds = sizes.size() - 1;
    while (holds - below > 1) {
      int middle = (below + holds) / 2;
      if (isBelowLoad(answers.with(sizes.get(middle)))) {
        below = middle;
      } else {
        holds = middle;
      }
    }
    return answers.with(sizes.get(holds));
  }

  private boolean isBelowLoad(Answers answers) {
    return errors(text(answers)).anyMatch(f -> f.rule().equals("service-below-load"));
  }

  private Stream<Finding> errors(String text) {
    return PlanInput.usual().compile(new Source(file.equals("-") ? "standard-input" : file, text), file).findings().stream()
        .filter(CheckCommand::isError);
  }

  /** What the answers lead to that a code does not allow, such as a service too small for what hangs on it. */
  private void tellErrors(String text) {
    errors(text)
        .forEach(
            f -> {
              spec.commandLine().getErr().println("to be fixed in it: " + f.headline());
              f.fixes().stream().findFirst().ifPresent(x -> spec.commandLine().getErr().println("  fix: " + x.order()));
            });
  }
}
