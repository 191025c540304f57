package wattle.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import wattle.balance.PanelBalance;
import wattle.compiler.Compilation;
import wattle.emit.sheet.balance.BalanceSheets;

/** {@code balance}: slots that bring the legs of a panel nearer to each other. */
@Command(
    name = "balance",
    description = "Proposes slots that balance the legs of each panel better, with as few moves as possible.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle balance examples/alder-court/house.wattle",
        "  wattle balance --panel P --moves 2 examples/alder-court/house.wattle",
        "  wattle balance --format csv examples/alder-court/house.wattle",
    })
final class BalanceCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = "--panel", paramLabel = "P", description = "Only this panel. Can be repeated (default: all).")
  private List<String> panels = List.of();

  @Option(names = "--moves", paramLabel = "N", description = "Most moves in each panel; 0 shows only the legs (default: no limit).")
  private Integer moves;

  @Option(
      names = "--write",
      description = "Change the slot numbers in the plan and nothing else; refused if that would cause a new finding.")
  private boolean write;

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
    if (file.equals("-") && write) {
      throw new Failure("standard input cannot be changed in place; leave --write out");
    }
    if (moves != null && moves < 0) {
      throw new ParameterException(spec.commandLine(), "--moves takes 0 or more");
    }
    Compilation plan = input.compile(file);
    List<PanelBalance> balances = plan.figures().balance(panels(plan), moves == null ? Integer.MAX_VALUE : moves);
    format.write(BalanceSheets.of(balances), plan.house().units(), output, spec.commandLine().getOut());
    if (write) {
      new SlotWriter(input, plan, file).write(balances, spec.commandLine().getErr());
    }
    return BesideFindings.report(plan, spec);
  }

  private List<String> panels(Compilation plan) {
    List<String> known = new ArrayList<>(plan.house().panels().keySet());
    for (String panel : panels) {
      if (!known.contains(panel)) {
        throw new Failure("the plan has no panel '" + panel + "'; it has " + (known.isEmpty() ? "none" : String.join(", ", known)));
      }
    }
    return panels.isEmpty() ? known : panels.stream().distinct().toList();
  }
}
