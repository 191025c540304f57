package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.FileNames;

/** {@code tidy} and {@code mend} at the command line: what becomes of the files, and what is said of those left alone. */
class TidyCommandTest {
  private static final String LOOSE = "plan   \"Loose\"\nroom  shed { }\n";

  private static final String TIDY = "plan \"Loose\"\nroom shed { }\n";

  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(Object... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] words = new String[arguments.length];
    for (int i = 0; i < words.length; i++) {
      words[i] = arguments[i].toString();
    }
    int code = Main.run(words, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  @Test
  void aFileThatCannotBeReadDoesNotKeepTheOthersFromBeingSetInOrder() throws IOException {
    FileNames.assumeCanBe("loose garage Ö.wattle");
    Path missing = folder.resolve("missing.wattle");
    Path broken = file("broken.wattle", "plan  \"x\nroom  y\n");
    Path loose = file("loose garage Ö.wattle", LOOSE);
    Ran ran = run("tidy", missing, broken, loose);
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err).contains("missing.wattle: no such file", "broken.wattle: not changed", "loose garage Ö.wattle: set in order");
    assertThat(loose).hasContent(TIDY);
    assertThat(broken).hasContent("plan  \"x\nroom  y\n");
  }

  @Test
  void checkChangesNothing() throws IOException {
    Path loose = file("loose.wattle", LOOSE);
    Ran ran = run("tidy", "--check", loose, file("tidy.wattle", TIDY));
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.out).isEqualToNormalizingNewlines(loose + "\n");
    assertThat(loose).hasContent(LOOSE);
    assertThat(run("tidy", "--check", folder.resolve("tidy.wattle")).code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void aLinkStaysALinkAndPermissionsStay() throws IOException {
    Path loose = file("loose.wattle", LOOSE);
    Files.setPosixFilePermissions(loose, java.nio.file.attribute.PosixFilePermissions.fromString("rw-rw-r--"));
    Path link = Files.createSymbolicLink(folder.resolve("link.wattle"), loose.getFileName());
    assertThat(run("tidy", link).code).isEqualTo(ExitCode.FINE);
    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(loose).hasContent(TIDY);
    assertThat(java.nio.file.attribute.PosixFilePermissions.toString(Files.getPosixFilePermissions(loose))).isEqualTo("rw-rw-r--");
    assertThat(folder.toFile().list()).containsExactlyInAnyOrder("loose.wattle", "link.wattle");
  }

  @Test
  void aReadOnlyFileIsNotReplaced() throws IOException {
    Path loose = file("loose.wattle", LOOSE);
    Assumptions.assumeTrue(loose.toFile().setReadOnly() && !Files.isWritable(loose), "whoever may write everything has no read-only files");
    Ran ran = run("tidy", loose);
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err).contains("read-only");
    assertThat(loose).hasContent(LOOSE);
  }

  // ---- mend

  @Test
  void mendShowsTheChangeAndWritesItWhenAsked() throws IOException {
    Path plan = file("plan.wattle", Files.readString(Path.of("examples/broken/unit-missing.wattle")).replace("\n", "\r\n"));
    String before = Files.readString(plan);
    Ran shown = run("mend", plan);
    assertThat(shown.code).isEqualTo(ExitCode.FINE);
    assertThat(shown.out).contains("-  1    15   arc-fault", "+  1    15 A   arc-fault");
    assertThat(shown.err).contains("1 mended (nothing written; --write does)");
    assertThat(Files.readString(plan)).isEqualTo(before);
    assertThat(run("mend", "--write", plan).code).isEqualTo(ExitCode.FINE);
    assertThat(Files.readString(plan)).isEqualTo(before.replace(" 15   arc", " 15 A   arc"));
    assertThat(run("mend", plan).err).startsWith("0 mended; left: nothing found");
  }

  /** What a rule finds as soon as the last mistake is gone was there before: it is no reason to leave the mistake. */
  @Test
  void theLastMistakeIsMendedThoughARuleHasAFindingBehindIt() throws IOException {
    Path plan = file("plan.wattle", """
        plan "Three slips"
        use code us-2023
        dwelling { floor-area 100 m2 }
        service main 120/240 V 100 A { source transformer 25 kVA 2 %   run 20 m of 2 Al triplex }
        panel P from main { bus 100 A   slots 20   bonded
          main breaker 100 A 22 kA
          1  15  arc-fault  hall  "Hall"
        }
        branch hall by 14/2 NM-B { P --5 m-- hall.o1 }
        room hall { o1: receptcle tamper-resistant }
        """);
    Ran ran = run("mend", "--write", plan);
    assertThat(ran.err).contains("2 mended").doesNotContain("not mended");
    assertThat(Files.readString(plan)).contains("  1  15 A  arc-fault", "o1: receptacle tamper-resistant");
    assertThat(run("check", plan).out).contains("[electrode-missing]");
  }

  @Test
  void aNewLineEndsAsTheOthersOfTheFile() throws IOException {
    Path plan = file("plan.wattle", "plan \"Open\"\r\nroom shed is storage {\r\n\r\nroom hut is storage { }\r\n");
    assertThat(run("mend", "--write", plan).err).contains("1 mended");
    assertThat(Files.readString(plan)).isEqualTo("plan \"Open\"\r\nroom shed is storage {\r\n\r\n}\r\nroom hut is storage { }\r\n");
  }

  /** What changes the house is the owner's to decide: it is named, with the words that make it. */
  @Test
  void aFixThatChangesTheHouseIsNamedAndMadeWhenItsRuleIs() throws IOException {
    Path plan = file(
        "plan.wattle",
        """
            plan "Shed"
            use code us-2023
            service main 120/240 V 100 A { source available 5 kA   earth rods by 6 Cu 25 ohm }
            panel P from main {
              bus 100 A   slots 12   bonded
              main breaker 100 A 10 kA
              1  20 A  arc-fault ground-fault  shed  "Shed"
            }
            branch shed by 12/2 NM-B { P --3 m-- shed.outlet }
            room shed is garage { outlet: receptacle 20 A }
            """);
    Ran ran = run("mend", plan);
    assertThat(ran.err).contains("not applied, because the fix changes the house: ", "--rule tamper-resistance-missing");
    assertThat(ran.out).isEmpty();
    Ran named = run("mend", "--write", "--rule", "tamper-resistance-missing", plan);
    assertThat(named.err).contains("1 mended; left");
    assertThat(Files.readString(plan)).contains("tamper-resistant");
  }
}
