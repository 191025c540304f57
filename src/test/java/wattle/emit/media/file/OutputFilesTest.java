package wattle.emit.media.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledIf;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import wattle.emit.document.findings.JsonFindings;
import wattle.emit.document.findings.SarifFindings;
import wattle.emit.media.graphviz.DotEngine;
import wattle.emit.media.picture.PdfPages;
import wattle.emit.media.picture.PdfPicture;
import wattle.emit.media.picture.PngPicture;

class OutputFilesTest {
  private static final String PICTURE = "<?xml version='1.0'?>\n<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'><rect"
      + " width='5' height='5'/></svg>";
  private static final String PAGE = "<!DOCTYPE html>\n<html xmlns='http://www.w3.org/1999/xhtml' lang='en'><head>"
      + "<title>t</title></head><body><p>x</p></body></html>";

  @TempDir
  Path folder;

  @Test
  void createsReplacesAndLeavesAlone() throws Exception {
    Path target = folder.resolve("loads.csv");

    assertThat(OutputFiles.write(Output.text(target, "slot,load\n1,2\n"), false)).isEqualTo(Written.CREATED);
    Files.setLastModifiedTime(target, FileTime.from(Instant.EPOCH));
    assertThat(OutputFiles.write(Output.text(target, "slot,load\n1,2\n"), false)).isEqualTo(Written.UNCHANGED);
    assertThat(Files.getLastModifiedTime(target)).isEqualTo(FileTime.from(Instant.EPOCH));
    assertThat(OutputFiles.write(Output.text(target, "slot,load\n1,3\n"), false)).isEqualTo(Written.REPLACED);
    assertThat(target).hasContent("slot,load\n1,3\n");
    assertThat(names()).containsExactly("loads.csv");
  }

  @Test
  void neverReplacesWhatSomebodyElseMade() throws Exception {
    Path letter = Files.writeString(folder.resolve("letter.svg"), "<?xml version='1.0'?>\n<svg><!-- mine --></svg>");

    assertThatThrownBy(() -> OutputFiles.write(Output.text(letter, Mark.markUp(PICTURE)), false))
        .isInstanceOf(OutputException.class)
        .hasMessage("cannot write " + letter
            + ": it exists and was not made by Wattle, or was changed since; choose another name, or replace it with --force");
    assertThat(letter).content().contains("mine");
    assertThat(OutputFiles.write(Output.text(letter, Mark.markUp(PICTURE)), true)).isEqualTo(Written.REPLACED);
    assertThat(OutputFiles.write(Output.text(letter, Mark.markUp(PICTURE + " ")), false)).isEqualTo(Written.REPLACED);

    Path table = Files.writeString(folder.resolve("t.csv"), "name,age\nx,3\n");
    assertThatThrownBy(() -> OutputFiles.write(Output.text(table, "slot,load\n1,2\n"), false))
        .isInstanceOf(OutputException.class);
    Path empty = Files.createFile(folder.resolve("empty"));
    assertThat(OutputFiles.write(Output.text(empty, "slot\n"), false)).isEqualTo(Written.REPLACED);
  }

  static Stream<byte[]> everyFormat() throws Exception {
    return Stream.of(
        bytes(Mark.markUp(PICTURE)),
        bytes(Mark.markUp(DotEngine.builtIn().svg(guru.nidi.graphviz.model.Factory.mutGraph("g")).text())),
        bytes(Mark.markUp(PAGE)),
        bytes(Mark.markdown("# Loads\n")),
        bytes(Mark.dot("digraph { a }")),
        bytes(JsonFindings.render(List.of())),
        bytes(SarifFindings.render(List.of(), List.of(), List.of(), java.util.Map.of(), java.nio.file.Path.of(""), "1")),
        PngPicture.of(PICTURE, 96),
        PdfPicture.of(List.of(PICTURE), "t", Optional.empty()),
        PdfPages.of(PAGE, "t"));
  }

