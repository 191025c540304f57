package wattle.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.document.acceptance.TestSheet;
import wattle.emit.media.table.SheetText;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.quantity.UnitSystem;
import wattle.read.SourceReader;

/** A sheet goes out, is filled in, and comes back. */
class FilledSheetTest {
  private static final List<Measurement> WORKSHOP = measurements("examples/workshop/house.wattle");

  private static List<Measurement> measurements(String file) {
    try {
      Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(file));
      return plan.figures().measurements();
    } catch (SourceReader.Unreadable e) {
      throw new IllegalStateException(e);
    }
  }

  private static Measurement measurement(String key) {
    return WORKSHOP.stream().filter(m -> m.key().equals(key)).findFirst().orElseThrow();
  }

  /** A reading in the middle of what is accepted. */
  private static String good(Measurement m) {
    if (!m.isFigure()) {
      return m.expected();
    }
    return m.most().isEmpty() ? "250" : Double.toString((m.least().orElse(0.0) + m.most().get()) / 2);
  }

  /** The sheet as it goes out, its reading column filled. */
  private static String filled(Map<String, String> instead) {
    List<String> lines = new ArrayList<>(SheetText.csv(List.of(TestSheet.of(WORKSHOP, UnitSystem.METRIC))).lines().toList());
    for (int i = 1; i < lines.size(); i++) {
      String key = lines.get(i).substring(0, lines.get(i).indexOf(','));
      String reading = instead.getOrDefault(key, good(measurement(key)));
      assertThat(lines.get(i)).endsWith(",,");
      lines.set(i, lines.get(i).substring(0, lines.get(i).length() - 1) + reading + ",");
    }
    return String.join("\n", lines) + "\n";
  }

  private static Checked<Map<String, String>> read(String csv) {
    return FilledSheet.read(new Source("tests.csv", csv), WORKSHOP);
  }

  @Test
  void keysAreUnique() {
    assertThat(WORKSHOP).hasSizeGreaterThan(25);
    assertThat(WORKSHOP.stream().map(Measurement::key).distinct()).hasSameSizeAs(WORKSHOP);
    List<Measurement> court = measurements("examples/alder-court/house.wattle");
    assertThat(court.stream().map(Measurement::key).distinct()).hasSameSizeAs(court);
  }

  @Test
  void expectedFiguresAreThoseOfTables() {
    // 11 m of 14 AWG, out and back, at 20 °C: 8.282 Ω/km, ASTM B258 size with the resistivity of annealed copper, from memory.
    Measurement loop = measurement("living/living.o2/continuity");
    assertThat(loop.derivation().orElseThrow().si()).isCloseTo(2 * 0.011 * 8.282, within(0.002));
    assertThat(measurement("saw/workshop.saw/voltage").derivation().orElseThrow().si()).isCloseTo(240, within(1.0));
    assertThat(measurement("bench/workshop.b3/voltage").expected()).isEqualTo("240 V");
    assertThat(WORKSHOP).noneMatch(m -> m.key().startsWith("wlights/workshop.l1/voltage"));
  }

  @Test
  void aSheetFilledAsExpectedGivesNoFinding() {
    Checked<Map<String, String>> read = read(filled(Map.of()));
    assertThat(read.findings()).isEmpty();
    assertThat(read.value()).hasSameSizeAs(WORKSHOP);
  }

  @Test
  void everyFigureOutsideItsBoundsIsFoundAtItsLine() {
    for (Measurement m : WORKSHOP) {
      String wrong = m.isFigure() ? m.most().map(most -> Double.toString(most * 1.01)).orElse("0.4") : "no";
      List<Finding> findings = read(filled(Map.of(m.key(), wrong))).findings();
      assertThat(findings).as(m.key()).singleElement().satisfies(f -> {
        assertThat(f.rule()).isEqualTo("reading-out-of-range");
        assertThat(f.place().orElseThrow().span().line()).isEqualTo(WORKSHOP.indexOf(m) + 2);
        assertThat(f.place().orElseThrow().span().text()).isEqualTo(wrong);
      });
    }
  }

  @Test
  void whatSpreadsheetsAndPeopleWriteIsRead() {
    String semicolons = "test;reading;by\r\nliving/living.o1/voltage;119,4 V;me\r\nliving/P/insulation/black;>200"
        + " MΩ;me\r\nliving/P/arc-fault-trip;Trips;me\r\n";
    Checked<Map<String, String>> read = read(semicolons);
    assertThat(read.value()).hasSize(3);
    assertThat(read.findings()).extracting(Finding::rule).containsExactly("not-measured");
  }

  @Test
  void whatCannotBeReadIsToldAtItsPlace() {
    String csv = "test,reading\nliving/living.o1/voltage,about right\nliving/living.o1/voltge,120\nliving/living.o2/voltage,120"
        + " Ω\nliving/P/insulation/black,<5\nliving/P/insulation/black,9\nliving/living.o1/polarity,perhaps\n";
    List<Finding> findings = read(csv).findings();
    assertThat(findings).extracting(Finding::rule)
        .containsExactlyInAnyOrder("not-measured", "reading-unreadable", "test-unknown", "reading-unreadable", "reading-out-of-range",
            "reading-twice", "reading-unreadable");
    Optional<Finding> unknown = findings.stream().filter(f -> f.rule().equals("test-unknown")).findFirst();
    assertThat(unknown.orElseThrow().fixes()).anyMatch(f -> f.order().contains("living/living.o1/voltage"));
    assertThat(unknown.get().place().orElseThrow().span().line()).isEqualTo(3);
  }

  @Test
  void otherFilesAreRefused() {
    assertThat(read("").findings()).extracting(Finding::rule).containsExactly("sheet-head");
    assertThat(read("a,b\n1,2\n").findings()).extracting(Finding::rule).containsExactly("sheet-head");
    assertThat(read("test,reading\n\"never closed,1\n").findings()).extracting(Finding::rule).contains("sheet-unreadable");
    assertThat(read("test,reading,reading\n1,2,3\n").findings()).extracting(Finding::rule).containsExactly("sheet-unreadable");
  }

  /** No more digits than a meter for fractions of an ohm tells apart; common practice. */
  @Test
  void whatToExpectOfALoopIsToldAsAMeterShowsIt() {
    assertThat(WORKSHOP.stream().filter(m -> m.kind() == Measurement.Kind.CONTINUITY).map(Measurement::expected))
        .isNotEmpty()
        .allSatisfy(e -> assertThat(e).matches("about (0\\.0*[1-9][0-9]?|[1-9](\\.[0-9])?|[1-9][0-9]+) Ω"));
  }
}
