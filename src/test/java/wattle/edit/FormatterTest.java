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
            file -> DynamicTest.dynamicTest(
                file.toString(),
                () -> {
                  String text = read(file);
                  String once = format(text).value();
                  assertThat(format(once).value()).isEqualTo(once);
                  assertThat(said(once)).isEqualTo(said(text));
                }));
  }

  /** A long text is set in order in stretches: wherever it is cut, the text is that which is made in one. */
  @TestFactory
  Stream<DynamicTest> whereATextIsCutIsNoMatter() {
    return files().stream()
        .map(
            file -> DynamicTest.dynamicTest(
                file.toString(),
                () -> {
                  Random random = new Random(file.toString().hashCode());
                  String loose = read(file).replaceAll("\n\n", "\n".repeat(2 + random.nextInt(3))).replaceAll("  +", "  ");
                  for (String text : List.of(read(file), loose, loose.replace("\n", "\r\n"), loose + "\n\n", "\n" + loose,
                      loose.repeat(3))) {
                    String inOne = Formatter.format(new Source("house.wattle", text), Integer.MAX_VALUE).value();
                    for (int stretch : new int[]{1, 100 + random.nextInt(900)}) {
                      assertThat(Formatter.format(new Source("house.wattle", text), stretch).value()).isEqualTo(inOne);
                    }
                  }
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
    String text = """
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

  @Test
  void aRuleAndThePlansInIt() {
    String text = """
        rule drop-large   "Lamps  stay bright" {
         for each branch b   where b.hots is 1
           for new   work where b.status is "new"


            require 1.25*b.current+2 A is at most (b.rating - 1 A)
          and b.hots is 1
          otherwise advice "'{b.name}' loses much"
          because "Lamps   dim."
              "A second line."   // why
         accept {
         panel P from main{
           1 15 A arc-fault b
          3  20 A   spare
         }

         branch b by 14/2 NM-B { P -- 8 m --  hall.a }
         }
         reject "8 m" becomes   "80 m"
        }
        """;
    String tidied = """
        rule drop-large "Lamps  stay bright" {
          for each branch b where b.hots is 1
          for new work where b.status is "new"

          require 1.25 * b.current + 2 A is at most (b.rating - 1 A)
            and b.hots is 1
          otherwise advice "'{b.name}' loses much"
          because "Lamps   dim."
            "A second line."  // why
          accept {
            panel P from main {
              1  15 A  arc-fault  b
              3  20 A  spare
            }

            branch b by 14/2 NM-B { P --8 m-- hall.a }
          }
          reject "8 m" becomes "80 m"
        }
        """;
    assertThat(format(text).value()).isEqualTo(tidied);
    assertThat(format(tidied).value()).isEqualTo(tidied);
    assertThat(said(tidied)).isEqualTo(said(text.replace("\n\n\n", "\n\n")));
  }

  /** What a reject replaces must be found as it is written, and what cannot be read is not touched. */
  @Test
  void samplesThatCountOnTheirSpacesStayAsTheyAre() {
    String rule = "rule r \"R\" {\n  for each branch b\n  require b.hots is 1\n  otherwise error \"no\"\n";
    String sample = "    panel P from main {\n      1 15 A arc-fault b\n    }\n";
    String counted = rule + "  accept {\n" + sample + "  }\n  reject \"1 15 A\" becomes \"1 20 A\"\n}\n";
    assertThat(format(counted).value()).isEqualTo(counted);
    String free = counted.replace("reject \"1 15 A\"", "reject \"15 A\"");
    assertThat(format(free).value()).isEqualTo(free.replace("1 15 A arc-fault b", "1  15 A  arc-fault  b"));
    String broken = free.replace("1 15 A arc-fault b", "1   15 A  = b");
    assertThat(format(broken).value()).isEqualTo(broken);
  }

  /** An edit of a fix that is half typed, or lacks the word that says what is done, is a finding of its line. */
  @Test
  void anEditOfAFixThatIsHalfTypedIsLeftAsItIs() {
    String rule = "rule r \"R\" {\n  for each branch b\n  require b.hots is 1\n  otherwise error \"no\"\n  fix \"do\"\n    ";
    for (String edit : List.of("b.breaker \"x\"", "b. \"x\"", "b.breaker back \"x\"", "b.breaker with", "b \"x\" becomes")) {
      String text = rule + edit + "\n}\n";
      assertThat(format(text).findings()).as(edit).isNotEmpty();
      assertThat(format(text).value()).isEqualTo(text);
    }
  }

  @Test
  void lineEndsStayThoseOfTheFile() {
    String text = "room  hall { }\nroom kitchen  { }\n";
    assertThat(format(text.replace("\n", "\r\n")).value()).isEqualTo("room hall { }\r\nroom kitchen { }\r\n");
    assertThat(format(text).value()).isEqualTo("room hall { }\nroom kitchen { }\n");
  }

  /** Whatever a plan under work looks like: left as it is, or in order with nothing lost, and in order for good. */
  @Property(tries = 150)
  void plansUnderWorkLoseNothing(@ForAll long seed) {
    List<Path> files = files();
    Random random = new Random(seed);
    List<String> lines = new ArrayList<>(read(files.get(random.nextInt(files.size()))).lines().toList());
    for (int edit = random.nextInt(4); edit > 0; edit--) {
      int at = random.nextInt(lines.size());
      switch (random.nextInt(4)) {
        case 0 -> lines.remove(at);
        case 1 -> lines.add(at, lines.get(random.nextInt(lines.size())));
        case 2 -> lines.set(at, lines.get(at).replaceFirst(" ", "\t   "));
        default -> lines.set(at, lines.get(at) + "  // " + at);
      }
    }
    String text = String.join("\n", lines) + "\n";
    Checked<String> once = format(text);
    assertThat(format(once.value()).value()).isEqualTo(once.value());
    assertThat(said(once.value())).isEqualTo(said(text));
  }
}
