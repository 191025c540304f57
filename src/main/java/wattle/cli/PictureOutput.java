package wattle.cli;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.text.VisibleWriter;

/** As what, and where, pictures are written. */
final class PictureOutput {
  /** What pictures are written as. */
  enum Format {
    SVG, PNG, PDF, DOT
  }

  @Option(
      names = {"-f", "--format"},
      description = "svg, png, pdf or dot (default: from the file name after --out, otherwise svg).")
  private Format format;

  @Option(
      names = "--resolution",
      paramLabel = "PER-INCH",
      defaultValue = "" + PictureFile.USUAL_RESOLUTION,
      description = "Pixels per inch of a PNG (default: ${DEFAULT-VALUE}).")
  private int resolution;

  @Mixin
  private ResultOutput output;

  /** The format asked for, by its name or by the file's; what cannot be written so is refused. */
  Format chosen() {
    Format chosen = format != null ? format : output.file().isEmpty() ? Format.SVG : byName();
    if ((chosen == Format.PNG || chosen == Format.PDF) && output.file().isEmpty()) {
      throw new Failure("a " + chosen + " goes to a file: give --out with its name");
    }
    if (resolution < 36 || resolution > 1200) {
      throw new Failure("--resolution takes 36 to 1200 pixels per inch");
    }
    return chosen;
  }

  private Format byName() {
    return switch (output.ending().orElse("")) {
      case "svg" -> Format.SVG;
      case "png" -> Format.PNG;
      case "pdf" -> Format.PDF;
      case "dot", "gv" -> Format.DOT;
      default -> throw new Failure(
          "the name " + output.file().orElseThrow()
              + " does not show a format; end it in .svg, .png, .pdf or .dot, or give --format");
    };
  }

  /** Writes a graph in the DOT language. */
  void write(String dot, PrintWriter standardOutput) {
    output.writeWhole(dot, standardOutput);
  }

  /**
   * Writes sheets: all in one PDF, or a file each, numbered where there are several; all of them or none.
   *
   * @param title of all of them, as readers of PDF show it
   */
  void write(List<Drawing> sheets, String title, PrintWriter standardOutput) {
    if (output.file().isPresent()) {
      PictureFile file = new PictureFile(output.file().get(), PictureFile.Format.valueOf(chosen().name()), resolution);
      output.write(file.of(sheets, title));
      return;
    }
    if (sheets.size() > 1) {
      throw new Failure("the view takes " + sheets.size() + " sheets, and they go to files: give --out, such as --out sheets.pdf");
    }
    if (VisibleWriter.columns(standardOutput).isPresent()) {
      throw new Failure("a picture is not shown on a terminal: name a file with --out, such as --out picture.svg");
    }
    output.writeWhole(DrawingSvg.document(sheets.get(0)), standardOutput);
  }
}
