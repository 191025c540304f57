package wattle.cli;

import guru.nidi.graphviz.engine.GraphvizException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.cli.PictureOutput.Format;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.FindingMarks;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Marked;
import wattle.emit.media.graphviz.DotEngine;
import wattle.emit.view.branchwiring.BranchWiring;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.panelfront.PanelFront;
import wattle.emit.view.panelfront.PanelGraph;
import wattle.emit.view.plot.LegsPlot;
import wattle.emit.view.rooms.RoomSheet;
import wattle.model.Branch;
import wattle.model.Room;

/** {@code draw}: a picture of a plan. */
@Command(
    name = "draw",
    description = "Draws a plan: one-line diagram, panel fronts, the wiring of a branch box by box, the devices of each room, or a plot.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle draw --view one-line --out one-line.svg examples/alder-court/house.wattle",
        "  wattle draw --view panel --out panel.png examples/alder-court/house.wattle",
        "  wattle draw --view branch --of upstairs --out upstairs.png examples/alder-court/house.wattle",
        "  wattle draw --view one-line --format dot examples/cottage/house.wattle",
        "  wattle draw --view trip --of bed1 --out trip.svg examples/alder-court/house.wattle",
        "  wattle draw --view one-line --paper letter --out one-line.pdf examples/alder-court/house.wattle",
        "  wattle draw --view rooms --paper A4 --out rooms.pdf examples/alder-court/house.wattle",
        "  wattle draw --view voltage --of outdoor --out voltage.png examples/alder-court/house.wattle",
    })
final class DrawCommand implements Callable<Integer> {
  /** Nobody reads a picture of more boxes than this, and the time to place them grows with their square. */
  private static final int MOST_BOXES = 2000;

  /** What can be drawn. */
  enum View {
    ONE_LINE, PANEL, BRANCH, TRIP, VOLTAGE, LEGS, ROOMS;

    @Override
    public String toString() {
      return EnumerationWord.of(this);
    }
  }

  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = {"-v", "--view"}, required = true, description = "One of: ${COMPLETION-CANDIDATES}.")
  private View view;

  @Option(names = "--of", paramLabel = "NAME",
      description = "The branch to draw, for the views branch, trip and voltage; or the room, for the view rooms.")
  private String of;

  @Option(names = "--plain", description = "Leave out the findings that are numbered in the picture and listed below it.")
  private boolean plain;

  @Mixin
  private EngineOption engine;

  @Mixin
  private PictureOutput output;

  @Mixin
  private PaperOption paper;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    Format chosen = output.chosen();
    if (engine.isAsked() && (view != View.ONE_LINE || chosen == Format.DOT)) {
      throw new Failure("--engine is for the picture of --view one-line; leave it out");
    }
    Optional<DotEngine> layout = engine.start();
    boolean onPaper = paper.isGiven();
    if (onPaper && chosen == Format.DOT) {
      throw new Failure("a graph has no sheets; leave --paper out, or draw it as svg, png or pdf");
    }
    if (of != null && (view == View.ONE_LINE || view == View.PANEL || view == View.LEGS)) {
      throw new Failure("--of names a branch or room, and the view " + view + " is of the whole house; leave it out");
    }
    Compilation plan = input.compile(file);
    if (chosen == Format.DOT) {
      output.write(dot(plan), spec.commandLine().getOut());
    } else {
      if (onPaper) {
        wattle.emit.media.drawing.View sheets = marks(plan).on(onSheets(plan, layout), side());
        String title = sheets.title() + ": " + plan.house().title().orElse("untitled plan");
        output.write(paper.sheets(sheets, plan.house()), title, spec.commandLine().getOut());
      } else {
        Drawing drawing = marks(plan).on(drawing(plan, layout), side());
        output.write(List.of(drawing), drawing.title(), spec.commandLine().getOut());
      }
    }
    return BesideFindings.report(plan, spec);
  }

  private String dot(Compilation plan) {
    return switch (view) {
      case ONE_LINE -> oneLine(plan).dot();
      case PANEL -> PanelGraph.dot(plan.house(), plan.figures().loads());
      case BRANCH -> throw new Failure("the wiring of a branch is not a graph; draw it as svg, png or pdf");
      case ROOMS -> throw new Failure("the rooms are not a graph; draw them as svg, png or pdf");
      case TRIP, VOLTAGE, LEGS -> throw new Failure("a plot is not a graph; draw it as svg, png or pdf");
    };
  }

  private Drawing drawing(Compilation plan, Optional<DotEngine> layout) {
    return switch (view) {
      case ONE_LINE -> {
        OneLine diagram = oneLine(plan);
        yield laidOut(() -> layout.map(diagram::drawing).orElseGet(diagram::drawing));
      }
      case PANEL -> new PanelFront(plan.house()).drawing();
      case BRANCH -> BranchWiring.of(plan.house(), branch(plan), BranchWiring.USUAL_WIDTH).drawing();
      case TRIP -> BranchPlots.trip(plan, Optional.ofNullable(of)).drawing();
      case VOLTAGE -> BranchPlots.voltage(plan, Optional.ofNullable(of)).drawing();
      case LEGS -> LegsPlot.of(plan.house(), plan.figures().loads());
      case ROOMS -> rooms(plan).plate().drawing();
    };
  }

  private wattle.emit.media.drawing.View onSheets(Compilation plan, Optional<DotEngine> layout) {
    return switch (view) {
      case ONE_LINE -> {
        OneLine diagram = oneLine(plan);
        yield laidOut(() -> layout.map(diagram::view).orElseGet(diagram::view));
      }
      case PANEL -> new PanelFront(plan.house());
      case BRANCH -> BranchWiring.view(plan.house(), branch(plan));
      case TRIP -> BranchPlots.trip(plan, Optional.ofNullable(of));
      case VOLTAGE -> BranchPlots.voltage(plan, Optional.ofNullable(of));
      case LEGS -> LegsPlot.view(plan.house(), plan.figures().loads());
      case ROOMS -> rooms(plan);
    };
  }

  private static OneLine oneLine(Compilation plan) {
    return new OneLine(plan.house(), plan.figures());
  }

  private Branch branch(Compilation plan) {
    Branch branch = BranchPlots.branch(plan, Optional.ofNullable(of));
    if (view == View.BRANCH && branch.points().size() - 1 > MOST_BOXES) {
      throw new Failure("branch '" + branch.name() + "' has " + (branch.points().size() - 1) + " boxes; the wiring of " + MOST_BOXES
          + " at most is drawn, so split it into several branches");
    }
    return branch;
  }

  private FindingMarks marks(Compilation plan) {
    return plain ? FindingMarks.none() : FindingMarks.of(plan);
  }

  private Marked.Side side() {
    return switch (view) {
      case PANEL -> Marked.Side.RIGHT_CORNER;
      case BRANCH -> Marked.Side.LEFT_CORNER;
      default -> Marked.Side.BESIDE;
    };
  }

  private RoomSheet rooms(Compilation plan) {
    if (of == null) {
      return new RoomSheet(plan.house(), List.copyOf(plan.house().rooms().values()));
    }
    Room room = plan.house().rooms().get(of);
    if (room == null) {
      throw new Failure("no room is called '" + of + "'; rooms are " + String.join(", ", plan.house().rooms().keySet()));
    }
    return new RoomSheet(plan.house(), List.of(room));
  }

  private static <T> T laidOut(Supplier<T> diagram) {
    try {
      return diagram.get();
    } catch (GraphvizException e) {
      throw new Failure("the diagram cannot be laid out: " + e.getMessage());
    }
  }
}
