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
      assertThat(hover(editor, uri, text, "weatherproof hall")).as("of the text as a whole").contains("room hall", "its label")
          .doesNotContain("with a cover");
    }
  }

  /** What is quoted says what it is for; a file that is used, what is in it. */
  @Test
  void hoversAreOfFilesAndOfQuotedTexts(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("house.wattle");
    String text = """
        plan "A hover" revision "B"
        use code us-2023
        use "rooms.wattle"
        use "garage.wattle"
        service main 120/240 V 100 A { source transformer 25 kVA 2 % "Pole 7"  run 20 m of 2 Al triplex   earth rods by 6 Cu }
        panel P "Hall panel" from main { bus 100 A   slots 20   bonded
          1  20 A  arc-fault  hall  "The hall"
        }
        branch hall "Outlets of the hall" by 12/2 NM-B { P --5 m-- hall.o1 }
        trial t "Nothing runs" { hall.o1 draws 1 A }
        expect neutral of hall is at most 1.1 A in t "Little returns"
        silence many-outlets at hall because "Agreed"
        """;
    Files.writeString(file, text);
    Files.writeString(folder.resolve("rooms.wattle"),
        "room hall \"Hall\" { o1: receptacle }\nroom den { l: lihgt }\nbranch x by 14/2 NM-B { }\n");
    try (ScriptedEditor editor = new ScriptedEditor()) {
      editor.start(new ClientCapabilities(), folder);
      String uri = file.toUri().toString();
      editor.open(uri, text);
      assertThat(hover(editor, uri, text, "rooms.wattle")).contains("2 rooms, branch x", "findings there");
      assertThat(hover(editor, uri, text, "garage.wattle")).contains("not read");
      assertThat(hover(editor, uri, text, "us-2023")).contains("pack us-2023");
      assertThat(hover(editor, uri, text, "A hover")).contains("title of the plan", "1 panel, 2 branches, 2 rooms");
      assertThat(hover(editor, uri, text, "\"B\"")).contains("revision");
      assertThat(hover(editor, uri, text, "Pole 7")).contains("label of the source");
      assertThat(hover(editor, uri, text, "Hall panel")).contains("panel P", "its label");
      assertThat(hover(editor, uri, text, "The hall")).contains("label of slot", "P/1, 20 A");
      assertThat(hover(editor, uri, text, "Outlets of")).contains("branch hall", "its label");
      assertThat(hover(editor, uri, text, "Nothing runs")).contains("trial t", "its label");
      assertThat(hover(editor, uri, text, "Little returns")).contains("neutral of hall");
      assertThat(hover(editor, uri, text, "Agreed")).contains("many-outlets", "0 here");
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
