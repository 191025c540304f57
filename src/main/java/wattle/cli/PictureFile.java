package wattle.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.file.Output;
import wattle.emit.media.picture.PdfPicture;
import wattle.emit.media.picture.PngPicture;
import wattle.emit.media.picture.UnreadablePictureException;

/**
 * A file for drawings, or several with numbers in their names.
 *
 * @param resolution pixels an inch of a PNG
 */
record PictureFile(Path path, Format format, int resolution) {
  static final int USUAL_RESOLUTION = 144;

  /** What drawings are written as. */
  enum Format {
    SVG, PNG, PDF
  }

  /**
   * A picture beside another result, as the name of its file tells; a name that tells no format ends the command before anything
   * is worked out.
   */
  static PictureFile named(String name) {
    Path path = ResultOutput.path(name);
    Format format = switch (ResultOutput.ending(path).orElse("")) {
      case "svg" -> Format.SVG;
      case "png" -> Format.PNG;
      case "pdf" -> Format.PDF;
      default -> throw new Failure("the name " + name + " does not show a format; end it in .svg, .png or .pdf");
    };
    return new PictureFile(path, format, USUAL_RESOLUTION);
  }

  /**
   * The file of drawings: all in one PDF, or a file each, numbered where there are several.
   *
   * @param title of all of them, as readers of PDF show it
   */
  List<Output> of(List<Drawing> drawings, String title) {
    try {
      return files(drawings.stream().map(DrawingSvg::document).toList(), title);
    } catch (UnreadablePictureException e) {
      throw new Failure(e.getMessage());
    }
  }

  private List<Output> files(List<String> svgs, String title) throws UnreadablePictureException {
    if (format == Format.PDF) {
      return List.of(new Output(path, PdfPicture.of(svgs, title, Optional.empty())));
    }
    // Sheets know nothing of each other, and pixels take the most time of a picture.
    List<Result> results = IntStream.range(0, svgs.size()).parallel()
        .mapToObj(i -> result(svgs.size() == 1 ? path : numbered(i + 1), svgs.get(i))).toList();
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

  private Result result(Path place, String svg) {
    try {
      Output output = format == Format.SVG ? Output.text(place, svg) : new Output(place, PngPicture.of(svg, resolution));
      return new Result(Optional.of(output), Optional.empty());
    } catch (UnreadablePictureException e) {
      return new Result(Optional.empty(), Optional.of(e));
    }
  }

  /** The name with a number before its ending. */
  private Path numbered(int number) {
    String name = path.getFileName().toString();
    int dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length();
    return path.resolveSibling(name.substring(0, dot) + "-" + number + name.substring(dot));
  }
}
