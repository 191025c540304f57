package wattle.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.compiler.FindingWords;
import wattle.compiler.RuleSamples;
import wattle.emit.document.findings.EachPlanAsJson;
import wattle.emit.document.findings.EachPlanAsSarif;
import wattle.emit.document.findings.JsonFindings;
import wattle.emit.document.findings.Judged;
import wattle.emit.document.findings.OfEachPlan;
import wattle.emit.document.findings.SarifFindings;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.text.VisibleWriter;
import wattle.emit.sheet.figures.Assumptions;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.read.Repository;

/** {@code check}: the findings of plans, or of all plans in a folder. */
@Command(
    name = "check",
    description = "Lists what is wrong with a plan, where, why, and how to fix it.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle check examples/alder-court/house.wattle",
        "  wattle check --format sarif examples/alder-court/house.wattle",
        "  wattle check --assumptions --format json examples/alder-court/house.wattle",
        "  wattle check --as-new examples/cottage/house.wattle",
        "  wattle check --watch examples/alder-court/house.wattle",
        "  wattle check examples",
        "  wattle check --rules examples/alder-court/house.wattle",
        "  cat examples/cottage/house.wattle | wattle check -",
    })
final class CheckCommand implements Callable<Integer> {
  /** What findings are written as. */
  enum Format {
    TEXT, JSON, SARIF
  }

  @Parameters(arity = "1..*", paramLabel = "FILE", description = {
      "Plans, folders with plans, or - for standard input.",
      "In a folder every file whose name ends in .wattle is checked, except files that another of them uses.",
  })
  private List<String> files;

  @Option(names = {"-f", "--format"}, description = "text, json or sarif (default: text).", defaultValue = "TEXT")
  private Format format;

  @Option(names = "--strict", description = "Count warnings and silenced errors as errors.")
  private boolean strict;

  @Option(names = "--assumptions", description = "List what was assumed because the plan does not state it, with the figures that "
      + "depend on it.")
  private boolean assumptions;

  @Option(
      names = "--watch",
      description = "Check again each time a file of a plan is saved, until interrupted. Each run ends with one summary line.")
  private boolean watch;

  @Option(names = "--rules", description = "Also run the accept and reject samples of the rules in the plan's own files.")
  private boolean rules;

  @Mixin
  private SurveyOption survey = new SurveyOption();

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  /** The command with its usual options, for {@link PlainCheck}. */
  static CheckCommand of(List<String> files) {
    CheckCommand check = new CheckCommand();
    check.files = List.copyOf(files);
    check.format = Format.TEXT;
    check.input = PlanInput.usual();
    return check;
  }

  @Override
  public Integer call() {
    return run(spec.commandLine().getOut(), spec.commandLine().getErr());
  }

  /** Checks, prints, and gives the exit code. */
  int run(PrintWriter out, PrintWriter err) {
    if (watch) {
      watch(out);
      return ExitCode.FINE;
    }
    if (files.size() > 1 || NamedPlans.anyFolder(files)) {
      return new ManyPlans(NamedPlans.toCompile(files, input.reader()), this::told, err)
          .run(() -> document(out), this::fails, out, format == Format.TEXT ? out : err);
    }
    List<Compilation> plans = compile();
    boolean failed = print(plans, out);
    if (plans.stream().anyMatch(Compilation::hasInternalError)) {
      return ExitCode.BUG;
    }
    return failed ? ExitCode.FOUND : ExitCode.FINE;
  }

  private List<Compilation> compile() {
    return files.stream().map(this::compile).toList();
  }

  private Compilation compile(String file) {
    Compilation plan = survey.of(input.compile(file));
    return rules ? plan.with(RuleSamples.check(plan)) : plan;
  }

  private OfEachPlan.Told told(String file) {
    Compilation plan = compile(file);
    return new OfEachPlan.Told(plan, plan.facts(), Judged.of(plan), assumed(List.of(plan)));
  }

  private OfEachPlan document(PrintWriter out) {
    return switch (format) {
      case TEXT -> OfEachPlan.text(out,
          new OfEachPlan.TextOptions(Terminal.wantsColor(), VisibleWriter.columns(out), p -> ownRules(p, p.source().name())));
      case JSON -> new EachPlanAsJson(out);
      case SARIF -> new EachPlanAsSarif(out, root(), Version.number());
    };
  }

