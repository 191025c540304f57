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
    assertThat(compare(ExitCode.USAGE, "--git", "nothing", plan)).contains("wattle: git");
    assertThat(compare(ExitCode.USAGE, "--git", "--output=x", plan)).contains("no revision");
  }

  @Test
  void gitShowsWhatChangedThroughTheThreeLinesOfTheReadme() throws IOException, InterruptedException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String wattle = "'" + java + "' -cp '" + System.getProperty("java.class.path") + "' wattle.cli.Main";
    Files.writeString(folder.resolve(".gitattributes"), "*.wattle diff=wattle\n");
    git("config", "diff.wattle.textconv", wattle + " compare --describe");
    assertThat(git("diff", "HEAD", "--", "rooms.wattle")).contains("-  load: 12 kW").contains("+  load: 14 kW");
    git("config", "diff.wattle.command", wattle + " compare --as-driver");
    Path house = folder.resolve("house.wattle");
    Files.writeString(house, Files.readString(house).replace("revision \"C\"", "revision \"D\""));
    String said = git("diff", "HEAD", "--", "house.wattle");
    assertThat(said).contains("~ plan: revision C -> D");
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
  void badUsageSaysWhatIsExpected() {
    assertThat(compare(ExitCode.USAGE, "examples/cottage/house.wattle")).contains("two plans are compared");
  }
}
