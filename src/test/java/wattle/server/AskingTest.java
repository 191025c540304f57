package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What an editor asks about a place in Alder Court. */
class AskingTest {
  private static final Path FOLDER = Path.of("examples/alder-court").toAbsolutePath();
  private static final String HOUSE = FOLDER.resolve("house.wattle").toUri().toString();
  private static final String ROOMS = FOLDER.resolve("rooms.wattle").toUri().toString();
  private static final String GARAGE = FOLDER.resolve("garage.wattle").toUri().toString();

  private ScriptedEditor editor;

  @BeforeEach
  void open() throws IOException {
    editor = new ScriptedEditor();
    editor.start(new ClientCapabilities(), FOLDER);
    editor.open(HOUSE, Files.readString(FOLDER.resolve("house.wattle")));
    editor.open(ROOMS, Files.readString(FOLDER.resolve("rooms.wattle")));
  }

  @AfterEach
  void close() throws IOException {
    editor.close();
  }

  private TextDocumentService documents() {
    return editor.server().getTextDocumentService();
  }

  /** The place of a bar in a piece of text that stands once in a document. */
  private Position at(String uri, String marked) {
    String plain = marked.replace("¦", "");
    int found = editor.text(uri).indexOf(plain);
    assertThat(found).as(plain).isNotNegative();
    return ScriptedEditor.position(editor.text(uri), found + marked.indexOf('¦'));
  }

  private String hover(String uri, String marked) {
    Hover hover = ScriptedEditor.get(documents().hover(new HoverParams(new TextDocumentIdentifier(uri), at(uri, marked))));
    return hover == null ? "" : hover.getContents().getRight().getValue();
  }

  /** Types a text in place of a part of the document, and asks where its bar stands. */
  private List<String> completionsAfterTyping(String uri, String instead, String marked) {
    editor.replace(uri, instead, marked.replace("¦", ""));
    return ScriptedEditor.get(documents().completion(new CompletionParams(new TextDocumentIdentifier(uri), at(uri, marked))))
        .getLeft()
        .stream()
        .map(CompletionItem::getLabel)
        .toList();
  }

  @Test
  void aBranchTellsWhatItCarriesAndMayCarry() {
    // 12 AWG copper in NM-B: 20 A at 60 °C, NFPA 70-2023 Table 310.16 with 334.80.
    assertThat(hover(HOUSE, "branch cou¦nter by"))
        .contains("branch counter", "P/2+4, 20 A, common trip, arc fault, ground fault, on legs A and B")
        .contains("12/3 NM", "2 boxes")
        .contains("least ampacity")
        .contains("20 A")
        .contains("licensed person");
  }

  @Test
  void aSlotTellsItsLeg() {
    // Rows change legs from the top: slots 1 and 2 on A, 3 and 4 on B (common practice).
    assertThat(hover(HOUSE, "  ¦1      15 A")).contains("slot 1", "leg A, row 1 left");
    assertThat(hover(HOUSE, "  2+¦4    20 A")).contains("slot 4", "leg B, row 2 right");
  }

  @Test
  void aFigureIsToldInOtherUnits() {
    // A foot is 0.3048 m exactly (international yard of 1959).
    assertThat(hover(HOUSE, "kitchen-drop = ¦9 m")).contains("29.53 ft");
  }

  @Test
  void aDeviceACableAndASwitchTellWhatTheyAre() {
    assertThat(hover(ROOMS, "fri¦dge:")).contains("kitchen.fridge", "720 W", "on branch fridge");
    assertThat(hover(HOUSE, "hall by 14/2 NM-¦B")).contains("NM-B", "copper", "60 °C");
  }

  @Test
  void aSilencedRuleTellsWhatItAsksForAndWhereItStands() throws IOException {
    editor.replace(HOUSE, "use code us-2023\n", "use code us-2023\nsilence tamper-resistance-missing because \"none\"\n");
    // NFPA 70-2023 406.12: tamper-resistant receptacles in dwellings.
    assertThat(hover(HOUSE, "silence tamper-resist¦ance-missing"))
        .contains("Receptacles are tamper-resistant", "For each device", "406.12", "finds nothing in this plan");
    Location place = ScriptedEditor.get(
        documents()
            .definition(new DefinitionParams(new TextDocumentIdentifier(HOUSE), at(HOUSE, "silence tamper-resist¦ance-missing"))))
        .getLeft()
        .get(0);
    String line = Files.readAllLines(Uris.path(place.getUri())).get(place.getRange().getStart().getLine());
    assertThat(line).startsWith("rule tamper-resistance-missing");
  }

  @Test
  void freeSlotsAreOfferedWithTheirLegs() {
    assertThat(completionsAfterTyping(HOUSE, "  34     20 A  spare                                       \"Spare\"", "  // here\n  ¦\n"))
        .startsWith("34", "35", "36")
        .contains("34+36", "37+39")
        .doesNotContain("33", "10", "35+36");
  }