  /** Prints what was found; whether the plans fail comes back. */
  private boolean print(List<Compilation> plans, PrintWriter out) {
    List<Finding> findings = new ArrayList<>();
    plans.forEach(p -> findings.addAll(p.facts()));
    switch (format) {
      case TEXT -> {
        TextFindings text = new TextFindings(Terminal.wantsColor(), ownRules(plans), VisibleWriter.columns(out));
        // One by one: all of them together may take as much memory as the plan.
        findings.forEach(f -> out.print(text.render(f) + "\n"));
        if (assumptions) {
          assumed(plans).forEach(p -> p.assumed().forEach(a -> out.println("assumed in " + p.plan() + ": " + a.line())));
        }
        out.println(TextFindings.summary(findings, String.join(", ", plans.stream().map(p -> p.source().name()).toList())));
        plans.forEach(p -> Judged.of(p).lines().forEach(l -> out.println((plans.size() > 1 ? p.source().name() + ": " : "") + l)));
      }
      case JSON -> VisibleWriter.printWhole(out, JsonFindings.render(findings, plans.stream().map(Judged::of).toList(), assumed(plans)));
      case SARIF -> VisibleWriter.printWhole(out, SarifFindings.render(findings, plans.stream().map(Judged::of).toList(), assumed(plans),
          FindingWords.of(findings.stream().map(Finding::rule).distinct().toList(), plans), root(),
          Version.number()));
    }
    return findings.stream().anyMatch(this::fails);
  }

  /** What was assumed of each plan; empty where nobody asked for it, since it takes all figures of the plans. */
  private List<JsonFindings.OfPlan> assumed(List<Compilation> plans) {
    return assumptions ? plans.stream().map(p -> new JsonFindings.OfPlan(p.source().name(), Assumptions.of(p))).toList() : List.of();
  }

  /** What addresses are relative to: the repository of the first plan, or the folder in which this runs where it has none. */
  private Path root() {
    // Standard input has no folder; it is as if it lay here. The repository of a folder may be that folder itself.
    Path first = Path.of(files.get(0));
    return Repository.of(NamedPlans.isFolder(files.get(0)) ? first.resolve("plan") : first).orElse(Path.of(""));
  }

  /** Rules of the plans' own files, with the plan that explains each. */
  private Map<String, String> ownRules(List<Compilation> plans) {
    Map<String, String> own = new HashMap<>();
    for (int i = 0; i < plans.size(); i++) {
      own.putAll(ownRules(plans.get(i), files.get(i)));
    }
    return own;
  }

  private static Map<String, String> ownRules(Compilation plan, String file) {
    Map<String, String> own = new HashMap<>();
    plan.ownRules().forEach(rule -> own.put(rule, file.contains(" ") ? "'" + file + "'" : file));
    return own;
  }

  private void watch(PrintWriter out) {
    if (files.contains("-")) {
      throw new Failure("standard input cannot be watched; name a file");
    }
    if (NamedPlans.anyFolder(files)) {
      throw new Failure("a folder cannot be watched; name the plans in it");
    }
    if (format != Format.TEXT) {
      throw new Failure("--watch prints text; leave --format out");
    }
    compile(); // a plan that is not there at the start is bad usage
    new WatchLoop(out).run(new Watched(out));
  }

  /** The check as it is repeated: a plan that is gone for the moment is told, and its files are still looked at. */
  private final class Watched implements WatchLoop.Check {
    private final PrintWriter out;
    private final Set<Path> known = new LinkedHashSet<>();
    private List<Compilation> plans = List.of();
    private Optional<String> failure = Optional.empty();
    private boolean told;

    Watched(PrintWriter out) {
      this.out = out;
      // Standing where they are named, they can be looked at before any of them is read.
      files.forEach(f -> known.add(ResultOutput.path(f)));
    }

    @Override
    public Set<Path> read() {
      try {
        plans = compile();
        failure = Optional.empty();
        known.clear();
        plans.forEach(p -> known.addAll(PlanFiles.of(p)));
      } catch (Failure e) {
        failure = Optional.of(e.getMessage());
      }
      return Set.copyOf(known);
    }

    @Override
    public void tell() {
      if (told) {
        // A stream of findings does not show by itself where those of the last save begin.
        out.println();
        out.println("---- read again");
      }
      told = true;
      failure.ifPresentOrElse(out::println, () -> print(plans, out));
      out.flush();
    }
  }

  private boolean fails(Finding finding) {
    if (strict) {
      return finding.severity() == Severity.ERROR || finding.severity() == Severity.WARNING && finding.silenced().isEmpty();
    }
    return isError(finding);
  }

  /** An error that stands. */
  static boolean isError(Finding finding) {
    return finding.severity() == Severity.ERROR && finding.silenced().isEmpty();
  }
}