  @ParameterizedTest
  @MethodSource("everyFormat")
  void knowsItsOwnFilesByTheirMark(byte[] content) throws Exception {
    assertThat(Mark.isIn(content)).isTrue();
    Path target = Files.write(folder.resolve("out"), content);
    assertThat(OutputFiles.write(Output.text(target, "something else"), false)).isEqualTo(Written.REPLACED);
  }

  @Test
  void aFileThatSomebodyWroteIntoIsNoLongerOurs() throws Exception {
    Path readings = folder.resolve("readings.csv");
    OutputFiles.write(Output.text(readings, "branch,reading\nhall,\n"), false);
    Files.writeString(readings, "branch,reading\nhall,1.2\n");
    assertThatThrownBy(() -> OutputFiles.write(Output.text(readings, "branch,reading\nhall,\n"), false))
        .hasMessageContaining("was changed since");
    assertThat(readings).hasContent("branch,reading\nhall,1.2\n");

    Path copied = Files.writeString(folder.resolve("copied.csv"), "branch,reading\nstair,\n");
    assertThatThrownBy(() -> OutputFiles.write(Output.text(copied, "branch,reading\nhall,\n"), false))
        .as("the same head is no sign of ours").isInstanceOf(OutputException.class);

    for (String made : List.of(Mark.markUp(PICTURE), Mark.markUp(PAGE), Mark.markdown("# Loads\n"), Mark.dot("digraph { a }"))) {
      assertThat(Mark.isIn(bytes(made))).isTrue();
      assertThat(Mark.isIn(bytes(made + "a note\n"))).isFalse();
    }
    byte[] pdf = PdfPages.of(PAGE, "t");
    assertThat(Mark.isIn(bytes(new String(pdf, java.nio.charset.StandardCharsets.ISO_8859_1) + "1 0 obj note\n%%EOF\n"))).isFalse();
  }

  @Test
  void aRevisionIsRefusedWhereTheFileChangedMeanwhile() throws Exception {
    Path plan = Files.writeString(folder.resolve("p.wattle"), "\uFEFFplan  \"a\"");
    assertThat(OutputFiles.write(Output.revision(plan, "plan  \"a\"", "plan \"a\""), false)).isEqualTo(Written.REPLACED);
    assertThat(Files.readString(plan)).as("its byte order mark is kept").isEqualTo("\uFEFFplan \"a\"");
    Files.writeString(plan, "plan \"saved by an editor\"");
    assertThatThrownBy(() -> OutputFiles.write(Output.revision(plan, "plan \"a\"", "plan \"b\""), true))
        .hasMessageContaining("it was changed in the meantime; run");
    assertThat(plan).hasContent("plan \"saved by an editor\"");
  }

  /** Between the look and the renaming somebody may save a file of his own, or write into one of ours. */
  @Test
  void whatIsWrittenMeanwhileIsKept() throws Exception {
    Path target = folder.resolve("loads.csv");
    Placement first = Placement.of(Output.text(target, "slot\n1\n"), false);
    first.prepare();
    Files.writeString(target, "mine");
    assertThatThrownBy(first::lookAgain).isInstanceOf(OutputException.class)
        .hasMessageContaining("it was changed in the meantime; choose another name");
    assertThatThrownBy(first::finish).hasMessageContaining("it was changed in the meantime; choose another name");
    first.discard();
    assertThat(target).hasContent("mine");

    OutputFiles.write(Output.text(target, "slot\n1\n"), true);
    Placement second = Placement.of(Output.text(target, "slot\n2\n"), false);
    second.prepare();
    Files.writeString(target, "slot\n1\nread 0.3 ohm\n");
    assertThatThrownBy(second::finish).hasMessageContaining("it was changed in the meantime; choose another name");
    second.discard();

    // Two commands that make the same do not stand in each other's way.
    Files.delete(target);
    Placement third = Placement.of(Output.text(target, "slot\n3\n"), false);
    third.prepare();
    OutputFiles.write(Output.text(target, "slot\n4\n"), false);
    assertThat(third.finish()).isEqualTo(Written.CREATED);
    assertThat(target).hasContent("slot\n3\n");
    assertThat(names()).containsExactly("loads.csv");
  }

