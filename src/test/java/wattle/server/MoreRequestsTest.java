package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DiagnosticCapabilities;
import org.eclipse.lsp4j.DiagnosticWorkspaceCapabilities;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.FileRename;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.RenameFilesParams;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SelectionRangeParams;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Requests of the protocol that many editors make beside the everyday ones. */
class MoreRequestsTest {
  @TempDir
  private Path folder;
  private ScriptedEditor editor;

  @BeforeEach
  void start() throws IOException {
    editor = new ScriptedEditor();
  }

  @AfterEach
  void close() throws IOException {
    editor.close();
  }

  private TextDocumentService documents() {
    return editor.server().getTextDocumentService();
  }

  private String open(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
    String uri = file.toUri().toString();
    editor.open(uri, text);
    return uri;
  }

  @Test
  void someLinesAloneAreSetInOrder() throws IOException {
    editor.start(new ClientCapabilities(), folder);
    String uri = open("house.wattle", "room hall {\n     a: light 12 W\n}\nroom bath {\n        b: light 12 W\n}\n");
    List<? extends TextEdit> edits = ScriptedEditor.get(documents().rangeFormatting(new DocumentRangeFormattingParams(
        new TextDocumentIdentifier(uri), new FormattingOptions(2, true), new Range(new Position(3, 0), new Position(5, 1)))));
    editor.apply(uri, new ArrayList<>(edits));
    assertThat(editor.text(uri)).isEqualTo("room hall {\n     a: light 12 W\n}\nroom bath {\n  b: light 12 W\n}\n");
  }

  @Test
  void aSelectionGrowsFromWordToFile() throws IOException {
    editor.start(new ClientCapabilities(), folder);
    String text = "room hall {\n  lamp: light 12 W\n}\n";
    String uri = open("house.wattle", text);
    SelectionRange at = ScriptedEditor.get(documents().selectionRange(
        new SelectionRangeParams(new TextDocumentIdentifier(uri), List.of(new Position(1, 10))))).get(0);
    List<String> grown = new ArrayList<>();
    for (SelectionRange range = at; range != null; range = range.getParent()) {
      LineIndex lines = new LineIndex(text);
      grown.add(text.substring(lines.offset(range.getRange().getStart()), lines.offset(range.getRange().getEnd())));
    }
    assertThat(grown).containsExactly("light", "lamp: light 12 W", "\n  lamp: light 12 W\n", text.strip(), text);
  }

  @Test
  void usedFilesAreLinksThatFollowTheirFiles() throws IOException {
    editor.start(new ClientCapabilities(), folder);
    Files.createDirectories(folder.resolve("parts"));
    Files.writeString(folder.resolve("parts/rooms.wattle"), "room hall { }\n");
    String uri = open("house.wattle", "use \"parts/rooms.wattle\"\n");
    assertThat(ScriptedEditor.get(documents().documentLink(new DocumentLinkParams(new TextDocumentIdentifier(uri)))))
        .singleElement().satisfies(l -> assertThat(l.getTarget()).isEqualTo(folder.resolve("parts/rooms.wattle").toUri().toString()));
    var edit = ScriptedEditor.get(editor.server().getWorkspaceService().willRenameFiles(new RenameFilesParams(List.of(
        new FileRename(folder.resolve("parts/rooms.wattle").toUri().toString(),
            folder.resolve("parts/upstairs.wattle").toUri().toString())))));
    editor.apply(uri, edit.getChanges().get(uri));
    assertThat(editor.text(uri)).isEqualTo("use \"parts/upstairs.wattle\"\n");
  }

  @Test
  void theParametersOfAPatternAreShownWhileItIsPlaced() throws IOException {
    editor.start(new ClientCapabilities(), folder);
    String text = "pattern flat(n, run) { room hall { } }\nplace flat(1, ) as one\n";
    String uri = open("house.wattle", text);
    SignatureHelp help = ScriptedEditor.get(documents().signatureHelp(
        new SignatureHelpParams(new TextDocumentIdentifier(uri), new Position(1, "place flat(1, ".length()))));
    assertThat(help.getSignatures()).singleElement().satisfies(s -> assertThat(s.getLabel()).isEqualTo("flat(n, run)"));
    assertThat(help.getActiveParameter()).isEqualTo(1);
  }

  @Test
  void findingsComeWhenAskedForToAnEditorThatAsks() throws IOException {
    ClientCapabilities asks = new ClientCapabilities();
    TextDocumentClientCapabilities document = new TextDocumentClientCapabilities();
    document.setDiagnostic(new DiagnosticCapabilities());
    asks.setTextDocument(document);
    WorkspaceClientCapabilities workspace = new WorkspaceClientCapabilities();
    workspace.setDiagnostics(new DiagnosticWorkspaceCapabilities(true));
    asks.setWorkspace(workspace);
    InitializeResult result = editor.start(asks, folder);
    assertThat(result.getCapabilities().getDiagnosticProvider()).isNotNull();
    String uri = open("house.wattle", "room hall { lamp: light 12 W }\n");
    var report = ScriptedEditor.get(documents().diagnostic(new DocumentDiagnosticParams(new TextDocumentIdentifier(uri))));
    assertThat(ScriptedEditor.rules(report.getLeft().getItems())).contains("device-unfed");
  }

  /** Opened alone, with its own folder as the editor's root, a file of parts is still part of the plan above it. */
  @Test
  void aFileOfPartsIsCheckedAsPartOfThePlanInItsRepository() throws IOException {
    Files.createDirectories(folder.resolve(".git"));
    Files.writeString(folder.resolve("house.wattle"), """
        use "parts/rooms.wattle"
        service main 120/240 V 100 A { earth rods by 6 Cu }
        panel P from main {
          bus 100 A   slots 8   bonded
          main breaker 100 A 10 kA
          1  15 A  hall
        }
        branch hall by 14/2 NM-B { P --4 m-- hall.lamp }
        """);
    editor.start(new ClientCapabilities(), folder.resolve("parts"));
    String uri = open("parts/rooms.wattle", "room hall { lamp: light 12 W }\n");
    assertThat(editor.findings(uri)).isEmpty();
  }
}
