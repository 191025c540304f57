package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compare.Change;
import wattle.compare.Comparison;
import wattle.compare.Plan;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.read.SourceReader;

/** A new name changes nothing of the house, of what is checked in it, or of what is found. */
class RenamingTest {
  private static final String KITCHEN = """
      plan "Heron Lane" revision "A"
      use code us-2023
      service main 120/240 V 100 A { earth rods by 6 Cu }
      panel P from main {
        bus 100 A   slots 8   bonded
        main breaker 100 A 10 kA
        1  20 A arc-fault  counter
      }
      branch counter by 12/2 NM-B { P --4 m-- kitchen.left --2 m-- kitchen.right }
      room kitchen {
        left:  receptacle at counter
        right: receptacle at counter
      }
      room back { lamp: light }
      """;

  @TempDir
  private Path folder;
  private ScriptedEditor editor;

  @AfterEach
  void close() throws IOException {
    if (editor != null) {
      editor.close();
    }
  }

  private Map<String, List<TextEdit>> rename(Path file, String marked, String name) throws IOException {
    String uri = file.toUri().toString();
    String text = editor.text(uri);
    String plain = marked.replace("¦", "");
    int at = text.indexOf(plain);
    assertThat(at).as(plain).isNotNegative();
    return ScriptedEditor.get(editor.server().getTextDocumentService().rename(
        new RenameParams(new TextDocumentIdentifier(uri), ScriptedEditor.position(text, at + marked.indexOf('¦')), name))).getChanges();
  }

  private Path open(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("house.wattle"), text);
    editor = new ScriptedEditor();
    editor.start(new ClientCapabilities(), folder);
    editor.open(file.toUri().toString(), text);
    return file;
  }

  @Test
  void aRoomKeepsTheKindThatItsNameGaveIt() throws IOException {
    Path file = open(KITCHEN);
    editor.apply(file.toUri().toString(), rename(file, "room kit¦chen", "cuisine").get(file.toUri().toString()));
    assertThat(editor.text(file.toUri().toString())).contains("room cuisine is kitchen {", "--4 m-- cuisine.left --2 m-- cuisine.right");
    Compilation before = compile(Map.of(file, KITCHEN), file);
    Compilation after = compile(Map.of(file, editor.text(file.toUri().toString())), file);
    assertThat(rules(before)).contains("ground-fault-missing").isEqualTo(rules(after));
    assertThat(changes(before, after)).singleElement().isInstanceOf(Change.Renamed.class);
  }

  @Test
  void aNameThatSaysWhatARoomIsIsRefusedWithTheReason() throws IOException {
    Path file = open(KITCHEN);
    assertThatThrownBy(() -> rename(file, "room ba¦ck", "garage")).hasMessageContaining("cannot be called 'garage': ");
  }

  @Test
  void whatHasTheNameOfItsPatternFollowsIt() throws IOException {
    Path court = Path.of("examples/tern-court/house.wattle").toAbsolutePath();
    editor = new ScriptedEditor();
    editor.start(new ClientCapabilities(), court.getParent());
    editor.open(court.toUri().toString(), Files.readString(court));
    editor.apply(court.toUri().toString(), rename(court, "pattern fl¦at(", "unit1").get(court.toUri().toString()));
    assertThat(editor.text(court.toUri().toString())).contains("pattern unit1(", "dwelling unit1 \"Flat {n}\" on unit1 {", "panel unit1 ");
  }

  private static Compilation compile(Map<Path, String> texts, Path plan) {
    try {
      return new Compiler(new SourceReader(texts, SourceReader.USUAL_MOST_BYTES)).compile(plan);
    } catch (SourceReader.Unreadable e) {
      throw new AssertionError(e);
    }
  }

  private static List<String> rules(Compilation plan) {
    return plan.findings().stream().map(f -> f.rule()).sorted().toList();
  }

  private static Plan plan(Compilation plan) {
    return new Plan(plan.figures(), plan.findings(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
  }

  private static List<Change> changes(Compilation before, Compilation after) {
    return Comparison.of(plan(before), plan(after)).changes();
  }

  /** Of a plan some thirty names, of all kinds of things, get a fresh one each, and the result is compared with the plan. */
  @ParameterizedTest
  @ValueSource(strings = {"tern-court", "cottage"})
  void everyNameOfAnExampleMayBeAnother(String example) throws IOException {
    Path plan = Path.of("examples", example, "house.wattle").toAbsolutePath();
    String uri = plan.toUri().toString();
    String text = Files.readString(plan);
    Map<Path, String> texts = new TreeMap<>(Map.of(plan, text));
    Compilation before = compile(texts, plan);
    editor = new ScriptedEditor();
    editor.start(new ClientCapabilities(), plan.getParent());
    editor.open(uri, text);
    List<Occurrence> names = new Analysis(plan, Buffers.NONE, before).derived().names().stream()
        .filter(o -> o.declares() && o.thing().isOfThePlan() && o.span().source().name().equals(before.source().name())).toList();
    assertThat(names).hasSizeGreaterThan(10);
    List<String> wrong = new ArrayList<>();
    int step = Math.max(1, names.size() / 30);
    for (Occurrence name : IntStream.range(0, names.size()).filter(i -> i % step == 0).mapToObj(names::get).toList()) {
      String fresh = "zq" + name.thing().word().replaceFirst("^[^{]*", "");
      List<TextEdit> edits;
      try {
        edits = ScriptedEditor.get(editor.server().getTextDocumentService().rename(
            new RenameParams(new TextDocumentIdentifier(uri), ScriptedEditor.position(text, name.span().start()), fresh)))
            .getChanges().get(uri);
      } catch (AssertionError refused) {
        wrong.add(name.thing() + ": " + refused.getMessage());
        continue;
      }
      String renamed = apply(text, edits);
      Compilation after = compile(Map.of(plan, renamed), plan);
      if (!rules(after).equals(rules(before))) {
        wrong.add(name.thing() + " has other findings");
      }
      changes(before, after).stream().filter(c -> !(c instanceof Change.Renamed)).findFirst()
          .ifPresent(c -> wrong.add(name.thing() + " is compared as " + c));
    }
    assertThat(wrong).isEmpty();
  }

  private static String apply(String text, List<TextEdit> edits) {
    StringBuilder edited = new StringBuilder(text);
    LineIndex lines = new LineIndex(text);
    edits.stream().sorted((a, b) -> lines.offset(b.getRange().getStart()) - lines.offset(a.getRange().getStart()))
        .forEach(e -> edited.replace(lines.offset(e.getRange().getStart()), lines.offset(e.getRange().getEnd()), e.getNewText()));
    return edited.toString();
  }
}
