package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What an editor shows of a plan in feet, and of one in meters. 90 °C are 194 °F, 60 °C 140 °F and 30 °C 86 °F. */
class PlanInFeetServerTest {
  private static final Path FEET = Path.of("src/test/resources/units/quarry-rise.wattle").toAbsolutePath();
  private static final Path METERS = Path.of("examples/kitchen-renovation/after.wattle").toAbsolutePath();

  private ScriptedEditor editor;
  private String uri;

  private void open(Path plan) throws IOException {
    editor = new ScriptedEditor();
    editor.start(new ClientCapabilities(), plan.getParent());
    uri = plan.toUri().toString();
    editor.open(uri, Files.readString(plan));
  }

  @AfterEach
  void close() throws IOException {
    editor.close();
  }

  private String hover(String before) {
    int at = editor.text(uri).indexOf(before);
    assertThat(at).as(before).isNotNegative();
    HoverParams asked = new HoverParams(new TextDocumentIdentifier(uri), ScriptedEditor.position(editor.text(uri), at + before.length()));
    return ScriptedEditor.get(editor.server().getTextDocumentService().hover(asked)).getContents().getRight().getValue();
  }

  private List<String> inlays() {
    Range whole = new Range(ScriptedEditor.position(editor.text(uri), 0),
        ScriptedEditor.position(editor.text(uri), editor.text(uri).length()));
    return ScriptedEditor
        .get(editor.server().getTextDocumentService().inlayHint(new InlayHintParams(new TextDocumentIdentifier(uri), whole))).stream()
        .map(h -> h.getLabel().getLeft())
        .toList();
  }

  /** 22 ft and 30 ft and 12 ft of cable. */
  @Test
  void hoversAndInlaysOfAPlanInFeet() throws IOException {
    open(FEET);
    assertThat(hover("branch hall")).contains("3 boxes, 64 ft").doesNotContainPattern("[0-9] m\\b");
    assertThat(hover("branch heat")).contains("1 box, 40 ft", "temperature of unmarked terminals = 60 °C = 140 °F")
        .doesNotContainPattern("[0-9] m\\b");
    assertThat(hover("heat  by 12/2 NM")).contains("90 °C (194 °F)", "60 °C (140 °F)");
    assertThat(inlays()).isNotEmpty().allSatisfy(i -> assertThat(i).doesNotContainPattern(" m\\b|°C"));
  }

  @Test
  void theCableThatIsProposedTellsItsAir() throws IOException {
    open(FEET);
    editor.replace(uri, "branch range by 8/3 NM-B", "branch range by ");
    int at = editor.text(uri).indexOf("branch range by ") + "branch range by ".length();
    List<CompletionItem> items = ScriptedEditor.get(
        editor.server().getTextDocumentService().completion(
            new CompletionParams(new TextDocumentIdentifier(uri), ScriptedEditor.position(editor.text(uri), at))))
        .getLeft();
    assertThat(items).anySatisfy(i -> assertThat(i.getDetail()).contains("at 30 °C (86 °F) and not bundled"));
  }

  @Test
  void hoversOfAPlanInMeters() throws IOException {
    open(METERS);
    assertThat(hover("branch counter")).contains("3 boxes, 10.4 m").doesNotContain(" ft").doesNotContain("°F");
    assertThat(hover("counter by 12/3 NM")).contains("good for 90 °C").doesNotContain("°F");
  }

  /** Feet and inches have the color of units, as meters have; 'in' of a place has that of a word. */
  @Test
  void feetAndInchesAreColoredAsUnits() throws IOException {
    open(FEET);
    editor.replace(uri, editor.text(uri),
        "plan \"Feet\"\nlet a = 3 ft 6 in\nlet b = 2 m\nbranch c by 14/2 NM-B bundled 2 in attic { P --(a)-- k.o }\n");
    List<Integer> data = ScriptedEditor
        .get(editor.server().getTextDocumentService().semanticTokensFull(new SemanticTokensParams(new TextDocumentIdentifier(uri))))
        .getData();
    String[] lines = editor.text(uri).split("\n");
    java.util.Map<String, Integer> colors = new java.util.LinkedHashMap<>();
    int line = 0;
    int column = 0;
    for (int i = 0; i < data.size(); i += 5) {
      column = data.get(i) == 0 ? column + data.get(i + 1) : data.get(i + 1);
      line += data.get(i);
      colors.put(line + " " + lines[line].substring(column, column + data.get(i + 2)), data.get(i + 3));
    }
    assertThat(colors.get("1 ft")).isEqualTo(colors.get("1 in")).isEqualTo(colors.get("2 m"));
    assertThat(colors.get("3 in")).isEqualTo(colors.get("3 branch")).isNotEqualTo(colors.get("2 m"));
  }
}
