package wattle.emit.document.permit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.page.Page;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What a permit office reads of a plan that holds, of one that has a mistake, and of one of which nothing is calculated. */
class PermitPageTest {
  private static final String HOUSE = """
      plan "Mill Row" revision "2"
      use code us-2023
      dwelling { floor-area 1500 ft2 }
      service main 120/240 V 100 A { source available 10 kA   run 20 m of 2 Al triplex   earth rods by 6 Cu }
      panel P from main { bus 100 A  slots 12  bonded
        main breaker 100 A 22 kA
        1  15 A  den  "Den outlets"
      }
      branch den by 14/2 NM-B { P --5 m-- den.r }
      room den { r: receptacle }
      """;

  private static Compilation plan(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("mill.wattle", text), Path.of("mill.wattle"));
  }

  private static String body(String text) {
    Page page = new PermitPage(plan(text)).page("letter");
    assertThat(page.paper()).isEqualTo("letter");
    return page.body().replaceAll("<[^>]+>", "|").replaceAll("[|\\s]+", " ");
  }

  /** 1500 ft² at 3 VA are 4500 VA: NFPA 70 220.41; the empty slots of a panel of twelve are named, not drawn. */
  @Test
  void theSummaryHoldsCautionCalculationAndPanels() {
    String body = body(HOUSE);
    assertThat(body).contains("Permit summary: Mill Row", "Revision 2", Page.CAUTION, "Load calculation", "4500", "Den outlets",
        "Empty slots: 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12.", "Sources", "NFPA 70-2023");
    assertThat(body.indexOf(Page.CAUTION)).isLessThan(body.indexOf("Load calculation"));
  }

  /** What stands against the plan is there beside what is calculated. */
  @Test
  void aMistakeStandsBesideTheCalculation() {
    String body = body(HOUSE.replace("1  15 A  den", "1  20 A  den"));
    assertThat(body).contains("14/2 NM-B").containsPattern("Found: [1-9]\\d* errors?,");
  }

  @Test
  void withoutACodeNothingIsCalculated() {
    String body = body(HOUSE.replace("use code us-2023\n", ""));
    assertThat(body).contains("The plan names no code that has methods of load calculation.").doesNotContain("4500");
  }

  /** The form names its service, its method and the area it rests on, and leaves the signature open. */
  @Test
  void theFormStatesWhatItRestsOn() {
    WorksheetForm form = new WorksheetForm(plan(HOUSE));
    assertThat(form.isEmpty()).isFalse();
    List<String> lines = form.text(OptionalInt.empty()).lines().toList();
    assertThat(lines).contains("Load calculation: Mill Row", "Revision: 2", "Service: main, 120/240 V, rated 100 A",
        "Dwelling: floor area 1500 ft²");
    assertThat(lines).filteredOn(l -> l.contains("____")).hasSize(4).allSatisfy(l -> assertThat(l).matches("[A-Z][a-z ]+: *_+"));
    assertThat(new WorksheetForm(plan(HOUSE.replace("use code us-2023\n", ""))).isEmpty()).isTrue();
  }
}
