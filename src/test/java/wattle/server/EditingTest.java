package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextEdit;
import org.junit.jupiter.api.Test;

/** Typing in an editor: findings, fixes, order, outline. */
class EditingTest {
  private static final Path ALDER_COURT = Path.of("examples/alder-court").toAbsolutePath();
  private static final Path HOUSE = ALDER_COURT.resolve("house.wattle");
  private static final Path GARAGE = ALDER_COURT.resolve("garage.wattle");

  private static String uri(Path path) {
    return path.toUri().toString();
  }

  private static ScriptedEditor started() throws IOException {
    ScriptedEditor editor = new ScriptedEditor();
    editor.start(new ClientCapabilities(), ALDER_COURT);
    return editor;
  }

  @Test
  void theServerSaysWhatItCanDo() throws IOException {
    try (ScriptedEditor editor = new ScriptedEditor()) {
      InitializeResult result = editor.start(new ClientCapabilities(), ALDER_COURT);
      assertThat(result.getServerInfo().getName()).isEqualTo("wattle");
      assertThat(result.getCapabilities().getTextDocumentSync().getRight().getChange())
          .isEqualTo(TextDocumentSyncKind.Incremental);
    }
  }

  @Test
  void aHouseWithoutFaultsHasNoFindings() throws IOException {
    try (ScriptedEditor editor = started()) {
      editor.open(uri(HOUSE), Files.readString(HOUSE));
      assertThat(editor.findings(uri(HOUSE))).isEmpty();
    }
  }

  @Test
  void aBrokenUnitIsSeenAsItIsTypedAndMendedByItsFix() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(HOUSE);
      editor.open(uri, Files.readString(HOUSE));
      editor.replace(uri, "1      15 A  arc-fault                        hall ", "1      15  arc-fault               hall ");
      Diagnostic finding = editor.findings(uri).get(0);
      assertThat(finding.getCode().getLeft()).isEqualTo("unit-missing");
      assertThat(textAt(editor.text(uri), finding.getRange())).isEqualTo("15");