  @Test
  void whatNothingFeedsIsOfferedOnASlotLine() {
    assertThat(
        completionsAfterTyping(HOUSE, "  18     20 A  arc-fault ground-fault           dish       \"Dishwasher\"", "  18     20 A ¦"))
        .startsWith("dish")
        .contains("arc-fault", "single-pole");
  }

  @Test
  void theCableOfTheRightSizeIsOffered() {
    assertThat(completionsAfterTyping(HOUSE, "dryer    by 10/3 NM-B            {", "dryer    by ¦ {"))
        .as("30 A asks for 10 AWG, NFPA 70-2023 240.4(D)(7)")
        .contains("10/2 NM-B", "10/3 NM-B")
        .doesNotContain("12/2 NM-B", "14/2 NM-B");
  }

  @Test
  void aDeviceOnNoBranchIsOfferedFirst() {
    assertThat(completionsAfterTyping(HOUSE, "P --11 m-- kitchen.dish }", "P --11 m-- ¦ }")).startsWith("kitchen.dish");
  }

  @Test
  void namesWithinARoomAreOffered() {
    assertThat(completionsAfterTyping(HOUSE, "P --12 m-- kitchen.micro }", "P --12 m-- kitchen.¦ }"))
        .startsWith("micro")
        .contains("fridge")
        .doesNotContain("kitchen.micro", "kitchen");
  }

  /** A service can be lost, and a panel be transferred to a source; what is on the line before them is no matter. */
  @Test
  void servicesAndSourcesOfATrialAreOffered() throws IOException {
    Path folder = Path.of("examples/marlow-croft").toAbsolutePath();
    String croft = folder.resolve("house.wattle").toUri().toString();
    editor.open(croft, Files.readString(folder.resolve("house.wattle")));
    String island = "lose main   transfer E to utility.battery   utility.battery on   barn.pv on";
    assertThat(completionsAfterTyping(croft, island, "lose ¦ // now")).containsExactly("main");
    assertThat(completionsAfterTyping(croft, "lose  // now", "lose main   transfer E to ¦ // now"))
        .containsExactlyInAnyOrder("barn.pv", "yard.g", "utility.battery", "utility", "off");
    assertThat(completionsAfterTyping(croft, "lose main   transfer E to  // now", "lose main   fault hot to ¦ // now")).contains("neutral",
        "ground");
    assertThat(completionsAfterTyping(croft, "expect power given of main is 0 W within 1 W in island", "expect power given of ¦ is 0 W"))
        .contains("main", "barn.pv");
  }

  @Test
  void unitsAndKindsAreOffered() {
    assertThat(completionsAfterTyping(ROOMS, "micro:    microwave 1500 W", "micro:    microwave 1500 ¦")).startsWith("W", "VA");
    assertThat(completionsAfterTyping(ROOMS, "dish:     dishwasher 1200 W", "dish:     dish¦")).contains("dishwasher", "switch");
  }

  @Test
  void aNameLeadsToItsDeclarationInAnotherFile() {
    List<? extends Location> places = ScriptedEditor.get(
        documents().definition(new DefinitionParams(new TextDocumentIdentifier(HOUSE), at(HOUSE, "--1 m-- kitchen.dis¦posal"))))
        .getLeft();
    assertThat(places).hasSize(1);
    assertThat(places.get(0).getUri()).isEqualTo(ROOMS);
    assertThat(textAt(ROOMS, places.get(0).getRange())).isEqualTo("disposal");
  }

  @Test
  void aCableLeadsToTheLibrary() throws IOException {
    List<? extends Location> places = ScriptedEditor.get(
        documents().definition(new DefinitionParams(new TextDocumentIdentifier(HOUSE), at(HOUSE, "hall by 14/2 NM¦-B"))))
        .getLeft();
    Path file = Uris.path(places.get(0).getUri());
    String line = Files.readAllLines(file).get(places.get(0).getRange().getStart().getLine());
    assertThat(line).startsWith("cable NM-B");
    editor.hangUp();
    assertThat(file).as("goes with the session").doesNotExist();
  }

  @Test
  void allPlacesOfARoomAreFound() {
    List<? extends Location> places = ScriptedEditor.get(
        documents()
            .references(
                new ReferenceParams(
                    new TextDocumentIdentifier(ROOMS), at(ROOMS, "room off¦ice"), new ReferenceContext(true))));
    assertThat(places).extracting(Location::getUri).contains(ROOMS, HOUSE);
    assertThat(places).as("one in rooms, six on the branch").hasSize(7);
  }

