package wattle.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.finding.Checked;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.syntax.Lexeme;
import wattle.syntax.LexemeReader;

/** The formatter changes spaces and nothing else, and has nothing left to do the second time. */
class FormatterTest {
  private static List<Path> files() {
    List<Path> files = new ArrayList<>(Golden.plans("examples"));
    files.addAll(Golden.plans("stdlib"));
    return files;
  }

  private static String read(Path path) {
    try {
      return Files.readString(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Checked<String> format(String text) {
    return Formatter.format(new Source("house.wattle", text));
  }

  /** Every token and every comment, and a mark where a line ends that has something on it. */
  private static List<String> said(String text) {
    List<String> said = new ArrayList<>();
    for (Lexeme lexeme : LexemeReader.read(new Source("house.wattle", text)).value()) {
      boolean end = lexeme.kind() == Lexeme.Kind.LINE_END;
      if (!end) {
        said.add(lexeme.text().stripTrailing());
      } else if (!said.isEmpty() && !said.get(said.size() - 1).equals("\n")) {
        said.add("\n");
      }
    }
    while (!said.isEmpty() && said.get(said.size() - 1).equals("\n")) {
      said.remove(said.size() - 1);
    }
    return said;
  }

  @TestFactory
  Stream<DynamicTest> aSecondRunChangesNothingAndNoTokenIsLost() {
    return files().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.toString(),
                    () -> {
                      String text = read(file);
                      String once = format(text).value();
                      assertThat(format(once).value()).isEqualTo(once);
                      assertThat(said(once)).isEqualTo(said(text));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> theShippedFilesAreInOrder() {
    return files().stream()
        .filter(f -> !f.startsWith("examples/broken"))
        .map(f -> DynamicTest.dynamicTest(f.toString(), () -> assertThat(format(read(f)).value()).isEqualTo(read(f))));
  }

  /** Spaces put in and taken out where they do not matter lead to the same text. */
  @Property(tries = 100)
  void spacesDoNotMatter(@ForAll long seed) {
    String text = read(Path.of("examples/alder-court/house.wattle"));
    Random random = new Random(seed);
    StringBuilder shaken = new StringBuilder();
    boolean quoted = false;
    boolean comment = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      quoted = c == '"' ? !quoted : c != '\n' && quoted;
      comment = text.startsWith("//", i) || c != '\n' && comment;
      shaken.append(c);
      if (c == ' ' && !quoted && !comment && random.nextInt(4) == 0) {
        shaken.append(" ".repeat(1 + random.nextInt(3)));
      }
    }
    assertThat(format(shaken.toString()).value()).isEqualTo(format(text).value());
  }

  @Test
  void aFileWithMistakesIsLeftAsItIs() {
    String text = "panel   P {\n 1   15 A   = hall\n}\n";
    Checked<String> formatted = format(text);
    assertThat(formatted.value()).isEqualTo(text);
    assertThat(formatted.findings()).hasSize(1);
  }

  @Test
  void columnsForksAndEmptyLines() {
    String text =
        """
        panel P{
          1 15 A arc-fault hall "Hall"   // one
          10+12 30 A two-pole water   // two


        }
        branch hall by 14 / 2 NM-B {
        P -- 11 m -- hall.sw --4 m-- hall.lamp
        hall.sw --( 2 m+1 m )-- hall.outlet
        }
        """;
    assertThat(format(text).value())
        .isEqualTo(
            """
            panel P {
              1      15 A  arc-fault  hall  "Hall"  // one
              10+12  30 A  two-pole   water         // two
            }
            branch hall by 14/2 NM-B {
              P --11 m-- hall.sw --4 m-- hall.lamp
                         hall.sw --(2 m + 1 m)-- hall.outlet
            }
            """);
  }
}