  /** Between the last look at a plan and the renaming an editor may save, into the file or by a renaming of its own. */
  @Test
  void aSaveAtTheLastMomentIsKept() throws Exception {
    Path plan = folder.resolve("p.wattle");
    for (boolean renamed : new boolean[]{false, true}) {
      Files.writeString(plan, "plan  \"a\"");
      Placement revision = Placement.of(Output.revision(plan, "plan  \"a\"", "plan \"a\""), false);
      revision.prepare();
      revision.lookAgain();
      Path save = Files.writeString(renamed ? folder.resolve("save") : plan, "plan \"saved\"");
      if (renamed) {
        Files.move(save, plan, StandardCopyOption.REPLACE_EXISTING);
      }
      assertThatThrownBy(revision::finish).hasMessageContaining("it was changed in the meantime; run");
      revision.discard();
      assertThat(plan).hasContent("plan \"saved\"");
      assertThat(names()).containsExactly("p.wattle");
    }
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "an open file cannot be replaced there, so none is held")
  void aPlanIsRevisedByOneCommandAtATime() throws Exception {
    Path plan = Files.writeString(folder.resolve("p.wattle"), "a");
    Placement first = Placement.of(Output.revision(plan, "a", "b"), false);
    first.prepare();
    first.lookAgain();
    assertThatThrownBy(() -> OutputFiles.write(Output.revision(plan, "a", "c"), false))
        .hasMessageContaining("it was changed in the meantime; run");
    first.finish();
    first.discard();
    assertThat(plan).hasContent("b");
    assertThat(names()).containsExactly("p.wattle");
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "permissions, links and devices are those of POSIX")
  void aSecondNameThatAKilledRunLeftIsNone() throws Exception {
    Path plan = Files.writeString(folder.resolve("p.wattle"), "a");
    Files.createLink(folder.resolve(".wattle-3f.part"), plan);
    OutputFiles.write(Output.revision(plan, "a", "b"), false);
    assertThat(plan).hasContent("b");
    assertThat(names()).containsExactly("p.wattle");
  }

  @Test
  void whatIsHandedOverIsNotReplacedByALaterOne() throws Exception {
    Path plan = folder.resolve("p.wattle");
    OutputFiles.write(Output.handedOver(plan, "plan \"a\""), false);
    assertThatThrownBy(() -> OutputFiles.write(Output.handedOver(plan, "plan \"b\""), false)).hasMessageContaining("not made by Wattle");
    Files.delete(plan);
    Placement late = Placement.of(Output.handedOver(plan, "plan \"b\""), false);
    late.prepare();
    late.lookAgain();
    OutputFiles.write(Output.handedOver(plan, "plan \"a\""), false);
    assertThatThrownBy(late::finish).hasMessageContaining("it was changed in the meantime; choose another name");
    late.discard();
    assertThat(plan).hasContent("plan \"a\"");
    assertThat(names()).containsExactly("p.wattle");
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "permissions, links and devices are those of POSIX")
  void linksOfBothKindsKeepNamingTheFile() throws Exception {
    Path plan = Files.writeString(folder.resolve("p.wattle"), "old");
    Path other = Files.createLink(folder.resolve("other.wattle"), plan);
    OutputFiles.write(Output.revision(plan, "old", "new"), false);
    assertThat(other).hasContent("new");
    assertThat(names()).containsExactlyInAnyOrder("p.wattle", "other.wattle");

    Path dangling = Files.createSymbolicLink(folder.resolve("dangling"), folder.resolve("nowhere"));
    assertThatThrownBy(() -> write(dangling)).hasMessageContaining("which is not there");
    assertThat(Files.isSymbolicLink(dangling)).isTrue();
  }

  @Test
  void whatAKilledRunLeftIsSweptAfterAnHour() throws Exception {
    Path old = Files.createFile(folder.resolve(".wattle-1f.part"));
    Files.setLastModifiedTime(old, FileTime.from(Instant.now().minusSeconds(2 * 3600)));
    Path young = Files.createFile(folder.resolve(".wattle-2f.part"));
    write(folder.resolve("a"));
    assertThat(old).doesNotExist();
    assertThat(young).exists();
  }