  @Test
  void aRenamedPanelIsRenamedInEveryFile() throws IOException {
    Map<String, List<TextEdit>> changes = ScriptedEditor.get(
        documents().rename(new RenameParams(new TextDocumentIdentifier(HOUSE), at(HOUSE, "panel ¦P \"House"), "main-panel")))
        .getChanges();
    assertThat(changes.keySet()).containsExactlyInAnyOrder(HOUSE, GARAGE);
    editor.open(GARAGE, Files.readString(FOLDER.resolve("garage.wattle")));
    changes.forEach((uri, edits) -> editor.apply(uri, edits));
    assertThat(editor.findings(HOUSE)).isEmpty();
    assertThat(editor.text(GARAGE)).contains("from main-panel/9");
    assertThat(editor.text(HOUSE)).contains("  main-panel --11 m-- hall.sw");
  }

  @Test
  void aNameThatIsTakenOrIsNoneIsRefused() {
    assertThatThrownBy(() -> rename("room off¦ice", "kitchen")).hasMessageContaining("'kitchen'");
    assertThatThrownBy(() -> rename("room off¦ice", "15 A")).hasMessageContaining("is not a name");
    assertThatThrownBy(() -> rename("room off¦ice", "kW")).hasMessageContaining("is not a name");
  }

  private void rename(String marked, String name) {
    ScriptedEditor.get(documents().rename(new RenameParams(new TextDocumentIdentifier(ROOMS), at(ROOMS, marked), name)));
  }

  @Test
  void legsAndAmpsStandBesideSlots() {
    int line = at(HOUSE, "  6+8  ¦").getLine();
    List<InlayHint> hints = ScriptedEditor.get(
        documents()
            .inlayHint(new InlayHintParams(new TextDocumentIdentifier(HOUSE), new Range(new Position(line, 0), new Position(line, 80)))));
    assertThat(hints).extracting(h -> h.getLabel().getLeft()).hasSize(2).first().isEqualTo("A+B");
    // 12 kW across 240 V is 50 A on both legs, at whatever share is between a leg and the neutral.
    assertThat(hints.get(1).getLabel().getLeft()).endsWith(" A connected");
  }

  @Test
  void trialsTellWhetherTheirExpectationsHold() {
    assertThat(lenses()).contains("1 expectation, and it is met", "2 expectations, and all are met");
    editor.replace(HOUSE, "is 10 A within 0.1 A in toaster-alone", "is 9 A within 0.1 A in toaster-alone");
    assertThat(lenses()).contains("1 expectation, and it is met", "1 expectation, and it is not met");
    // What the later phases find is told as well, behind what is known at once.
    assertThat(ScriptedEditor.rules(editor.await(HOUSE, p -> !p.getDiagnostics().isEmpty()))).containsExactly("expectation-failed");
  }

  private List<String> lenses() {
    return ScriptedEditor.get(documents().codeLens(new CodeLensParams(new TextDocumentIdentifier(HOUSE)))).stream()
        .map(l -> l.getCommand().getTitle())
        .toList();
  }

  @Test
  void theVoltageThatABranchLosesStandsBesideItsName() {
    int line = at(HOUSE, "branch ra¦nge").getLine();
    List<InlayHint> hints = ScriptedEditor.get(
        documents()
            .inlayHint(new InlayHintParams(new TextDocumentIdentifier(HOUSE), new Range(new Position(line, 0), new Position(line, 80)))));
    assertThat(hints).hasSize(1);
    assertThat(hints.get(0).getLabel().getLeft()).matches("−[0-9.]+ %");
    assertThat(hover(HOUSE, "branch ra¦nge")).contains("voltage falls most at kitchen.range");
  }

  @Test
  void thingsOfThePlanAreFoundFromAnywhere() {
    List<String> found = ScriptedEditor.get(editor.server().getWorkspaceService().symbol(new WorkspaceSymbolParams("kitdis"))).getRight()
        .stream()
        .map(WorkspaceSymbol::getName)
        .toList();
    assertThat(found).containsExactlyInAnyOrder("kitchen.dish", "kitchen.disposal");
  }

  @Test
  void everyTokenHasItsPlace() {
    List<Integer> data = ScriptedEditor.get(documents().semanticTokensFull(new SemanticTokensParams(new TextDocumentIdentifier(HOUSE))))
        .getData();
    List<String> seen = new ArrayList<>();
    int line = 0;
    int column = 0;
    String[] lines = editor.text(HOUSE).split("\n", -1);
    for (int i = 0; i < data.size(); i += 5) {
      column = data.get(i) == 0 ? column + data.get(i + 1) : data.get(i + 1);
      line += data.get(i);
      String text = lines[line].substring(column, column + data.get(i + 2));
      seen.add(TokenColors.legend().getTokenTypes().get(data.get(i + 3)) + " " + text);
    }
    assertThat(seen)
        .contains("keyword branch", "function counter", "class P", "namespace kitchen", "property c1", "struct NM-B", "string \"Laundry\"",
            "number 15", "type A", "variable kitchen-drop", "event breakfast", "comment // panel to the first box over the counter");
  }

  private String textAt(String uri, Range range) {
    String line = editor.text(uri).split("\n", -1)[range.getStart().getLine()];
    return line.substring(range.getStart().getCharacter(), range.getEnd().getCharacter());
  }
}
