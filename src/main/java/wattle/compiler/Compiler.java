package wattle.compiler;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import java.util.concurrent.atomic.AtomicReference;
import wattle.balance.PanelSpace;
import wattle.bind.Binder;
import wattle.faults.FaultChecks;
import wattle.figures.HouseFigures;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.finding.Undecided;
import wattle.library.Library;
import wattle.model.House;
import wattle.model.Trial;
import wattle.pattern.Expander;
import wattle.read.Imports;
import wattle.read.Reading;
import wattle.read.SourceReader;
import wattle.rules.Judgment;
import wattle.rules.Pace;
import wattle.rules.RuleBook;
import wattle.rules.Silences;
import wattle.syntax.PlanTree;
import wattle.trials.Expectations;
import wattle.worksheet.ServiceLoad;

/** Text to everything: read, library, patterns, bind, then the phases that judge. The run of phases, on one screen. */
public final class Compiler {
  /** Findings of computations that a plan may silence, as it may those of rules. */
  public static final Set<String> COMPUTED = both(FaultChecks.NAMES, ServiceLoad.NAMES);

  private final SourceReader reader;
  private final Reading reading;
  private final RulesAhead rules = new RulesAhead();

  public Compiler(SourceReader reader) {
    this(reader, new Reading.Afresh());
  }

  /**
   * @param reading how texts and packs are read; one that remembers makes a second compilation quick
   */
  public Compiler(SourceReader reader, Reading reading) {
    this.reader = reader;
    this.reading = reading;
  }

  /**
   * Compiles a plan on disk.
   *
   * @throws SourceReader.Unreadable where the plan itself cannot be read; a file that it uses gives a finding
   */
  public Compilation compile(Path plan) throws SourceReader.Unreadable {
    return compile(reader.read(plan, plan.toString()), plan);
  }

  /**
   * Compiles a text.
   *
   * @param path where it lies or would lie; files that it uses are looked for beside it
   */
  public Compilation compile(Source plan, Path path) {
    return compile(plan, path, List.of());
  }

  /** @param beside texts that belong to the plan for this once, such as a trial that was asked for */
  public Compilation compile(Source plan, Path path, List<Source> beside) {
    return judge(structure(plan, path, beside));
  }

  /** As below, of a plan on disk and nothing beside it. */
  public Compilation structure(Path plan) throws SourceReader.Unreadable {
    return structure(reader.read(plan, plan.toString()), plan);
  }

  /** As below, with nothing beside it. */
  public Compilation structure(Source plan, Path path) {
    return structure(plan, path, List.of());
  }

  /** The first half of compiling: what was written, and the findings of reading and binding it. */
  public Compilation structure(Source plan, Path path, List<Source> beside) {
    Checked<Imports.Gathered> read = Imports.gather(plan, path, reader, reading, beside);
    List<PlanTree> files = read.value().files();
    Remembered known = reading.memory(Remembered.class, Remembered::new);

    Checked<Library> library = known.library().of(reading.packs(read.value().packs()), files);
    rules.begin(library.value());
    Expander.Expanded written = known.patterns().expand(read.value().items(), reader.mostPlaced());
    List<Finding> before = Stream.of(read.findings(), library.findings(), written.findings()).flatMap(List::stream).toList();
    Checked<House> house = Binder.bind(plan, read.value().codes(), library.value(), files, written, before, known.house(),
        reading.placement());

    List<Finding> findings = SharedNeutralHeat.added(
        Stream.concat(before.stream(), house.findings().stream()).sorted(Finding.BY_PLACE).toList(), house.value(), library.value());
    Completeness completeness = Completeness.of(findings, house.value().doubts());
    HouseFigures figures = new HouseFigures(house.value(), library.value());
    Compilation.Coverages covered = Compilation.Coverages.of(() -> rules.of(figures.library()), figures);
    return new Compilation(plan, figures, covered, files, written.items(), List.of(), List.of(),
        Undecided.NOTHING, false, completeness, reading.placement())
        .with(findings);
  }

  /**
   * Trials that are asked for beside a plan that is compiled already; no file is read.
   *
   * @return findings of the text alone
   */
  public static Checked<List<Trial>> trials(Compilation plan, Source text) {
    return Binder.trials(text, plan.house(), plan.library(), plan.files());
  }

  /** The second half: a structure with the findings of the phases that judge it as well. */
  public Compilation judge(Compilation structure) {
    return structure.judged(judgments(structure, Pace.WHOLE));
  }

  /**
   * What the phases that judge a structure find, with spans as the house has them: not yet placed.
   *
   * @throws java.util.concurrent.CancellationException where the pace says that nobody waits for it
   */
  public Judgments judgments(Compilation structure, Pace pace) {
    HouseFigures figures = structure.figures();
    House house = figures.house();
    RuleBook book = rules.of(figures.library());
    AtomicReference<Judgment> rulesSay = new AtomicReference<>();
    List<JudgingPhase> phases = List.of(
        new JudgingPhase("rules", () -> {
          rulesSay.set(book.judge(figures, pace));
          return rulesSay.get().findings();
        }),
        new JudgingPhase("expectations", () -> Expectations.check(house, figures.trials())),
        new JudgingPhase("available fault current", figures::faultFindings),
        new JudgingPhase("calculated load", () -> ServiceLoad.check(house, figures.worksheets())),
        new JudgingPhase("space in panels", () -> PanelSpace.check(house)));
    List<Finding> found = JudgingPhase.all(phases, structure.source(), pace);
    Silences silences = new Silences(house.silences(), figures.library(), COMPUTED);
    Optional<Judgment> ruled = Optional.ofNullable(rulesSay.get());
    List<Finding> ifNew = ruled.map(Judgment::ifNew).orElse(List.of());
    return new Judgments(silences.apply(found, ifNew, house.doubts().isEmpty()), silences.over(ifNew),
        Judgments.undecided(house, ruled.map(Judgment::doubtful).orElse(Set.of())), ruled);
  }

  private static Set<String> both(Set<String> some, Set<String> others) {
    Set<String> all = new HashSet<>(some);
    all.addAll(others);
    return Set.copyOf(all);
  }
}
