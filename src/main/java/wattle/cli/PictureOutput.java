package wattle.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import wattle.emit.drawing.Drawing;
import wattle.emit.drawing.DrawingSvg;
import wattle.emit.file.Output;
import wattle.emit.picture.PdfPicture;
import wattle.emit.picture.PngPicture;
import wattle.emit.picture.UnreadablePictureException;

/** As what, and where, pictures are written. */
final class PictureOutput {
  /** What pictures are written as. */
  enum Format {
    SVG,
    PNG,
    PDF,
    DOT
  }

  @Option(
      names = "--format",
      description = "svg, png, pdf or dot (default: by the name of the file that --out names, else svg).")
  private Format format;

  @Option(
      names = "--resolution",
      paramLabel = "PER-INCH",
      defaultValue = "144",
      description = "Pixels an inch of a PNG (default: ${DEFAULT-VALUE}).")
  private int resolution;

  @Mixin private ResultOutput output;

  /** The format asked for, by its name or by the file's; what cannot be written so is refused. */
  Format chosen() {
    Format chosen = format != null ? format : output.file().isEmpty() ? Format.SVG : byName();
    if ((chosen == Format.PNG || chosen == Format.PDF) && output.file().isEmpty()) {
      throw new Failure("a " + chosen + " goes to a file: give --out with its name");
    }
    if (resolution < 36 || resolution > 1200) {
      throw new Failure("--resolution takes 36 to 1200 pixels an inch");
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
              + " does not tell a format; end it in .svg, .png, .pdf or .dot, or give --format");
    };
  }

  /** Writes a graph in the DOT language. */
  void write(String dot, PrintWriter standardOutput) {
    output.write(dot, standardOutput);
  }

  /**
   * Writes sheets: all in one PDF, or a file each, numbered where there are several; all of them or none.
   *
   * @param title of all of them, as readers of PDF show it
   */
  void write(List<Drawing> sheets, String title, PrintWriter standardOutput) {
    Format chosen = chosen();
    List<String> svgs = sheets.stream().map(DrawingSvg::document).toList();
    if (output.file().isEmpty()) {
      if (svgs.size() > 1) {
        throw new Failure("the view takes " + svgs.size() + " sheets, and they go to files: give --out, such as --out sheets.pdf");
      }
      output.write(svgs.get(0), standardOutput);
      return;
    }
    try {
      output.write(files(output.file().get(), chosen, svgs, title));
    } catch (UnreadablePictureException e) {
      throw new Failure(e.getMessage());
    }
  }

  private List<Output> files(Path file, Format chosen, List<String> svgs, String title) throws UnreadablePictureException {
    if (chosen == Format.PDF) {
      return List.of(new Output(file, PdfPicture.of(svgs, title, Optional.empty())));
    }
    // Sheets know nothing of each other, and pixels take the most time of a picture.
    List<Result> results =
        IntStream.range(0, svgs.size()).parallel().mapToObj(i -> result(svgs.size() == 1 ? file : numbered(file, i + 1), chosen, svgs.get(i))).toList();
    List<Output> files = new ArrayList<>();
    for (Result result : results) {
      if (result.failure().isPresent()) {
        throw result.failure().get();
      }
      files.add(result.output().orElseThrow());
    }
    return files;
  }

  /** A file, or why it cannot be made. */
  private record Result(Optional<Output> output, Optional<UnreadablePictureException> failure) {}

  private Result result(Path place, Format chosen, String svg) {
    try {
      Output output = chosen == Format.SVG ? Output.text(place, svg) : new Output(place, PngPicture.of(svg, resolution));
      return new Result(Optional.of(output), Optional.empty());
    } catch (UnreadablePictureException e) {
      return new Result(Optional.empty(), Optional.of(e));
    }
  }

  /** The name with a number before its ending. */
  private static Path numbered(Path file, int number) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length();
    return file.resolveSibling(name.substring(0, dot) + "-" + number + name.substring(dot));
  }
}
