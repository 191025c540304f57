package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What an editor asks about patterns, in Tern Court. */
class PatternAskingTest {
  private static final Path FOLDER = Path.of("examples/tern-court").toAbsolutePath();
  private static final String HOUSE = FOLDER.resolve("house.wattle").toUri().toString();

  private ScriptedEditor editor;

  @BeforeEach
  void open() throws IOException {
    editor = new ScriptedEditor();
    editor.start(new ClientCapabilities(), FOLDER);
    editor.open(HOUSE, Files.readString(FOLDER.resolve("house.wattle")));
  }

  @AfterEach
  void close() throws IOException {
    editor.close();
  }

  private TextDocumentService documents() {
    return editor.server().getTextDocumentService();
  }

  private static TextDocumentIdentifier house() {
    return new TextDocumentIdentifier(HOUSE);
  }

  /** The place of a bar in a piece of text, where it first stands in the document. */
  private Position at(String marked) {
    String plain = marked.replace("¦", "");
    int found = editor.text(HOUSE).indexOf(plain);
    assertThat(found).as(plain).isNotNegative();
    return ScriptedEditor.position(editor.text(HOUSE), found + marked.indexOf('¦'));
  }

  private String hover(String marked) {
    Hover hover = ScriptedEditor.get(documents().hover(new HoverParams(house(), at(marked))));
    return hover == null ? "" : hover.getContents().getRight().getValue();
  }

  private String lineOfDefinition(String marked) {
    List<? extends Location> places = ScriptedEditor.get(documents().definition(new DefinitionParams(house(), at(marked)))).getLeft();
    assertThat(places).as(marked).hasSize(1);
    return editor.text(HOUSE).lines().toList().get(places.get(0).getRange().getStart().getLine()).strip();
  }

  private List<? extends Location> references(String marked) {
    return ScriptedEditor.get(documents().references(new ReferenceParams(house(), at(marked), new ReferenceContext(true))));
  }

  private String renamed(String marked, String name) {
    Map<String, List<TextEdit>> changes = ScriptedEditor.get(documents().rename(new RenameParams(house(), at(marked), name))).getChanges();
    changes.forEach((uri, edits) -> editor.apply(uri, edits));
    assertThat(editor.findings(HOUSE)).isEmpty();
    return editor.text(HOUSE);
  }

  @Test
  void namesLeadToWhereTheyAreMade() {
    assertThat(lineOfDefinition("place be¦droom(flat")).startsWith("pattern bedroom(");
    assertThat(lineOfDefinition("place fla¦t(n,")).startsWith("pattern flat(");
    assertThat(lineOfDefinition("sou¦rce --(run)--")).startsWith("pattern bedroom(source");
    assertThat(lineOfDefinition("--(ru¦n)-- bedroom.sw")).startsWith("pattern bedroom(source, n, run");
    assertThat(lineOfDefinition("flat --6 m-- kit¦chen.c1")).startsWith("room kitchen");
    assertThat(lineOfDefinition("flat --6 m-- kitchen.c¦1")).startsWith("c1:");
    assertThat(lineOfDefinition("bedroom.le¦ft --4 m--")).startsWith("left:");
    assertThat(lineOfDefinition("two-pole   fla¦t{n}")).startsWith("place flat(n");
    assertThat(lineOfDefinition("(to-fi¦rst + n")).startsWith("let to-first");
  }

  @Test
  void aPathFromOutsideLeadsIntoThePattern() {
    assertThat(lineOfDefinition("of flat3.coun¦ter is")).startsWith("branch counter");
    assertThat(lineOfDefinition("in flat3.break¦fast")).startsWith("trial breakfast");
    assertThat(lineOfDefinition("of fla¦t3.counter")).startsWith("place flat(n");
  }

  @Test
  void namesOfOnePlaceAreNotThoseOfAnother() {
    // In the pattern: where it is made, and the runs that come to it; the stairs have a lamp of their own.
    assertThat(references("room bath \"Bath¦room")).isEmpty();
    assertThat(references("room ba¦th \"Bathroom")).hasSize(4);
    assertThat(references("lamp:   ¦light 60 W").stream().map(Location::getUri)).allMatch(HOUSE::equals);
    assertThat(references("pattern flat(n, r¦un)")).hasSize(2);
  }

