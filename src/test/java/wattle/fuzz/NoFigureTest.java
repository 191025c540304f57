package wattle.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.emit.media.picture.PdfPicture;

/** What the fuzzers look for is found where a result has it, and only there. */
class NoFigureTest {
  @TempDir
  Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"load NaN A", "drop -Infinity %", "\u221e W"})
  void isFoundInTextsPagesAndPapers(String shown) throws Exception {
    assertThat(NoFigure.isIn(shown)).isTrue();
    assertThat(NoFigure.isIn("load 12 A, in range")).isFalse();

    assertThat(NoFigure.isIn(Files.writeString(folder.resolve("a.html"), "<td>" + shown + "</td>"))).isTrue();
    assertThat(NoFigure.isIn(folder)).as("the folder of a report").isTrue();
    assertThat(NoFigure.isIn(Files.writeString(folder.resolve("b.html"), "<script>a = " + shown + "</script><td>3</td>"))).isFalse();
    String picture = "<?xml version='1.0'?>\n<svg xmlns='http://www.w3.org/2000/svg' width='200' height='40'>"
        + "<text x='9' y='20' font-family='DejaVu Sans' font-size='12'>" + shown + "</text></svg>";
    assertThat(NoFigure.isIn(Files.write(folder.resolve("c.pdf"), PdfPicture.of(List.of(picture), "t", Optional.empty())))).isTrue();
    assertThat(NoFigure.isIn(folder.resolve("missing"))).isFalse();
  }
}
