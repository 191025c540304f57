package wattle.bench;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import wattle.boxes.BoxFill;
import wattle.cli.Main;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.conductors.Conductors;
import wattle.emit.document.directory.DirectoryPage;
import wattle.emit.document.report.Content;
import wattle.emit.document.report.Part;
import wattle.emit.document.report.Report;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.graphviz.DotEngine;
import wattle.emit.media.page.Page;
import wattle.emit.media.picture.PdfPages;
import wattle.emit.media.picture.PdfPicture;
import wattle.emit.media.picture.PngPicture;
import wattle.emit.media.picture.UnreadablePictureException;
import wattle.emit.media.table.Sheet;
import wattle.emit.sheet.schedule.BoxSchedule;
import wattle.emit.sheet.schedule.FaultSchedule;
import wattle.emit.sheet.schedule.LoadSchedule;
import wattle.emit.sheet.schedule.MaterialsSchedule;
import wattle.emit.sheet.schedule.PanelSchedule;
import wattle.emit.sheet.schedule.RoomSchedule;
import wattle.emit.sheet.schedule.RunSchedule;
import wattle.emit.sheet.trial.WorstCaseSheets;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.panelfront.PanelFront;
import wattle.faults.Faults;
import wattle.figures.HouseFigures;
import wattle.loads.ConnectedLoads;
import wattle.materials.Materials;
import wattle.model.House;
import wattle.read.SourceReader;
import wattle.trials.Expectations;
import wattle.trials.Judged;
import wattle.trials.SolvedTrials;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Outcome;

/**
 * The documents of Alder Court, part by part and whole, when all is warm; and the graph of its one-line diagram laid out by the
 * engine that is built in and by an installed Graphviz, whose process is started anew for each.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 3)
@Measurement(iterations = 5, time = 3)
public class DocumentsBench {
  private static final Path COURT = Path.of("examples/alder-court/house.wattle");

  private Compilation plan;
  private House house;
  private ConnectedLoads loads;
  private String graph;
  private String svg;
  private List<Sheet> runs;
  private Path out;

  @Setup
  public void compile() throws SourceReader.Unreadable, IOException {
    out = Files.createTempDirectory("wattle-documents");
    plan = text();
    house = plan.house();
    loads = ConnectedLoads.of(house);
    graph = new OneLine(house, plan.figures()).dot();
    svg = DrawingSvg.document(new OneLine(house, plan.figures()).drawing());
    runs = runs();
  }

  @TearDown
  public void clear() throws IOException {
    for (String name : List.of("report.html", "report.pdf")) {
      Files.deleteIfExists(out.resolve(name));
    }
    Files.deleteIfExists(out);
  }

  /** Text to findings. */
  @Benchmark
  public Compilation text() throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(COURT);
  }

  @Benchmark
  public List<Sheet> panels() {
    return PanelSchedule.of(house, loads);
  }

  @Benchmark
  public Sheet connectedLoads() {
    return LoadSchedule.of(house, ConnectedLoads.of(house));
  }

  @Benchmark
  public List<Sheet> runs() {
    return List.of(RunSchedule.of(house, Conductors.of(house, plan.library())));
  }

  @Benchmark
  public Sheet materials() {
    return MaterialsSchedule.of(Materials.of(house, plan.library()), house.units());
  }

  @Benchmark
  public String oneLine() {
    return DrawingSvg.document(new OneLine(house, plan.figures()).drawing());
  }

  @Benchmark
  public String panelFronts() {
    return DrawingSvg.document(new PanelFront(house).drawing());
  }

  @Benchmark
  public byte[] oneLineAsPng() throws UnreadablePictureException {
    return PngPicture.of(svg, 144);
  }

  @Benchmark
  public byte[] oneLineAsPdf() throws UnreadablePictureException {
    return PdfPicture.of(List.of(svg), "One-line diagram", Optional.empty());
  }

  @Benchmark
  public Sheet boxesAndFill() {
    return BoxSchedule.of(house, new BoxFill(house, plan.library()));
  }

  @Benchmark
  public Sheet rooms() {
    return RoomSchedule.of(house);
  }

  @Benchmark
  public Sheet voltages() {
    return WorstCaseSheets.voltages(new HouseFigures(house, plan.library()).worst());
  }

  @Benchmark
  public Sheet heat() {
    return WorstCaseSheets.heat(new HouseFigures(house, plan.library()).worst());
  }

  @Benchmark
  public Sheet faults() {
    return FaultSchedule.of(house, plan.library(), Faults.of(house, plan.library(), Conductors.of(house, plan.library())));
  }

  /** Every method of load calculation for the service. */
  @Benchmark
  public List<Outcome> worksheets() {
    HouseWorksheets worksheets = new HouseWorksheets(house, plan.library());
    return worksheets.compare(worksheets.services().get(0));
  }

  @Benchmark
  public List<Judged> expectations() {
    return Expectations.judged(house, new SolvedTrials(house, plan.library()));
  }

  @Benchmark
  public byte[] directoryAsPdf() throws UnreadablePictureException {
    Page page = DirectoryPage.sheet(house, List.copyOf(house.panels().values()), "letter");
    return PdfPages.of(page.html(), page.title());
  }

  /** The whole report as a page, its parts made side by side. */
  @Benchmark
  public int reportAsPage() {
    return report();
  }

  /** The same and for paper. */
  @Benchmark
  public int reportAsPageAndPaper() {
    return report("--pdf");
  }

  private int report(String... more) {
    List<String> arguments = new ArrayList<>(List.of("report", COURT.toString(), "--force", "--out", out.toString()));
    arguments.addAll(List.of(more));
    return Main.run(arguments.toArray(String[]::new), new PrintWriter(Writer.nullWriter()), new PrintWriter(Writer.nullWriter()));
  }

  /** A page of one table that was made before. */
  @Benchmark
  public String page() {
    return new Report(plan,
        List.of(new Part(Part.Group.BRANCHES, "Runs", List.of(new Content.Table(runs.get(0), "wattle table --of runs", runs.get(0))))))
        .html();
  }

  /** The diagram step alone. */
  @Benchmark
  public String graphBuiltIn() {
    return DotEngine.builtIn().render(graph, Engine.DOT, Format.SVG).text();
  }

  /** The same graph by an installed {@code dot}. */
  @Benchmark
  public String graphNative() throws FileNotFoundException {
    return DotEngine.installed("dot").render(graph, Engine.DOT, Format.SVG).text();
  }
}
