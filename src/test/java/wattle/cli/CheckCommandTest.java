package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person meets at the command line: every exit code, and one line for what cannot be read. */
class CheckCommandTest {
  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  private void assertOneLine(Ran ran, String... words) {
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.out).isEmpty();
    assertThat(ran.err.lines()).hasSize(1);
    assertThat(ran.err).startsWith("wattle: ").contains(words);
  }

  private String file(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes).toString();
  }

  private String plan(String name, String text) throws IOException {
    return file(name, text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void aCleanPlanEndsInZero() {
    Ran ran = run("check", "examples/alder-court/house.wattle");
    assertThat(ran.out).contains("licensed person decide");
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void anErrorEndsInOne() {
    Ran ran = run("check", "examples/broken/shared-neutral-same-leg.wattle");
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.out).contains("up to 40 A").contains("1 error in");
  }

  @Test
  void whatCannotBeReadIsOneLine() throws IOException {
    assertOneLine(run("check", "nowhere.wattle"), "nowhere.wattle: no such file");
    assertOneLine(run("explain", "examples", "--figures"), "is a folder");
    assertOneLine(run("check", file("binary.wattle", new byte[]{'p', 0, 1, 2})), "byte 2 is zero");
    assertOneLine(run("check", file("latin.wattle", new byte[]{'a', '\n', (byte) 0xE9, 'b'})), "latin.wattle:2", "not UTF-8");
    assertOneLine(run("check", file("huge.wattle", new byte[50 * 1024 * 1024])), "50 MiB", "--largest-file");
  }

  @Test
  void anEmptyPlanIsNoPlan() throws IOException {
    for (String nothing : List.of("", "\n\n", "// later\n")) {
      Ran ran = run("check", plan("empty.wattle", nothing));
      assertThat(ran.code).isEqualTo(ExitCode.FOUND);
      assertThat(ran.out).contains("plan-empty").contains("wattle begin");
    }
  }

  @Test
  void deepNestingIsAFinding() throws IOException {
    Ran ran = run("check", plan("deep.wattle", "room x { ".repeat(10_000)));
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.out).contains("nesting-too-deep").contains("1 error");
  }

  @Test
  void arithmeticHasABoundOfEverySign() throws IOException {
    for (String sign : List.of("+", "-", "*", "/", "×", "÷")) {
      Ran ran = run("check", plan("long.wattle", "let a = 1 m" + (" " + sign + " 1").repeat(20_000) + "\n"));
      assertThat(ran.code).as(sign).isEqualTo(ExitCode.FOUND);
      assertThat(ran.out).as(sign).contains("nesting-too-deep");
    }
  }

  @Test
  void filesThatUseEachOtherAreAFinding() throws IOException {
    plan("b.wattle", "use \"a.wattle\"\n");
    Ran ran = run("check", plan("a.wattle", "use \"b.wattle\"\n"));
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.out).contains("use-circle").contains("b.wattle:1:5");
  }

  @Test
  void aFileOutsideTheFolderIsNotRead() throws IOException {
    Files.createDirectory(folder.resolve("house"));
    plan("secret.wattle", "room secret { }\n");
    Files.createSymbolicLink(folder.resolve("house/link.wattle"), folder.resolve("secret.wattle"));
    Ran ran = run("check", plan("house/a.wattle", "use \"../secret.wattle\"\nuse \"link.wattle\"\nuse \"gone.wattle\"\n"));
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.out).contains("3 errors").contains("use-outside").contains("use-unreadable");
  }

  @Test
  void badUsageIsTwo() {
    assertThat(run("check").code).isEqualTo(ExitCode.USAGE);
    assertThat(run("chek", "x").code).isEqualTo(ExitCode.USAGE);
    assertThat(run().code).isEqualTo(ExitCode.USAGE);
    assertThat(run("check", "--format", "xml", "examples/cottage/house.wattle").code).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void jsonAndSarifGoToStandardOutputAlone() {
    Ran json = run("check", "--format", "json", "examples/broken/unit-missing.wattle");
    assertThat(json.out).startsWith("{").contains("\"rule\" : \"unit-missing\"");
    assertThat(json.err).isEmpty();
    Ran sarif = run("check", "--format", "sarif", "examples/broken/unit-missing.wattle");
    assertThat(sarif.out).contains("\"version\" : \"2.1.0\"").contains("unicodeCodePoints");
  }
}
