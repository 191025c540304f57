package wattle.compiler;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import wattle.balance.PanelSpace;
import wattle.bind.Binder;
import wattle.bind.SourceReader;
import wattle.conductors.Conductors;
import wattle.faults.FaultChecks;
import wattle.faults.Faults;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.trials.Expectations;

/** Text to everything: syntax, bind, then the phases that judge. The run of phases, on one screen. */
public final class Compiler {
  private final SourceReader reader;

  public Compiler(SourceReader reader) {
    this.reader = reader;
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
    Checked<Binder.Bound> bound = Binder.bind(plan, path, reader, beside);
    List<Finding> findings = new ArrayList<>(bound.findings());
    findings.addAll(PanelSpace.check(bound.value().house().panels().values()));
    findings.addAll(faults(bound.value()));
    findings.addAll(Expectations.check(bound.value().house(), bound.value().library(), !bound.hasErrors()));
    findings.sort(Finding.BY_DANGER);
    return new Compilation(plan, bound.value().house(), bound.value().library(), bound.value().files(), findings);
  }

  private static List<Finding> faults(Binder.Bound bound) {
    Conductors conductors = Conductors.of(bound.house(), bound.library());
    return FaultChecks.of(bound.house(), bound.library(), Faults.of(bound.house(), bound.library(), conductors));
  }
}
