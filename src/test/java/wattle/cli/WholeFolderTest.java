package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code check}, {@code tidy} and {@code report} of a folder: which files, in which order, what stops and what does not. */
class WholeFolderTest {
  private static final String SHED = "room shed is storage { }\n";

  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(Object... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] words = List.of(arguments).stream().map(Object::toString).toArray(String[]::new);
    int code = Main.run(words, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  private Path file(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, text);
  }

  private Path example(String name, String of) throws IOException {
    return file(name, Files.readString(Path.of("examples/" + of)));
  }

  /** The plans that the last words of a check are about, in the order in which they were printed. */
  private List<String> checked(Ran ran) {
    return ran.out.lines().filter(l -> l.startsWith(folder + "/") && l.matches(".*: (nothing found|\\d+ .*)"))
        .filter(l -> !l.contains("rules checked") && !l.contains("existing work")).map(l -> l.substring(folder.toString().length() + 1))
        .map(l -> l.substring(0, l.indexOf(':'))).toList();
  }

  @Test
  void eachPlanIsCheckedOnceInTheOrderOfNames() throws IOException {
    example("b/two.wattle", "cottage/house.wattle");
    example("a.wattle", "broken/unit-missing.wattle");
    example("b/one.wattle", "broken/branch-loop.wattle");
    example(".git/hidden.wattle", "broken/branch-loop.wattle");
    file("b/notes.txt", "no plan");
    Ran ran = run("check", folder);
    assertThat(checked(ran)).containsExactly("a.wattle", "b/one.wattle", "b/two.wattle");
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.err).isEmpty();
    assertThat(ran.out.lines().reduce("", (a, b) -> b)).contains("in 3 plans, 2 of them with errors. Figures are an aid");
    assertThat(run("check", folder).out).isEqualTo(ran.out);
    assertThat(run("check", folder, folder.resolve("a.wattle"), folder.resolve("b")).out).isEqualTo(ran.out);
    assertThat(run("check", folder.resolve("b/two.wattle"), folder.resolve("b/two.wattle")).code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void aFileThatAnotherUsesIsCheckedWithIt() throws IOException {
    String whole = Files.readString(Path.of("examples/broken/unit-missing.wattle"));
    int room = whole.indexOf("room ");
    assertThat(room).isPositive();
    file("house.wattle", whole.substring(0, room) + "use \"parts/rooms.wattle\"\n");
    file("parts/rooms.wattle", whole.substring(room) + "use \"deeper.wattle\"\n");
    file("parts/deeper.wattle", SHED);
    Ran ran = run("check", folder);
    assertThat(checked(ran)).containsExactly("house.wattle");
    assertThat(ran.out).contains("[unit-missing]", "in 1 plan, 1 of them");
    // Somebody who names a part wants that part.
    assertThat(run("check", folder, folder.resolve("parts/deeper.wattle")).out).contains("parts/deeper.wattle: ");
    // A comment uses nothing.
    file("house.wattle", whole.replace("room ", "// use \"parts/rooms.wattle\"\nroom "));
    assertThat(checked(run("check", folder))).containsExactly("house.wattle", "parts/rooms.wattle");
  }

  @Test
  void filesThatUseEachOtherAreNotLost() throws IOException {
    file("a.wattle", "use \"b.wattle\"\n");
    file("b.wattle", "use \"a.wattle\"\n");
    file("self.wattle", "use \"self.wattle\"\n" + SHED);
    Ran ran = run("check", folder);
    assertThat(checked(ran)).containsExactly("a.wattle", "self.wattle");
    assertThat(ran.out.split("\\[use-circle\\]", -1)).hasSize(3);
  }

  @Test
  void anEmptyFolderIsNoSuccess() throws IOException {
    file("notes.txt", "no plan");
    for (List<Object> command : List.<List<Object>>of(List.of("check", folder), List.of("check", "--format", "json", folder),
        List.of("tidy", "--check", folder), List.of("report", folder, "--out", folder.resolve("out")))) {
      Ran ran = run(command.toArray());
      assertThat(ran.code).isEqualTo(ExitCode.USAGE);
      assertThat(ran.out).isEmpty();
      assertThat(ran.err)
          .isEqualToNormalizingNewlines("wattle: " + folder + ": no plan is in this folder; the name of a plan ends in .wattle\n");
    }
    assertThat(folder.resolve("out")).doesNotExist();
    assertThat(run("check", "--watch", folder).err).contains("a folder cannot be watched");
  }

  @Test
  void aLinkInACircleIsToldAndTheRestChecked() throws IOException {
    example("b/two.wattle", "cottage/house.wattle");
    Files.createSymbolicLink(folder.resolve("b/again"), folder);
    Ran ran = run("check", folder);
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err).isEqualToNormalizingNewlines(
        "wattle: " + folder + "/b/again: a link that leads back to a folder that contains it; remove the link\n");
    assertThat(checked(ran)).containsExactly("b/two.wattle");
  }

