package wattle.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Option;
import wattle.emit.media.file.Mark;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetJson;
import wattle.emit.media.table.SheetText;
import wattle.emit.media.table.SheetUnits;
import wattle.emit.media.text.VisibleWriter;
import wattle.quantity.UnitSystem;

/** In which format a command prints its tables. */
final class SheetFormat {
  /** What tables are written as. */
  enum Format {
    TEXT, CSV, JSON, MD
  }

  @Option(
      names = {"-f", "--format"},
      description = "text, csv, json or md (default: from the file name after --out, otherwise text).")
  private Format format;

  /**
   * Writes tables in the format asked for, or the one that the name of the file tells.
   *
   * @param units those that people are shown
   */
  void write(List<Sheet> made, UnitSystem units, ResultOutput output, PrintWriter standardOutput) {
    List<Sheet> sheets = isForPeople(output) ? SheetUnits.shown(made, units) : made;
    String text = switch (chosen(output)) {
      case TEXT -> SheetText.plain(sheets, output.file().isPresent() ? OptionalInt.empty() : VisibleWriter.columns(standardOutput));
      case CSV -> SheetText.csv(sheets);
      case JSON -> SheetJson.render(sheets);
      case MD -> output.file().isPresent() ? Mark.markdown(SheetText.markdown(sheets)) : SheetText.markdown(sheets);
    };
    if (chosen(output) == Format.TEXT) {
      output.write(text, standardOutput);
    } else {
      output.writeWhole(text, standardOutput);
    }
  }

  /** Whether people will read it, for whom long lists are cut. */
  boolean isForPeople(ResultOutput output) {
    Format chosen = chosen(output);
    return chosen == Format.TEXT || chosen == Format.MD;
  }

  private Format chosen(ResultOutput output) {
    if (format != null || output.file().isEmpty()) {
      return Optional.ofNullable(format).orElse(Format.TEXT);
    }
    String ending = output.ending().orElse("");
    return switch (ending) {
      case "txt" -> Format.TEXT;
      case "csv" -> Format.CSV;
      case "json" -> Format.JSON;
      case "md" -> Format.MD;
      default ->
        throw new Failure(
            "the name " + output.file().get() + " does not show a format; end it in .txt, .csv, .json or .md, or give --format");
    };
  }
}
