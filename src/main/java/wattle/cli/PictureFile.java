package wattle.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wattle.emit.drawing.Drawing;
import wattle.emit.drawing.DrawingSvg;
import wattle.emit.file.Output;
import wattle.emit.picture.PdfPicture;
import wattle.emit.picture.PngPicture;
import wattle.emit.picture.UnreadablePictureException;

/** A picture beside another result, written as the name of its file tells. */
final class PictureFile {
  private static final int PIXELS_AN_INCH = 144;

  private final Path path;
  private final String ending;

  private PictureFile(Path path, String ending) {
    this.path = path;
    this.ending = ending;
  }

  /** A file by its name; a name that tells no format ends the command, before anything is worked out. */
  static PictureFile named(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    String ending = List.of(".svg", ".png", ".pdf").stream().filter(lower::endsWith).findFirst().orElseThrow(
        () -> new Failure("the name " + name + " does not tell a format; end it in .svg, .png or .pdf"));
    return new PictureFile(ResultOutput.path(name), ending);
  }

  /** Writes it whole or not at all. */
  void write(Drawing drawing, boolean force) {
    String svg = DrawingSvg.document(drawing);
    try {
      Output output = switch (ending) {
        case ".svg" -> Output.text(path, svg);
        case ".png" -> new Output(path, PngPicture.of(svg, PIXELS_AN_INCH));
        default -> new Output(path, PdfPicture.of(List.of(svg), drawing.title(), Optional.empty()));
      };
      ResultOutput.write(List.of(output), force);
    } catch (UnreadablePictureException e) {
      throw new Failure(e.getMessage());
    }
  }
}