  @Test
  void twoWaysToOneFileAreOneFile() throws IOException {
    example("z/two.wattle", "cottage/house.wattle");
    Files.createSymbolicLink(folder.resolve("a"), folder.resolve("z"));
    Files.createSymbolicLink(folder.resolve("linked.wattle"), folder.resolve("z/two.wattle"));
    Ran ran = run("check", folder);
    assertThat(checked(ran)).containsExactly("a/two.wattle");
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void aFolderThatMayNotBeReadIsTold() throws IOException {
    example("open/two.wattle", "cottage/house.wattle");
    Path closed = Files.createDirectory(folder.resolve("closed"));
    Assumptions.assumeTrue(closed.toFile().setReadable(false) && !Files.isReadable(closed), "whoever may read everything sees all folders");
    try {
      Ran ran = run("check", folder);
      assertThat(ran.code).isEqualTo(ExitCode.USAGE);
      assertThat(ran.err).contains("closed: the folder cannot be read; check its permissions");
      assertThat(checked(ran)).containsExactly("open/two.wattle");
    } finally {
      assertThat(closed.toFile().setReadable(true)).isTrue();
    }
  }

  @Test
  void aFileThatCannotBeReadDoesNotKeepTheOthers() throws IOException {
    example("b.wattle", "cottage/house.wattle");
    Files.write(folder.resolve("a.wattle"), new byte[]{'p', 0});
    Ran ran = run("check", folder);
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err).contains("a.wattle: not a text");
    assertThat(ran.out).contains("in 1 plan; 1 not checked.");
    assertThat(checked(ran)).containsExactly("b.wattle");
  }

  @Test
  void tidyListsWhatIsNotInOrderAndSetsItSo() throws IOException {
    Path loose = file("b/loose.wattle", "room   shed { }\n");
    file("a.wattle", "room shed { }\n");
    file("c.wattle", "use  \"b/loose.wattle\"\n");
    Ran ran = run("tidy", "--check", folder);
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.out).isEqualToNormalizingNewlines(loose + "\n" + folder.resolve("c.wattle") + "\n");
    assertThat(ran.err).isEqualToNormalizingNewlines("wattle: 3 files, 2 not in order\n");
    assertThat(loose).hasContent("room   shed { }\n");
    assertThat(run("tidy", folder).code).isEqualTo(ExitCode.FINE);
    assertThat(loose).hasContent("room shed { }\n");
    assertThat(run("tidy", "--check", folder).code).isEqualTo(ExitCode.FINE);
  }

  @Test
  void aReportForEachPlan() throws IOException {
    example("plans/flats/one.wattle", "cottage/house.wattle");
    example("plans/two.wattle", "broken/shared-neutral-same-leg.wattle");
    Path out = folder.resolve("out");
    Ran ran = run("report", folder.resolve("plans"), "--out", out);
    assertThat(ran.code).isEqualTo(ExitCode.FOUND);
    assertThat(ran.err).contains("wattle: 2 reports in " + out + ", 1 of plans with errors");
    assertThat(out.resolve("flats/one/report.html")).content().contains("<title>");
    assertThat(out.resolve("two/report.html")).content().contains("shared-neutral");
  }

  @Test
  void progressIsOneLineThatIsTakenAway() {
    StringWriter terminal = new StringWriter();
    Progress progress = new Progress(new PrintWriter(terminal), true, 3);
    progress.step();
    progress.clear();
    assertThat(terminal.toString()).isEqualTo("\r1 of 3\r      \r");
    StringWriter file = new StringWriter();
    Progress none = new Progress(new PrintWriter(file), false, 3);
    none.step();
    none.clear();
    assertThat(file.toString()).isEmpty();
  }
}
