package wattle.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.StructurePages;
import wattle.finding.NearNames;
import wattle.library.StandardLibrary;
import wattle.rules.Rule;
import wattle.rules.RuleLoader;
import wattle.rules.RulePage;

/** {@code explain}: what a rule asks for, why, where it is from, and a plan that keeps and one that breaks it. */
@Command(
    name = "explain",
    description = "Explains a rule, or how a figure of a plan was come by; without a name, lists all rules by pack.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle explain",
        "  wattle explain box-overfilled",
        "  wattle explain --pack ca-2021",
        "  wattle explain examples/alder-court/house.wattle --figure \"voltage of kitchen.c1\"",
        "  wattle explain examples/alder-court/house.wattle --figure \"ampacity of hall\" --format json",
        "  wattle explain examples/alder-court/house.wattle --figures",
        "  wattle explain examples/alder-court/house.wattle --trial evening --figure \"voltage of kitchen.range\"",
    })
final class ExplainCommand implements Callable<Integer> {
  @Parameters(arity = "0..1", paramLabel = "RULE|FILE",
      description = "Name of a rule, as findings show it in brackets; with --figure, a plan, or - for standard input.")
  private String name;

  @Option(names = "--pack", paramLabel = "PACK", description = "List the rules of this pack alone.")
  private String pack;

  @Mixin
  private FigureOptions figures;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    if (figures.isGiven()) {
      if (name == null || pack != null) {
        throw new Failure(
            name == null ? "a figure is of a plan: name its file" : "--pack lists rules, and --figure is of a plan; give one of the two");
      }
      return figures.print(name, spec);
    }
    figures.refuseWithoutFigure();
    Map<String, Rule> rules = rules();
    if (name == null) {
      list(out, rules);
      return ExitCode.FINE;
    }
    Optional<String> structure = StructurePages.of(name);
    if (rules.containsKey(name)) {
      out.print(RulePage.text(rules.get(name)));
    } else if (structure.isPresent()) {
      out.print(structure.get());
    } else if (name.endsWith(".wattle")) {
      throw new Failure(name + " is a plan: say which figure of it with --figure, or list them with --figures");
    } else {
      List<String> known = new java.util.ArrayList<>(rules.keySet());
      known.addAll(StructurePages.names());
      List<String> near = NearNames.of(name, known);
      throw new Failure("no rule is called '" + name + "'"
          + (near.isEmpty() ? "; wattle explain lists them" : "; did you mean " + String.join(", ", near) + "?"));
    }
    return ExitCode.FINE;
  }

  /** The rules of every pack, by name. */
  private static Map<String, Rule> rules() {
    Map<String, Rule> rules = new LinkedHashMap<>();
    for (String each : StandardLibrary.packNames()) {
      RuleLoader.load(StandardLibrary.written(List.of("common", each)).value()).value().stream()
          .filter(r -> r.pack().equals(each))
          .forEach(r -> rules.put(r.name(), r));
    }
    return rules;
  }

  private void list(PrintWriter out, Map<String, Rule> rules) {
    List<String> packs = StandardLibrary.packNames();
    if (pack != null && !packs.contains(pack)) {
      throw new Failure("no pack is called '" + pack + "'; there are " + String.join(", ", packs));
    }
    for (String each : packs) {
      if (pack == null || pack.equals(each)) {
        out.println(each);
        rules.values().stream().filter(r -> r.pack().equals(each))
            .forEach(r -> out.printf("  %-8s %-38s %s%n", r.severity(), r.name(), r.title()));
        out.println();
      }
    }
    if (pack == null) {
      out.println("structure, whatever the pack");
      StructurePages.all().forEach((each, title) -> out.printf("  %-47s %s%n", each, title));
    }
  }
}