  @Test
  void marksKeepTheFormatIntact() {
    assertThat(Mark.markUp(PICTURE)).matches("(?s)<\\?xml version='1.0'\\?>\n<!-- made by Wattle [0-9a-f]{16} -->\n<svg .*");
    assertThat(Mark.markUp(PAGE)).matches("(?s)<!DOCTYPE html>\n<!-- made by Wattle [0-9a-f]{16} -->\n<html .*");
    assertThat(Mark.isIn(bytes("A letter about what was made by Wattle"))).isFalse();
    assertThat(Mark.isIn(bytes("%PDF-1.4 /Producer (Other)"))).isFalse();
  }

  @Test
  void namesWhatStandsInTheWay() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "x");

    assertThatThrownBy(() -> write(folder.resolve("none/panel.svg")))
        .hasMessage("cannot write " + folder.resolve("none/panel.svg") + ": there is no folder " + folder.resolve("none"));
    assertThatThrownBy(() -> write(folder)).hasMessage("cannot write " + folder + ": it is a folder; name a file in it");
    assertThatThrownBy(() -> write(file.resolve("panel.svg"))).hasMessageContaining(file + " is not a folder");
    assertThatThrownBy(() -> write(folder.resolve("n".repeat(300)))).isInstanceOf(OutputException.class);
    assertThat(names()).containsExactly("file");
  }

  static boolean root() {
    return "root".equals(System.getProperty("user.name"));
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "permissions, links and devices are those of POSIX")
  @DisabledIf(value = "root", disabledReason = "nothing is closed to root")
  void respectsPermissions() throws Exception {
    Path closed = Files.createDirectory(folder.resolve("closed"));
    Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
    assertThatThrownBy(() -> write(closed.resolve("a"))).hasMessageContaining("you may not write there");
    Path kept = Files.createFile(folder.resolve("kept"));
    Files.setPosixFilePermissions(kept, PosixFilePermissions.fromString("r--r--r--"));
    assertThatThrownBy(() -> write(kept)).hasMessageContaining("write-protected");
  }

  @Test
  void oneThatFailsLeavesAllAsTheyWere() throws Exception {
    Path first = folder.resolve("a");
    OutputFiles.write(Output.text(first, "head\n1\n"), false);
    Path foreign = Files.writeString(folder.resolve("b"), "letter");

    List<Output> outputs = List.of(Output.text(first, "head\n2\n"), Output.text(foreign, "head\n2\n"));
    assertThatThrownBy(() -> OutputFiles.write(outputs, false)).hasMessageContaining(foreign.toString());
    assertThat(first).hasContent("head\n1\n");
    List<Output> tooLong = List.of(Output.text(first, "head\n2\n"), Output.text(folder.resolve("n".repeat(300)), "x"));
    assertThatThrownBy(() -> OutputFiles.write(tooLong, true)).isInstanceOf(OutputException.class);
    assertThat(first).hasContent("head\n1\n");
    assertThat(names()).containsExactlyInAnyOrder("a", "b");
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "permissions, links and devices are those of POSIX")
  void keepsLinksAndPermissions() throws Exception {
    Path real = Files.writeString(folder.resolve("real"), "head\n");
    Files.setPosixFilePermissions(real, PosixFilePermissions.fromString("rw-r-----"));
    Path link = Files.createSymbolicLink(folder.resolve("link"), real);

    OutputFiles.write(Output.text(link, "head\nnew\n"), true);
    assertThat(link).isSymbolicLink();
    assertThat(real).hasContent("head\nnew\n");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(real))).isEqualTo("rw-r-----");
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "permissions, links and devices are those of POSIX")
  void writesIntoADeviceInsteadOfReplacingIt() throws Exception {
    Path device = Path.of("/dev/null");

    assertThat(OutputFiles.write(Output.text(device, "x"), false)).isEqualTo(Written.CREATED);
    assertThat(Files.isRegularFile(device)).isFalse();
  }

  private void write(Path target) throws OutputException {
    OutputFiles.write(Output.text(target, "head\n"), false);
  }

  private List<String> names() throws Exception {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(path -> path.getFileName().toString()).toList();
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
