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
  /** For one command, as docs/version-control.md has it: set for good it would change what git blame and editors show. */
  private static final String DESCRIBING = "git --no-pager -c diff.wattle.textconv='wattle compare --describe' ";

  @TempDir
  private Path folder;

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
    List<String> command = new ArrayList<>(
        List.of("git", "-C", folder.toString(), "-c", "user.name=Test", "-c", "user.email=test@example.org"));
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
    assertThat(compare(ExitCode.USAGE, "--git", "--output=x", plan)).contains("not a revision");
  }

  /** A program called wattle, as one that is installed would be. */
  private Path wattleOnThePath() throws IOException {
    Path bin = Files.createDirectory(folder.resolve("bin"));
    Path wattle = bin.resolve("wattle");
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Files.writeString(wattle,
        "#!/bin/sh\nexec '" + java + "' -cp '" + System.getProperty("java.class.path") + "' wattle.cli.Main \"$@\"\n");
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

  /** The lines stand in the README and in the page that it names; here they are run as they stand there. */
  private static List<String> linesOfTheReadme() throws IOException {
    List<String> lines = Files.readAllLines(Path.of("README.md"));
    int from = lines.indexOf("echo '*.wattle diff=wattle' >> .gitattributes");
    assertThat(from).isPositive();
    List<String> block = lines.subList(from, from + 2);
    assertThat(lines.get(from - 1)).isEqualTo("```");
    assertThat(lines.get(from + 2)).isEqualTo("```");
    assertThat(Files.readAllLines(Path.of("docs/version-control.md"))).containsSequence(block);
    return block;
  }

  @Test
  void gitShowsWhatChangedByTheTwoLinesOfTheReadme() throws IOException, InterruptedException {
    Path bin = wattleOnThePath();
    for (String line : linesOfTheReadme()) {
      shell(bin, line);
    }
    assertThat(shell(bin, DESCRIBING + "diff --no-ext-diff HEAD -- rooms.wattle")).contains("-  load: 12 kW").contains("+  load: 14 kW");
    Path house = folder.resolve("house.wattle");
    Files.writeString(house, Files.readString(house).replace("revision \"C\"", "revision \"D\"").replace("6+8    50 A", "6+8    60 A"));
    String said = shell(bin, "git --no-pager diff HEAD");
    String head = shell(bin, "git rev-parse HEAD").strip().substring(0, 10);
    assertThat(said).contains("wattle compare house.wattle\nthe files it uses: before as in " + head
        + ", after as they are in the working folder\n~ plan: revision C -> D\n");
    // What the house uses is read from the revision of each side.
    assertThat(said).containsSubsequence("~ breaker of range: rating 50 A -> 60 A", "~ device kitchen.range: load 12 kW -> 14 kW",
        "wattle compare rooms.wattle");
    assertThat(said).containsPattern("branch range: largest neutral current +50\\.0 A -> 60\\.0 A +\\+10\\.0 A");
    assertThat(said).contains("wattle compare rooms.wattle\n~ device kitchen.range: load 12 kW -> 14 kW\nA part of a plan");
    assertThat(said).doesNotContain("device-unfed");
  }

  /** Git gives the driver texts without their revisions; they are found by the texts. */
  @Test
  void betweenTwoRevisionsEachHasItsOwnFiles() throws IOException, InterruptedException {
    Path bin = wattleOnThePath();
    for (String line : linesOfTheReadme()) {
      shell(bin, line);
    }
    shell(bin, "sed -i 's/50 kVA/75 kVA/' house.wattle && git -c user.name=T -c user.email=t@example.org commit -q -a -m two");
    shell(bin, "sed -i 's/range 14 kW/range 16 kW/' rooms.wattle && sed -i 's/revision \"C\"/revision \"D\"/' house.wattle");
    String said = shell(bin, "git --no-pager diff HEAD~1 HEAD -- house.wattle");
    assertThat(said).contains("~ service main: source transformer 50 kVA", "~ device kitchen.range: load 12 kW -> 14 kW")
        .doesNotContain("16 kW");
    // What was never committed has no revision: its files are read as they are, and this is said.
    assertThat(shell(bin, "git add house.wattle && git --no-pager diff --cached -- house.wattle"))
        .contains("after as they are in the working folder").contains("load 14 kW -> 16 kW");
  }

  /** As the text filter of git, a failure would end the whole difference. */
  @Test
  void whatIsNotUtf8IsDescribedAsFarAsItCanBeRead() throws IOException, InterruptedException {
    Path plan = folder.resolve("old.wattle");
    Files.write(plan, "plan \"Caf\u00e9\"\nroom a { }\n".getBytes(StandardCharsets.ISO_8859_1));
    assertThat(compare(ExitCode.FINE, "--describe", plan.toString()))
        .isEqualTo(
            "note: old.wattle:1: not UTF-8; save the file as UTF-8 and try again; here is what could be read\nplan\n  title:"
                + " Caf\uFFFD\nroom a\n");
    Files.write(plan, new byte[]{'p', 0, 'q'});
    assertThat(compare(ExitCode.FINE, "--describe", plan.toString())).startsWith("note: old.wattle: not a text: byte 2 is zero");
    assertThat(compare(ExitCode.USAGE, "--describe", folder.resolve("none.wattle").toString())).contains("no such file");
    Path bin = wattleOnThePath();
    for (String line : linesOfTheReadme()) {
      shell(bin, line);
    }
    shell(bin,
        "printf 'plan \"Caf\\351\"\\nroom a { }\\n' > old.wattle && git add -A && git -c user.name=T -c user.email=t@example.org"
            + " commit -q -m two");
    shell(bin, "printf 'room b { }\\n' >> old.wattle");
    List<String> changed = shell(bin, DESCRIBING + "diff --no-ext-diff HEAD -- old.wattle").lines().filter(l -> l.matches("[+-][^+-].*"))
        .toList();
    assertThat(changed).containsExactly("+room b");
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
    assertThat(said).contains("wattle compare junk.wattle: new file\n").contains("UTF-8");
    assertThat(said).contains("wattle compare new.wattle: new file\n").contains("wattle compare other.wattle: deleted file\n",
        "panels gone");
  }

  @Test
  void theExitCodeTellsWhetherTheyDiffer() {
    String before = "examples/kitchen-renovation/before.wattle";
    assertThat(compare(ExitCode.FINE, before, before)).isEqualToNormalizingNewlines("nothing of the house differs\n");
    assertThat(compare(ExitCode.FINE, "--format", "md", before, before)).contains("Nothing of the house differs.");
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
    assertThat(compare(ExitCode.USAGE, "--picture", folder.resolve("changes.gif").toString(), plans[0], plans[1]))
        .contains(".svg, .png or .pdf");
    assertThat(compare(ExitCode.USAGE, "--picture", "x.svg", "--describe", plans[0])).contains("exclude each other");
  }

  @Test
  void whatGitDoesNotHaveIsSaid(@TempDir Path outside) throws IOException {
    Path alone = Files.copy(Path.of("examples/cottage/house.wattle"), outside.resolve("house.wattle"));
    assertThat(compare(ExitCode.USAGE, "--git", "HEAD", alone.toString())).contains("house.wattle' is not in a git repository");
    Path untracked = Files.copy(alone, folder.resolve("untracked.wattle"));
    assertThat(compare(ExitCode.USAGE, "--git", "HEAD", untracked.toString())).contains("revision HEAD has no");
    assertThat(compare(ExitCode.USAGE, "--git", "HEAD", folder.resolve("gone.wattle").toString())).contains("gone.wattle");
  }

  @Test
  void badUsageSaysWhatIsExpected() {
    assertThat(compare(ExitCode.USAGE, "examples/cottage/house.wattle")).contains("two plans are compared");
    assertThat(compare(ExitCode.USAGE, "-", "-")).contains("standard input is one plan");
  }

  /** A pattern makes nothing until another file places it, and a rule is no thing of a house: their text is what can be shown. */
  @Test
  void gitShowsThatAPatternOrARuleChanged() throws IOException, InterruptedException {
    Path lib = folder.resolve("lib.wattle");
    String text = "pattern hut(n) {\n  branch hut by 14/2 NM-B { n --3 m-- hut.o }\n}\nlimit far \"Far\" 3 m { source \"House\" \"1\" }\n"
        + "rule long \"Long\" {\n  for each branch b\n  for all work\n  require b.reach is at most limit.far\n  otherwise advice"
        + " \"long\"\n  at b\n}\n";
    Files.writeString(lib, text);
    git("add", ".");
    git("commit", "-q", "-m", "lib");
    String before = compare(ExitCode.FINE, "--describe", lib.toString());
    Files.writeString(lib, text.replace("--3 m--", "--7 m--").replace("b.reach", "b.drop").replace(" \"Far\" 3 m", "   \"Far\"   3 m"));
    assertThat(compare(ExitCode.FINE, "--describe", lib.toString()).replace("7 m", "3 m").replace("drop", "reach")).isEqualTo(before);
    assertThat(before).contains("pattern hut(n)\n  branch hut by 14/2 NM-B { n --3 m-- hut.o }\n");
    String hash = "0".repeat(40);
    Path old = folder.resolve("old.wattle");
    Files.writeString(old, text);
    String told = compare(ExitCode.FINE, "--as-driver", lib.toString(), old.toString(), hash, "100644", lib.toString(), hash, "100644");
    assertThat(told).contains("~ pattern hut(n): its text; compare a plan", "~ rule long \"Long\": its text").doesNotContain("limit");
  }

  private static final String KITCHEN = "examples/kitchen-renovation/";

  /** The page has both plans at a glance, the sentence, the changes, figures and the three diagrams; the PDF has the same. */
  @Test
  void thePageAndThePdfHaveBothPlansAndTheirPictures() throws Exception {
    String page = folder.resolve("changes.html").toString();
    String pdf = folder.resolve("changes.pdf").toString();
    compare(ExitCode.FOUND, "--out", page, KITCHEN + "before.wattle", KITCHEN + "after.wattle");
    compare(ExitCode.FOUND, "--out", pdf, KITCHEN + "before.wattle", KITCHEN + "after.wattle");
    String html = Files.readString(Path.of(page));
    wattle.emit.media.drawing.DrawingChecks.xml(html.replace("<!DOCTYPE html>", ""));
    assertThat(html).contains("<th scope=\"col\">Before</th>", "3 branch circuits new, 1 shortened", "Cured", "Both in one", "GFCI missing")
        .containsOnlyOnce("id=\"picture1-title\"").containsOnlyOnce("id=\"picture2-title\"").containsOnlyOnce("id=\"picture3-title\"");
    try (org.apache.pdfbox.pdmodel.PDDocument document = org.apache.pdfbox.Loader.loadPDF(Path.of(pdf).toFile())) {
      String text = new org.apache.pdfbox.text.PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("At a glance", "3 branch circuits new, 1 shortened", "Calculated load", "Both in one",
          "House current kills");
      assertThat(document.getNumberOfPages()).isBetween(3, 10);
    }
  }

  /** Two revisions of one house: what came new is one row for each measure, and says where it is most and least. */
  @Test
  void dropsOfNewBranchesAreOneRow() {
    String text = compare(ExitCode.FOUND, KITCHEN + "before.wattle", KITCHEN + "after.wattle");
    assertThat(text).contains("3 new branches: largest drop at full load").containsPattern("most on \\w+, least on \\w+")
        .doesNotContain("branch counter: largest drop", "branch dish: largest drop", "branch fridge: largest drop");
  }

  @Test
  void aReplacedDeviceIsCalledSo() {
    assertThat(compare(ExitCode.FOUND, KITCHEN + "before.wattle", KITCHEN + "after.wattle"))
        .contains("~ device kitchen.c1: receptacle replaced by split receptacle", "~ device kitchen.lamp: replaced by a new one",
            "2 devices new, 4 replaced");
  }

  /** A change of layout alone, a new file and one that is gone, each in words in the driver of git. */
  @Test
  void theDriverSaysWhatIsNewGoneOrOnlyLaidOutAnew() throws Exception {
    Path old = folder.resolve("old.wattle");
    Path now = folder.resolve("now.wattle");
    Files.writeString(old, Files.readString(Path.of("examples/cottage/house.wattle")));
    Files.writeString(now, "// laid out\n\n" + Files.readString(old));
    String o = old.toString();
    String n = now.toString();
    assertThat(compare(ExitCode.FINE, "--as-driver", "house.wattle", o, "1", "100644", n, "2", "100644"))
        .contains("wattle compare house.wattle\n", "nothing of the house differs");
    assertThat(compare(ExitCode.FINE, "--as-driver", "house.wattle", "/dev/null", ".", ".", n, "2", "100644"))
        .contains("wattle compare house.wattle: new file", "branch circuits new").doesNotContain("codes none");
    assertThat(compare(ExitCode.FINE, "--as-driver", "house.wattle", o, "1", "100644", "/dev/null", ".", "."))
        .contains("wattle compare house.wattle: deleted file", "branch circuits gone").doesNotContain("-> none");
  }

  @Test
  void aPageNeedsNoPictureAndPaperOfPagesAlone() {
    String page = folder.resolve("x.html").toString();
    String[] plans = {KITCHEN + "before.wattle", KITCHEN + "after.wattle"};
    assertThat(compare(ExitCode.USAGE, "--out", page, "--paper", "tabloid", plans[0], plans[1])).contains("letter or A4");
    assertThat(compare(ExitCode.USAGE, "--out", page, "--picture", "y.svg", plans[0], plans[1])).contains("leave --picture out");
  }
}
