package wattle.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import wattle.compiler.Compilation;
import wattle.emit.media.table.SheetFigure;
import wattle.emit.media.text.VisibleWriter;
import wattle.emit.sheet.figures.FiguresJson;
import wattle.emit.sheet.figures.FiguresText;
import wattle.emit.sheet.figures.PlanFigures;
import wattle.finding.NearNames;
import wattle.model.Trial;
import wattle.quantity.UnitSystem;

/** Which figures of a plan {@code explain} unfolds. */
final class FigureOptions {
  private static final int MOST = 24;

  /** What figures are written as. */
  enum Format {
    TEXT, JSON
  }

  @Option(
      names = "--figure",
      paramLabel = "NAME",
      description = {
          "Show the formula, inputs, tables and sources of a figure of the plan: voltage of kitchen.c1,",
          "ampacity of hall. Can be repeated.",
      })
  private List<String> names = List.of();

  @Option(names = "--figures", description = "List the figures of the plan by name.")
  private boolean list;

  @Option(names = "--trial", paramLabel = "TRIAL", description = "Use the figures of this trial instead of those of the tables.")
  private String trial;

  @Option(names = {"-f", "--format"}, description = "text or json, for figures (default: text).")
  private Format format;

  @Mixin
  private PlanInput input;

  /** Whether figures of a plan are asked for, and no rule. */
  boolean isGiven() {
    return list || !names.isEmpty();
  }

  /** Ends the command where the options that only go with a figure are given without one. */
  void refuseWithoutFigure() {
    if (trial != null || format != null) {
      throw new Failure((trial != null ? "--trial" : "--format") + " goes with --figure or --figures, and a plan");
    }
  }

  int print(String file, CommandSpec spec) {
    if (list && !names.isEmpty()) {
      throw new Failure("--figures lists them all and --figure unfolds one; give one of the two");
    }
    Compilation plan = input.compile(file);
    UnitSystem units = format == Format.JSON ? UnitSystem.METRIC : plan.house().units();
    PlanFigures figures = trial == null ? PlanFigures.of(plan, units) : PlanFigures.of(plan, trial(plan), units);
    PrintWriter out = spec.commandLine().getOut();
    Set<SheetFigure> others = new LinkedHashSet<>();
    List<SheetFigure> wanted = list ? figures.all() : wanted(figures, file, others);
    if (format == Format.JSON) {
      VisibleWriter.printWhole(out, FiguresJson.render(wanted, !list));
    } else {
      out.print(list ? FiguresText.list(wanted, VisibleWriter.columns(out)) : FiguresText.unfolded(wanted));
      others.removeAll(wanted);
      if (!others.isEmpty()) {
        out.print(FiguresText.others(others.stream().limit(MOST).toList()));
        if (others.size() > MOST) {
          out.println("  and " + (others.size() - MOST) + " more: " + listing(file));
        }
      }
    }
    return BesideFindings.report(plan, spec);
  }

  /** @param others gets those that match as well */
  private List<SheetFigure> wanted(PlanFigures figures, String file, Set<SheetFigure> others) {
    List<SheetFigure> wanted = new ArrayList<>();
    for (String name : names) {
      PlanFigures.Found found = figures.find(name);
      if (found.figures().isEmpty()) {
        throw new Failure(unknown(name, figures, file));
      }
      wanted.addAll(found.figures());
      (format == Format.JSON ? wanted : others).addAll(found.others());
    }
    return wanted;
  }

  private String unknown(String name, PlanFigures figures, String file) {
    List<String> near = figures.near(name);
    return "no figure is called '" + name + "'" + (near.isEmpty() ? "" : "; did you mean " + String.join(", or ", near) + "?")
        + (near.isEmpty() ? "; " : " ") + listing(file) + (near.isEmpty() ? " lists them" : " lists them all");
  }

  private String listing(String file) {
    return "wattle explain " + file + " --figures" + Optional.ofNullable(trial).map(t -> " --trial " + t).orElse("");
  }

  private Trial trial(Compilation plan) {
    Trial found = plan.house().trials().get(trial);
    if (found == null) {
      List<String> near = NearNames.of(trial, plan.house().trials().keySet());
      throw new Failure(
          "no trial is called '" + trial + "'"
              + (near.isEmpty()
                  ? "; there are: " + String.join(", ", plan.house().trials().keySet())
                  : "; did you mean " + String.join(", ", near) + "?"));
    }
    return found;
  }
}