  @Test
  void aHoverTellsOfTheFirstPlacement() {
    assertThat(hover("pattern fl¦at(n")).contains("flat(n, run)", "placed as flat1, flat2", "and 2 more");
    assertThat(hover("branch coun¦ter ")).contains("branch flat1.counter", "flat1/2", "first placement of pattern flat");
    assertThat(hover("pattern bedroom(source, n, r¦un,")).contains("parameter of pattern bedroom");
    assertThat(hover("2    ¦20 A  arc-fault ground-fault  counter ")).isNotEmpty();
  }

  @Test
  void aRenamedPatternRoomOrParameterIsRenamedWhereItIsMeant() {
    String pattern = renamed("pattern bed¦room(", "chamber");
    assertThat(pattern).contains("pattern chamber(source", "place chamber(flat", "room chamber \"Bedroom {n}\" is bedroom",
        "chamber.sw --3 m-- chamber.lamp");
    String parameter = renamed("pattern flat(n, ru¦n)", "away");
    assertThat(parameter).contains("pattern flat(n, away)", "by (away) of 2/3 NM-B", "pattern chamber(source, n, run, ",
        "--(run)-- chamber.sw");
    String number = renamed("pattern flat(¦n, away)", "door");
    assertThat(number).contains("\"Kitchen of flat {door}\"", "\"Flat {door}\"", "\"Bedroom {n}\"").contains("place flat(n, (to-first");
    String branch = renamed("branch count¦er ", "worktop");
    assertThat(branch).contains("neutral of flat3.worktop is", "ground-fault  worktop ");
  }

  /** A parameter that stands for a cable or a kind is one wherever it stands, and what is given for it is what it is elsewhere. */
  @Test
  void cablesAndKindsThatAreGivenAreKnown() {
    assertThat(lineOfDefinition("branch bedroom by ca¦ble {")).startsWith("pattern bedroom(");
    assertThat(lineOfDefinition("lamp:  ki¦nd 18 W")).startsWith("pattern bedroom(");
    assertThat(hover("branch bedroom by ca¦ble {")).contains("parameter of pattern bedroom");
    assertThat(hover("(k * 4 m), by 14/2 NM-¦B, \"ceiling fan\")")).contains("NM-B", "copper");
    editor.replace(HOUSE, "\"ceiling fan\") as", "light) as");
    assertThat(hover("by 14/2 NM-B, li¦ght)")).isEqualTo(hover("lamp:   li¦ght 60 W")).isNotEmpty();
    assertThat(renamed("branch bedroom by ca¦ble {", "feed")).contains("pattern bedroom(source, n, run, feed, kind)",
        "branch bedroom by feed {", "by 14/2 NM-B, light)");
    assertThat(renamed("run, feed, ki¦nd)", "fixture")).contains("run, feed, fixture)", "lamp:  fixture 18 W");
  }

  @Test
  void parametersAreProposedForCablesAndKinds() {
    assertThat(proposedAfter("branch bedroom by cable {", "branch bedroom by ¦ {")).contains("cable", "kind");
    assertThat(proposedAfter("lamp:  kind 18 W", "lamp:  ¦ // here")).contains("kind", "ceiling fan");
    assertThat(proposedAfter("by 14/2 NM-B, \"ceiling fan\")", "by ¦)")).contains("12/2 NM-B", "12/2 UF-B").doesNotContain("as");
  }

  private List<String> proposedAfter(String instead, String marked) {
    editor.replace(HOUSE, instead, marked.replace("¦", ""));
    return ScriptedEditor.get(documents().completion(new CompletionParams(house(), at(marked)))).getLeft().stream()
        .map(CompletionItem::getLabel).toList();
  }

  @Test
  void aNameThatWouldMeanSomethingElseIsRefused() {
    assertThatThrownBy(() -> renamed("room ba¦th \"Bathroom", "kitchen")).hasMessageContaining("'kitchen'");
    assertThatThrownBy(() -> renamed("pattern flat(n, ru¦n)", "kitchen")).hasMessageContaining("'kitchen'");
  }

  @Test
  void namesAreProposedAsThePatternCallsThem() {
    editor.replace(HOUSE, "flat --6 m-- kitchen.c1 }", "flat --6 m-- kitchen. }");
    List<String> inside = ScriptedEditor.get(documents().completion(new CompletionParams(house(), at("flat --6 m-- kitchen.¦ }"))))
        .getLeft().stream()
        .map(CompletionItem::getLabel)
        .toList();
    assertThat(inside).contains("c1", "c2", "range");
  }
}
