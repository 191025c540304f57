package wattle.cli;

import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.cli.DocumentFormat.Format;
import wattle.compiler.Compilation;
import wattle.emit.document.directory.DirectoryPage;
import wattle.emit.document.directory.DirectoryText;
import wattle.finding.NearNames;
import wattle.model.House;
import wattle.model.Panel;

/** {@code directory}: what hangs in a panel's door. */
@Command(
    name = "directory",
    description = "Makes the circuit directory for a panel door: each slot and what it feeds, in plain words.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle directory examples/alder-court/house.wattle --out door.pdf",
        "  wattle directory examples/alder-court/house.wattle --panel G --folded --paper A4 --out card.pdf",
    })
final class DirectoryCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = "--panel", paramLabel = "NAME", description = "Only this panel (default: every panel, each on its own sheet).")
  private String panel;

  @Option(names = "--folded", description = "Make a card to print on both sides and fold once, instead of a sheet.")
  private boolean folded;

  @Mixin
  private DocumentFormat document;

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    Format format = document.chosen(output, Format.TEXT, Set.of(Format.TEXT, Format.HTML, Format.PDF));
    if (format == Format.TEXT && folded) {
      throw new Failure("a folded card is a page: name a file that ends in .pdf or .html with --out");
    }
    String paper = document.paper();
    Compilation plan = input.compile(file);
    List<Panel> panels = panels(plan.house());
    if (format == Format.TEXT) {
      output.write(DirectoryText.render(plan.house(), panels), spec.commandLine().getOut());
      return BesideFindings.report(plan, spec);
    }
    DocumentFormat.write(
        folded ? DirectoryPage.card(plan.house(), panels, paper) : DirectoryPage.sheet(plan.house(), panels, paper),
        format, output, spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }

  private List<Panel> panels(House house) {
    if (house.panels().isEmpty()) {
      throw new Failure(file + " has no panel");
    }
    if (panel == null) {
      return List.copyOf(house.panels().values());
    }
    if (!house.panels().containsKey(panel)) {
      List<String> near = NearNames.of(panel, house.panels().keySet());
      throw new Failure(
          "no panel is called '" + panel + "'; "
              + (near.isEmpty()
                  ? "panels are " + String.join(", ", house.panels().keySet())
                  : "did you mean " + String.join(", ", near) + "?"));
    }
    return List.of(house.panels().get(panel));
  }
}
