package wattle.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** Finds what a computation shows where it has no result: not a number, or infinity, as Java prints them. */
final class NoFigure {
  private static final Pattern SHOWN = Pattern.compile("NaN|Infinity|\u221e");
  private static final Pattern SCRIPT = Pattern.compile("(?s)<script.*?</script>");

  private NoFigure() {}

  static boolean isIn(String text) {
    return SHOWN.matcher(text).find();
  }

  /** Whether a result shows one: a text as it is, a page without its scripts, a PDF by its text; a folder in any of its files. */
  static boolean isIn(Path result) throws IOException {
    if (!Files.exists(result)) {
      return false;
    }
    if (Files.isDirectory(result)) {
      try (Stream<Path> files = Files.list(result)) {
        for (Path file : files.toList()) {
          if (isIn(file)) {
            return true;
          }
        }
        return false;
      }
    }
    String name = result.getFileName().toString();
    if (name.endsWith(".png")) {
      return false; // its text is that of the picture as SVG
    }
    if (name.endsWith(".pdf")) {
      try (PDDocument pages = Loader.loadPDF(result.toFile())) {
        return isIn(new PDFTextStripper().getText(pages));
      }
    }
    return isIn(SCRIPT.matcher(Files.readString(result)).replaceAll(""));
  }
}
