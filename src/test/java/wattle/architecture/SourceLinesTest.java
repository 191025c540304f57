package wattle.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** No line of Java is longer than a screen is wide; what the formatter cannot break, such as a string, is broken by hand. */
class SourceLinesTest {
  private static final int MOST = 140;

  @Test
  void noLineIsTooLong() throws IOException {
    List<String> tooLong = new ArrayList<>();
    int files = 0;
    try (Stream<Path> all = Files.walk(Path.of("src"))) {
      for (Path file : all.filter(f -> f.toString().endsWith(".java")).toList()) {
        files++;
        List<String> lines = Files.readAllLines(file);
        for (int i = 0; i < lines.size(); i++) {
          if (lines.get(i).codePointCount(0, lines.get(i).length()) > MOST) {
            tooLong.add(file + ":" + (i + 1));
          }
        }
      }
    }
    assertThat(files).as("files seen").isGreaterThan(900);
    assertThat(tooLong).isEmpty();
  }
}
