package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.model.Words;

/** Words that name nothing have a page too: traits, electrodes, facts; and the size of a cable says what it carries. */
class WordPagesTest {
  private static final Library LIBRARY = StandardLibrary.library(StandardLibrary.packNames());

  @Test
  void everyTraitHasAPage() {
    assertThat(Stream.of(Words.DEVICE_TRAITS, Words.BOX_TRAITS, Words.ELECTRODES).flatMap(w -> w.known().stream()))
        .allSatisfy(word -> assertThat(WordPages.of(word, LIBRARY)).as(word).isPresent());
    assertThat(List.of("two-pole", "single-pole", "three-pole", "handle-tied", "fuse", "pinned", "back-fed", "interlocked",
        "switched-neutral", "type-b", "type-c", "type-d", "spare", "later", "minimum-circuit", "maximum-breaker", "locked-rotor",
        "from-tub", "from-edge", "nail-plated", "supported", "held", "bundled", "edison-base", "slots", "floor-area", "gas-heated",
        "voltage",
        "lose")).allSatisfy(w -> assertThat(WordPages.of(w, LIBRARY)).as(w).isPresent());
    assertThat(WordPages.of("kitchen-sink", LIBRARY)).isEmpty();
  }

  @Test
  void hoversAreOfWordsCablesAndFiguresAlike(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("house.wattle");
    String text = """
        plan "Hover"
        use code us-2023
        service main 120/240 V 100 A { source transformer 50 kVA 2 %   run 20 m of 2 Al triplex   earth rods by 6 Cu }
        panel P from main { bus 100 A   slots 20   bonded
          1  20 A  arc-fault  hall   // a tamper-resistant note
        }
        branch half by 14/2 NM-B { P }
        branch hall by 12/2 NM-B { P --5 m-- hall.o1 }
        room hall "A weatherproof hall" { o1: receptacle tamper-resistant }
        """;
    Files.writeString(file, text);
    try (ScriptedEditor editor = new ScriptedEditor()) {
      editor.start(new ClientCapabilities(), folder);
      String uri = file.toUri().toString();
      editor.open(uri, text);
      assertThat(hover(editor, uri, text, "arc-fault")).contains("AFCI");
      assertThat(hover(editor, uri, text, "tamper-resistant }")).contains("TR, with shutters");
      assertThat(hover(editor, uri, text, "12/2 NM-B")).contains("2 insulated conductors of 12 AWG copper", "good for 20 A");
      assertThat(hover(editor, uri, text, "50 kVA")).contains("50000 VA").doesNotContain("= 50 kW", "hp");
      assertThat(hover(editor, uri, text, "half by")).contains("branch half").doesNotContain("0 boxes");
      assertThat(hover(editor, uri, text, "tamper-resistant note")).isEmpty();
      assertThat(hover(editor, uri, text, "weatherproof hall")).isEmpty();
    }
  }

  private static String hover(ScriptedEditor editor, String uri, String text, String at) {
    int offset = text.indexOf(at) + 1;
    int line = (int) text.substring(0, offset).chars().filter(c -> c == '\n').count();
    int column = offset - text.lastIndexOf('\n', offset - 1) - 1;
    Hover hover = ScriptedEditor.get(editor.server().getTextDocumentService().hover(
        new HoverParams(new TextDocumentIdentifier(uri), new org.eclipse.lsp4j.Position(line, column))));
    return hover == null ? "" : hover.getContents().getRight().getValue();
  }
}
