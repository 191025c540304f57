package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code compare} against real git: a revision read from a repository, the external command, the text filter. */
class CompareCommandTest {
  @TempDir private Path folder;

  private static String compare(int expected, String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> all = new ArrayList<>(List.of("compare"));
    all.addAll(List.of(arguments));
    int code = Main.run(all.toArray(String[]::new), new PrintWriter(out), new PrintWriter(err));
    assertThat(code).as(err.toString()).isEqualTo(expected);
    return out + err.toString();
  }

  private String git(String... arguments) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(List.of("git", "-C", folder.toString(), "-c", "user.name=Test", "-c", "user.email=test@example.org"));
    command.addAll(List.of(arguments));
    Process git = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(git.waitFor()).as(said).isZero();
    return said;
  }

  @BeforeEach
  void aRepositoryWithTwoRevisions() throws IOException, InterruptedException {
    for (String file : List.of("house.wattle", "rooms.wattle", "garage.wattle")) {
      Files.copy(Path.of("examples/alder-court", file), folder.resolve(file));
    }
    git("init", "-q");
    git("add", ".");
    git("commit", "-q", "-m", "one");
    Path rooms = folder.resolve("rooms.wattle");
    Files.writeString(rooms, Files.readString(rooms).replace("range 12 kW", "range 14 kW"));
  }

  @Test
  void aRevisionIsReadFromTheRepositoryWithAllItsFiles() {
    String plan = folder.resolve("house.wattle").toString();
    assertThat(compare(ExitCode.FOUND, "--git", "HEAD", plan)).startsWith("~ device kitchen.range: load 12 kW -> 14 kW\n");
    assertThat(compare(ExitCode.USAGE, "--git", "nothing", plan)).contains("has no revision 'nothing'");
    assertThat(compare(ExitCode.USAGE, "--git", "--output=x", plan)).contains("no revision");
  }

  /** A program called wattle, as one that is installed would be. */
  private Path wattleOnThePath() throws IOException {
    Path bin = Files.createDirectory(folder.resolve("bin"));
    Path wattle = bin.resolve("wattle");
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Files.writeString(wattle, "#!/bin/sh\nexec '" + java + "' -cp '" + System.getProperty("java.class.path") + "' wattle.cli.Main \"$@\"\n");
    assertThat(wattle.toFile().setExecutable(true)).isTrue();
    return bin;
  }

  private String shell(Path bin, String line) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder("sh", "-c", line).directory(folder.toFile()).redirectErrorStream(true);
    builder.environment().merge("PATH", bin.toString(), (path, first) -> first + java.io.File.pathSeparator + path);
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(line + ": " + said).isZero();
    return said;
  }

  /** The lines stand in the README alone; here they are run as they stand there. */
  private static List<String> linesOfTheReadme() throws IOException {
    List<String> lines = Files.readAllLines(Path.of("README.md"));
    int from = lines.indexOf("For version control, three lines make git show what changed in the house:");
    assertThat(from).isPositive();
    List<String> block = lines.subList(from + 3, from + 6);
    assertThat(lines.get(from + 2)).isEqualTo("```");
    assertThat(lines.get(from + 6)).isEqualTo("```");
    return block;
  }

  @Test
  void gitShowsWhatChangedByTheThreeLinesOfTheReadme() throws IOException, InterruptedException {
    Path bin = wattleOnThePath();
    for (String line : linesOfTheReadme()) {
      shell(bin, line);
    }
    assertThat(shell(bin, "git diff --no-ext-diff HEAD -- rooms.wattle")).contains("-  load: 12 kW").contains("+  load: 14 kW");
    Path house = folder.resolve("house.wattle");
    Files.writeString(house, Files.readString(house).replace("revision \"C\"", "revision \"D\"").replace("6+8    50 A", "6+8    60 A"));
    String said = shell(bin, "git --no-pager diff HEAD");
    assertThat(said).contains("wattle compare house.wattle\n~ plan: revision C -> D\n~ breaker of range: rating 50 A -> 60 A");
    assertThat(said).contains("branch range: largest neutral current  50.0 A -> 60.0 A  +10.0 A");
    assertThat(said).contains("wattle compare rooms.wattle\n~ device kitchen.range: load 12 kW -> 14 kW\nA part of a plan");
    assertThat(said).doesNotContain("device-unfed");
  }

  /** Each of these would end git's whole output if the command failed at it. */
  @Test
  void gitGoesOnAfterRenamedNewRemovedAndUnreadableFiles() throws IOException, InterruptedException {
    Path bin = wattleOnThePath();
    for (String line : linesOfTheReadme()) {
      shell(bin, line);
    }
    shell(bin, "cp house.wattle other.wattle && git add . && git -c user.name=T -c user.email=t@example.org commit -q -m two");
    shell(bin, "git mv garage.wattle shed.wattle && sed -i 's/bus 100 A/bus 125 A/' shed.wattle");
    shell(bin, "git rm -q --cached other.wattle && rm other.wattle && printf 'plan \\377\\376\\000junk' > junk.wattle");
    shell(bin, "printf 'plan \"New\"\\n' > new.wattle && git add -A");
    String said = shell(bin, "git --no-pager diff --cached -M");
    assertThat(said).contains("wattle compare garage.wattle renamed shed.wattle", "~ panel G: bus 100 A -> 125 A");
    assertThat(said).contains("wattle compare junk.wattle\n").contains("UTF-8");
    assertThat(said).contains("wattle compare new.wattle\n").contains("- panel P");
  }

  @Test
  void theExitCodeTellsWhetherTheyDiffer() {
    String before = "examples/kitchen-renovation/before.wattle";
    assertThat(compare(ExitCode.FINE, before, before)).isEmpty();
    assertThat(compare(ExitCode.FINE, "--format", "md", before, before)).contains("Nothing differs.");
    compare(ExitCode.FOUND, before, "examples/kitchen-renovation/after.wattle");
    assertThat(compare(ExitCode.USAGE, before, "examples/no-such.wattle")).contains("no-such.wattle");
  }

  @Test
  void thePictureIsWrittenAsItsNameSays() throws IOException {
    String[] plans = {"examples/kitchen-renovation/before.wattle", "examples/kitchen-renovation/after.wattle"};
    for (String ending : List.of("svg", "png", "pdf")) {
      Path file = folder.resolve("changes." + ending);
      assertThat(compare(ExitCode.FOUND, "--picture", file.toString(), plans[0], plans[1])).contains("calculated load");
      String start = new String(Files.readAllBytes(file), 0, 8, StandardCharsets.ISO_8859_1);
      assertThat(start).startsWith(ending.equals("svg") ? "<?xml" : ending.equals("png") ? "\u0089PNG" : "%PDF-");
    }
    Path taken = folder.resolve("mine.svg");
    Files.writeString(taken, "<svg/>");
    assertThat(compare(ExitCode.USAGE, "--picture", taken.toString(), plans[0], plans[1])).contains("--force");
    assertThat(Files.readString(taken)).isEqualTo("<svg/>");
    assertThat(compare(ExitCode.USAGE, "--picture", folder.resolve("changes.gif").toString(), plans[0], plans[1])).contains(".svg, .png or .pdf");
    assertThat(compare(ExitCode.USAGE, "--picture", "x.svg", "--describe", plans[0])).contains("exclude each other");
  }

  @Test
  void whatGitDoesNotHaveIsSaid(@TempDir Path outside) throws IOException {
    Path alone = Files.copy(Path.of("examples/cottage/house.wattle"), outside.resolve("house.wattle"));
    assertThat(compare(ExitCode.USAGE, "--git", "HEAD", alone.toString())).contains("house.wattle' is in no git repository");
    Path untracked = Files.copy(alone, folder.resolve("untracked.wattle"));
    assertThat(compare(ExitCode.USAGE, "--git", "HEAD", untracked.toString())).contains("revision HEAD has no");
    assertThat(compare(ExitCode.USAGE, "--git", "HEAD", folder.resolve("gone.wattle").toString())).contains("gone.wattle");
  }

  @Test
  void badUsageSaysWhatIsExpected() {
    assertThat(compare(ExitCode.USAGE, "examples/cottage/house.wattle")).contains("two plans are compared");
  }
}