      CodeAction action = fixes(editor, uri, finding).get(0);
      assertThat(action.getIsPreferred()).isTrue();
      editor.apply(uri, action.getEdit().getChanges().get(uri));
      assertThat(editor.findings(uri)).isEmpty();
    }
  }

  @Test
  void aRuleLinksToItsTextAndItsFixIsAnEdit() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(HOUSE);
      editor.open(uri, Files.readString(HOUSE));
      editor.replace(uri, "1      15 A  arc-fault                        hall ", "1      20 A          hall ");
      List<Diagnostic> found = editor.await(uri, p -> p.getDiagnostics().size() > 1);
      // The breaker is too large for each of its runs, and one edit mends them all.
      assertThat(ScriptedEditor.rules(found)).contains("breaker-above-conductor", "arc-fault-missing");
      for (Diagnostic finding : found) {
        String[] link = finding.getCodeDescription().getHref().split("#L");
        String line = Files.readAllLines(Uris.path(link[0])).get(Integer.parseInt(link[1]) - 1);
        assertThat(line).startsWith("rule " + finding.getCode().getLeft() + " ");
      }
      List<CodeAction> offered = fixes(editor, uri, found.get(0));
      assertThat(offered).as("the house changes").noneMatch(CodeAction::getIsPreferred);
      assertThat(offered).extracting(CodeAction::getTitle).contains("silence arc-fault-missing at hall; write the reason");
      List<CodeAction> actions = offered.stream().filter(a -> !a.getTitle().startsWith("silence ")).toList();
      assertThat(actions).hasSize(2);
      actions.forEach(action -> editor.apply(uri, action.getEdit().getChanges().get(uri)));
      assertThat(editor.text(uri)).contains("  1      15 A arc-fault          hall ");
      editor.await(uri, p -> p.getDiagnostics().isEmpty());
    }
  }

  /** Until its reason is written, a silence is an error and silences nothing. */
  @Test
  void aSilenceAsksForItsReason() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(HOUSE);
      editor.open(uri, Files.readString(HOUSE));
      editor.replace(uri, "1      15 A  arc-fault                        hall ", "1      15 A                                   hall ");
      List<Diagnostic> found = editor.await(uri, p -> ScriptedEditor.rules(p.getDiagnostics()).contains("arc-fault-missing"));
      Diagnostic missing = found.stream().filter(d -> d.getCode().getLeft().equals("arc-fault-missing")).findFirst().orElseThrow();
      CodeAction silence = fixes(editor, uri, missing).stream().filter(a -> a.getTitle().startsWith("silence ")).findFirst().orElseThrow();
      editor.apply(uri, silence.getEdit().getChanges().get(uri));
      assertThat(editor.text(uri)).endsWith("silence arc-fault-missing at hall because \"\"\n");
      editor.await(uri, p -> ScriptedEditor.rules(p.getDiagnostics()).containsAll(List.of("silence-without-reason", "arc-fault-missing")));
      editor.replace(uri, "arc-fault-missing at hall because \"\"", "arc-fault-missing at hall because \"agreed with the inspector\"");
      editor.await(uri, p -> p.getDiagnostics().size() == 1 && p.getDiagnostics().get(0).getTags() != null);
    }
  }

  /** One action for all findings of a kind, where each has one fix. */
  @Test
  void allOfAKindAreMendedAtOnce() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(HOUSE);
      String text = Files.readString(HOUSE).replaceAll("15 A  arc-fault ", "15  arc-fault ");
      editor.open(uri, text);
      List<Diagnostic> found = editor.await(uri,
          p -> ScriptedEditor.rules(p.getDiagnostics()).stream().filter("unit-missing"::equals).count() > 1);
      Diagnostic first = found.stream().filter(d -> d.getCode().getLeft().equals("unit-missing")).findFirst().orElseThrow();
      CodeAction all = fixes(editor, uri, first).stream().filter(a -> a.getTitle().startsWith("fix all ")).findFirst().orElseThrow();
      editor.apply(uri, all.getEdit().getChanges().get(uri));
      assertThat(editor.text(uri)).isEqualTo(Files.readString(HOUSE));
    }
  }

  /** While something else is being typed, what rules found stays in the list, and says that it is of before. */
  @Test
  void whatRulesFoundStandsWhileThePlanHasAnError() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(HOUSE);
      editor.open(uri, Files.readString(HOUSE));
      editor.replace(uri, "1      15 A  arc-fault                        hall ", "1      15 A                                   hall ");
      assertThat(message(editor.await(uri, p -> ScriptedEditor.rules(p.getDiagnostics()).contains("arc-fault-missing"))))
          .doesNotContain("checked again");

      editor.replace(uri, "P --15 m-- office.sw", "P --15 -- office.sw");
      judged(editor, uri);
      List<Diagnostic> broken = editor.findings(uri);
      assertThat(ScriptedEditor.rules(broken)).contains("arc-fault-missing").hasSizeGreaterThan(1);
      assertThat(message(broken)).as("a mistake elsewhere leaves it in no doubt").doesNotContain("checked again");
      editor.replace(uri, "P --15 -- office.sw", "P --15 m-- office.sw");

      editor.replace(uri, "use \"rooms.wattle\"", "use \"room.wattle\"");
      judged(editor, uri);
      List<Diagnostic> doubtful = editor.findings(uri);
      assertThat(ScriptedEditor.rules(doubtful)).contains("arc-fault-missing").hasSizeGreaterThan(1);
      assertThat(message(doubtful)).contains("checked again when the error is fixed");

      editor.replace(uri, "use \"room.wattle\"", "use \"rooms.wattle\"");
      judged(editor, uri);
      List<Diagnostic> mended = editor.await(uri, p -> p.getDiagnostics().size() == 1);
      assertThat(message(mended)).doesNotContain("checked again");

      editor.replace(uri, "1      15 A                                   hall ", "1      15                                     hall ");
      judged(editor, uri);
      assertThat(ScriptedEditor.rules(editor.findings(uri))).as("the line that it speaks of has changed").containsExactly("unit-missing");
    }
  }

  private static String message(List<Diagnostic> found) {
    return found.stream().filter(d -> d.getCode().getLeft().equals("arc-fault-missing")).findFirst().orElseThrow().getMessage();
  }

  /** Waits until every phase has judged the text; what it found is told before the second answer. */
  private static void judged(ScriptedEditor editor, String uri) {
    CodeLensParams params = new CodeLensParams(new TextDocumentIdentifier(uri));
    editor.server().getTextDocumentService().codeLens(params).join();
    editor.server().getTextDocumentService().codeLens(params).join();
  }

  @Test
  void aFindingNamesWhatItClashesWith() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(HOUSE);
      editor.open(uri, Files.readString(HOUSE));
      editor.replace(uri, "  3      20 A", "  1      20 A");
      Diagnostic finding = editor.findings(uri).stream().filter(d -> d.getCode().getLeft().equals("slot-taken")).findFirst().orElseThrow();
      assertThat(finding.getRelatedInformation()).hasSize(1);
      assertThat(finding.getRelatedInformation().get(0).getLocation().getUri()).isEqualTo(uri);
      Range other = finding.getRelatedInformation().get(0).getLocation().getRange();
      assertThat(other.getStart().getLine()).isLessThan(finding.getRange().getStart().getLine());
    }
  }

  @Test
  void aFileOfThePlanIsCheckedAsPartOfIt() throws IOException {
    try (ScriptedEditor editor = started()) {
      editor.open(uri(GARAGE), Files.readString(GARAGE));
      assertThat(editor.findings(uri(GARAGE))).as("by itself it would have no service").isEmpty();
    }
  }

  @Test
  void unsavedTextOfOneFileGivesFindingsInAnother() throws IOException {
    try (ScriptedEditor editor = started()) {
      editor.open(uri(HOUSE), Files.readString(HOUSE));
      editor.open(uri(GARAGE), Files.readString(GARAGE));
      editor.findings(uri(GARAGE));
      editor.replace(uri(HOUSE), "9+11   60 A  two-pole                         G ", "9+11   60 A  two-pole                GG ");
      List<Diagnostic> inHouse = editor.findings(uri(HOUSE));
      List<Diagnostic> inGarage = editor.await(uri(GARAGE), p -> !p.getDiagnostics().isEmpty());
      assertThat(ScriptedEditor.rules(inHouse)).isNotEmpty();
      assertThat(ScriptedEditor.rules(inGarage)).isNotEmpty();
      editor.replace(uri(HOUSE), "                GG ", "                G ");
      assertThat(editor.await(uri(GARAGE), p -> p.getDiagnostics().isEmpty())).isEmpty();
    }
  }

  @Test
  void findingsInFilesThatAreNotOpenAreToldAndTakenBack() throws IOException {
    try (ScriptedEditor editor = started()) {
      editor.open(uri(HOUSE), Files.readString(HOUSE));
      editor.replace(uri(HOUSE), "use \"garage.wattle\"", "");
      assertThat(editor.findings(uri(HOUSE))).isNotEmpty();
      editor.replace(uri(HOUSE), "use \"rooms.wattle\"\n", "use \"rooms.wattle\"\nuse \"garage.wattle\"\npanel G from P/9 { bus 60 A }\n");
      editor.findings(uri(HOUSE));
      assertThat(ScriptedEditor.rules(editor.await(uri(GARAGE), p -> !p.getDiagnostics().isEmpty()))).contains("name-twice");
      editor.close(uri(HOUSE));
      editor.await(uri(GARAGE), p -> p.getDiagnostics().isEmpty());
    }
  }

  @Test
  void columnsAreUtf16() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(ALDER_COURT.resolve("unsaved.wattle"));
      editor.open(uri, "plan \"\uD83C\uDFE0 Ω²\" use parts comon\n");
      Diagnostic finding = editor.findings(uri).get(0);
      assertThat(finding.getRange()).isEqualTo(new Range(new Position(0, 23), new Position(0, 28)));
      editor.change(uri, finding.getRange(), "common");
      assertThat(editor.findings(uri)).isEmpty();
    }
  }

  @Test
  void aDocumentIsSetInOrder() throws IOException {
    try (ScriptedEditor editor = started()) {
      String uri = uri(HOUSE);
      String house = Files.readString(HOUSE);
      editor.open(uri, house);
      editor.replace(uri, "  storeys 2 }", "storeys    2}");
      List<? extends TextEdit> edits = ScriptedEditor.get(
          editor
              .server()
              .getTextDocumentService()
              .formatting(new DocumentFormattingParams(new TextDocumentIdentifier(uri), new FormattingOptions(2, true))));
      assertThat(edits).hasSize(1);
      assertThat(edits.get(0).getRange().getStart().getLine()).isEqualTo(edits.get(0).getRange().getEnd().getLine());
      editor.apply(uri, List.copyOf(edits));
      assertThat(editor.text(uri)).isEqualTo(wattle.edit.Formatter.format(new wattle.finding.Source("", house)).value());
    }
  }

  @Test
  void blocksFoldAndTheOutlineHasEveryThing() throws IOException {
    try (ScriptedEditor editor = new ScriptedEditor()) {
      ClientCapabilities nested = new ClientCapabilities();
      nested.setTextDocument(new org.eclipse.lsp4j.TextDocumentClientCapabilities());
      nested.getTextDocument().setDocumentSymbol(new org.eclipse.lsp4j.DocumentSymbolCapabilities());
      nested.getTextDocument().getDocumentSymbol().setHierarchicalDocumentSymbolSupport(true);
      editor.start(nested, ALDER_COURT);
      String uri = uri(GARAGE);
      editor.open(uri, Files.readString(GARAGE));
      var document = editor.server().getTextDocumentService();
      List<FoldingRange> folds = ScriptedEditor.get(document.foldingRange(new FoldingRangeRequestParams(new TextDocumentIdentifier(uri))));
      assertThat(folds).extracting(FoldingRange::getStartLine).containsExactly(2, 21);
      List<DocumentSymbol> outline = ScriptedEditor.get(document.documentSymbol(new DocumentSymbolParams(new TextDocumentIdentifier(uri))))
          .stream()
          .map(s -> s.getRight())
          .toList();
      assertThat(outline)
          .extracting(DocumentSymbol::getName)
          .containsExactly("G", "charger", "bench", "glights", "door", "freezer", "saw", "garage");
      assertThat(outline.get(0).getChildren()).extracting(DocumentSymbol::getName).contains("1+3 charger", "7+9 saw");
      assertThat(outline.get(7).getChildren()).extracting(DocumentSymbol::getName).contains("charger", "l2");
    }
  }

  @Test
  void theSessionEndsAsTheEditorEndsIt() throws IOException {
    try (ScriptedEditor editor = started()) {
      ScriptedEditor.get(editor.server().shutdown());
      editor.server().exit();
      assertThat(ScriptedEditor.get(editor.exitCode())).isZero();
    }
    try (ScriptedEditor editor = started()) {
      editor.server().exit();
      assertThat(ScriptedEditor.get(editor.exitCode())).isOne();
    }
    try (ScriptedEditor editor = started()) {
      assertThat(editor.hangUp()).isZero();
    }
  }

  private static List<CodeAction> fixes(ScriptedEditor editor, String uri, Diagnostic finding) {
    return ScriptedEditor.get(
        editor
            .server()
            .getTextDocumentService()
            .codeAction(
                new CodeActionParams(
                    new TextDocumentIdentifier(uri), finding.getRange(), new CodeActionContext(List.of(finding)))))
        .stream()
        .map(a -> a.getRight())
        .toList();
  }

  private static String textAt(String text, Range range) {
    String line = text.split("\n", -1)[range.getStart().getLine()];
    return line.substring(range.getStart().getCharacter(), range.getEnd().getCharacter());
  }
}
