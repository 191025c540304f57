package wattle.emit.document.directory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.emit.media.page.Page;
import wattle.emit.media.picture.PdfPages;
import wattle.finding.Source;
import wattle.model.House;
import wattle.model.Panel;
import wattle.read.SourceReader;

/** Directories: every breaker in its slot, in words, on one sheet. */
class DirectoryTest {
  private static House house(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle")).house();
  }

  private static House alderCourt() throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/alder-court/house.wattle")).house();
  }

  private static PDDocument pdf(Page page) throws IOException {
    return Loader.loadPDF(PdfPages.of(page.html(), page.title()));
  }

  @Test
  void rowsStandAsInThePanel() throws SourceReader.Unreadable {
    House house = alderCourt();
    PanelDirectory directory = PanelDirectory.of(house, house.panels().get("P"));
    assertThat(directory.rows()).hasSize(20);
    PanelDirectory.Row first = directory.rows().get(0);
    assertThat(first.left()).singleElement().satisfies(l -> assertThat(l.slots()).isEqualTo("1"));
    assertThat(first.right()).singleElement().satisfies(l -> assertThat(l.slots()).isEqualTo("2+4"));
    assertThat(first.rightRows()).isEqualTo(2);
    assertThat(directory.rows().get(1).rightRows()).isZero();
    assertThat(directory.rows().get(4).right()).extracting(DirectoryLine::slots).containsExactly("10a", "10b");
    assertThat(directory.rows().get(4).left()).singleElement().satisfies(l -> assertThat(l.rooms()).containsExactly("Garage"));
    assertThat(directory.rows().get(19).left()).singleElement().satisfies(l -> assertThat(l.words()).isEqualTo("empty"));
  }

  @Test
  void everyBreakerIsThereOnce() throws SourceReader.Unreadable {
    House house = alderCourt();
    for (Panel panel : house.panels().values()) {
      List<String> slots = PanelDirectory.of(house, panel).rows().stream()
          .flatMap(r -> java.util.stream.Stream.concat(r.left().stream(), r.right().stream()))
          .filter(l -> l.of().isPresent()).map(DirectoryLine::slots).sorted().toList();
      assertThat(slots).isEqualTo(panel.breakers().stream().map(b -> b.id().slotText()).sorted().toList());
    }
  }

  /** A splice on the way says nothing of what a way is for; a branch that ends in one has nothing else to say. */
  @Test
  void aSpliceIsNoRoomThatAWayFeeds() {
    String text = """
        service main 120/240 V 60 A { source available 10 kA }
        panel F from main { bus 60 A slots 4 bonded
          main breaker 60 A
          1 15 A front
          2 15 A spare1
        }
        branch front by 14/2 NM-B { F --3 m-- attic.splice --2 m-- front.r1 }
        branch spare1 by 14/2 NM-B { F --3 m-- attic.stub }
        room attic "Attic" { splice: junction   stub: junction }
        room front "Front room" { r1: receptacle }
        """;
    House house = house(text);
    List<PanelDirectory.Row> rows = PanelDirectory.of(house, house.panels().get("F")).rows();
    assertThat(rows.get(0).left().get(0).rooms()).containsExactly("Front room");
    assertThat(rows.get(0).right().get(0).rooms()).containsExactly("Attic");
    assertThat(DirectoryText.render(house, List.of(house.panels().get("F")))).contains("Outlets \u2014 Front room\n",
        "Nothing yet \u2014 Attic");
  }

  /** Two fuses of one circuit: what the red feeds is not on the card of the black, on one leg or on two. */
  @Test
  void aHandleOfASharedCircuitNamesWhatItFeeds() {
    for (String second : List.of("3  20 A  fuse leg A  wet", "3  20 A  fuse leg B  wet")) {
      House house = house(
          """
              panel F "Fuse box" { bus 60 A slots 4 order one-column
                2  20 A  fuse leg A  wet
                SECOND }
              branch wet by 12/3 NM-B { F --5 m-- bath.heater --4 m-- wash.machine }
              room bath "Bathroom" { heater: wall heater 1.5 kW 120 V on red }
              room wash "Wash house" { machine: washer 1.2 kVA on black }
              """.replace("SECOND", second));
      String text = DirectoryText.render(house, List.copyOf(house.panels().values()));
      assertThat(text.lines().filter(l -> l.startsWith("  2 ")).findFirst().orElseThrow())
          .contains("20 A fuse", "Washer \u2014 Wash house").doesNotContain("Bathroom");
      assertThat(text.lines().filter(l -> l.startsWith("  3 ")).findFirst().orElseThrow())
          .contains("Wall heater \u2014 Bathroom").doesNotContain("Wash house");
      assertThat(text).contains("! shares its circuit with 3: switch off both", "  4  ").doesNotContain("<");
    }
  }

  @Test
  void aCardOfTwoColumnsIsTextToo() throws SourceReader.Unreadable {
    House house = alderCourt();
    String text = DirectoryText.render(house, List.copyOf(house.panels().values()));
    assertThat(text).contains("left side, from the top", "right side, from the top", "To switch everything off: ").doesNotContain("<");
    for (Panel panel : house.panels().values()) {
      panel.breakers().forEach(b -> assertThat(text).contains("  " + b.id().slotText() + " "));
    }
  }

  @Test
  void wordsAreMadeWhereThereIsNoLabel() {
    House house = house(
        """
            panel P { bus 100 A slots 8
              1    15 A  hall
              2    15 A  both
              4    15 A  both
              3+5  20 A two-pole back-fed  sun }
            branch hall by 14/2 NM-B { P --5 m-- hall.o1 --4 m-- hall.lamp }
            branch both by 14/3 NM-B { P --5 m-- hall.c }
            branch sun by 12/2 NM-B { P --5 m-- roof.pv }
            room hall "Hall" { o1: receptacle  lamp: light 10 W  c: split receptacle }
            room roof "Roof" { pv: solar inverter 2 kW "Panels on the shed" }
            """);
    String html = DirectoryPage.sheet(house, List.copyOf(house.panels().values()), "letter").html();
    assertThat(html).contains("Outlets, lights", "Panels on the shed", "backfeeds this panel",
        "shares its circuit with 4: switch off both");
    assertThat(html).contains("slot 3+5, which feeds back");
  }

  @Test
  void aPanelIsOneSheetAndACardIsTwoSides() throws Exception {
    House house = alderCourt();
    for (String paper : List.of("letter", "A4")) {
      try (PDDocument sheet = pdf(DirectoryPage.sheet(house, List.copyOf(house.panels().values()), paper));
          PDDocument card = pdf(DirectoryPage.card(house, List.of(house.panels().get("P")), paper))) {
        assertThat(sheet.getNumberOfPages()).isEqualTo(2);
        assertThat(card.getNumberOfPages()).isEqualTo(2);
        String text = new PDFTextStripper().getText(sheet).replaceAll("\\s+", " ");
        house.panels().values().forEach(p -> p.breakers().forEach(b -> assertThat(text).contains(b.label().orElseThrow())));
      }
    }
  }

  @Test
  void aPanelOf84WaysFitsItsSheet() throws Exception {
    StringBuilder plan = new StringBuilder("panel P {\n bus 200 A slots 42\n");
    for (int slot = 1; slot <= 42; slot++) {
      plan.append(' ').append(slot).append("a 15 A spare \"Room ").append(slot).append(" outlets\"\n");
      plan.append(' ').append(slot).append("b 15 A spare \"Room ").append(slot).append(" lights\"\n");
    }
    House house = house(plan.append("}\n").toString());
    try (PDDocument sheet = pdf(DirectoryPage.sheet(house, List.copyOf(house.panels().values()), "A4"))) {
      assertThat(sheet.getNumberOfPages()).isEqualTo(1);
    }
  }
}
