package wattle.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.acceptance.FilledSheet;
import wattle.acceptance.Measurement;
import wattle.cli.DocumentFormat.Format;
import wattle.compiler.Compilation;
import wattle.emit.document.acceptance.TestPage;
import wattle.emit.document.acceptance.TestSheet;
import wattle.emit.document.findings.JsonFindings;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetJson;
import wattle.emit.media.table.SheetText;
import wattle.emit.media.text.VisibleWriter;
import wattle.finding.Checked;

/** {@code test-sheet}: what to measure after the work, and what was measured held against it. */
@Command(
    name = "test-sheet",
    description = "Lists what to measure after the work on services, feeders, panels and branches, and the reading to expect; checks "
        + "a filled-in sheet.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle test-sheet examples/workshop/house.wattle --out tests.csv",
        "  wattle test-sheet examples/workshop/house.wattle --read tests.csv",
        "  wattle test-sheet examples/workshop/house.wattle --out tests.pdf",
    })
final class TestSheetCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = "--read", paramLabel = "CSV", description = "A filled-in sheet: prints the readings that are out of range, with "
      + "their lines.")
  private String filled;

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
    Set<Format> known = filled == null
        ? Set.of(Format.TEXT, Format.CSV, Format.JSON, Format.MD, Format.HTML, Format.PDF)
        : Set.of(Format.TEXT, Format.JSON);
    Format format = document.chosen(output, Format.TEXT, known);
    String paper = document.paper();
    Compilation plan = input.compile(file);
    List<Measurement> measurements = plan.figures().measurements();
    PrintWriter out = spec.commandLine().getOut();
    if (filled != null) {
      return compare(measurements, format, out, BesideFindings.report(plan, spec));
    }
    List<Sheet> sheets = List.of(TestSheet.of(measurements, plan.house().units()));
    switch (format) {
      case TEXT -> output.write(SheetText.plain(sheets, VisibleWriter.columns(out)), out);
      case CSV -> output.writeWhole(SheetText.csv(sheets), out);
      case MD -> output.writeWhole(SheetText.markdown(sheets), out);
      case JSON -> output.writeWhole(SheetJson.render(sheets), out);
      case HTML, PDF -> DocumentFormat.write(TestPage.of(plan.house(), measurements, paper), format, output, out);
    }
    return BesideFindings.report(plan, spec);
  }

  private int compare(List<Measurement> measurements, Format format, PrintWriter out, int planCode) {
    Checked<Map<String, String>> read = FilledSheet.read(input.readSheet(filled), measurements);
    if (format == Format.JSON) {
      output.writeWhole(JsonFindings.render(read.findings()), out);
    } else {
      output.write(
          new TextFindings(Terminal.wantsColor(), Map.of(), VisibleWriter.columns(out)).render(read.findings()) + read.value().size()
              + " of " + measurements.size()
              + " measurements read; " + TextFindings.summary(read.findings(), filled) + "\n",
          out);
    }
    return read.findings().stream().anyMatch(CheckCommand::isError) ? ExitCode.FOUND : planCode;
  }
}
