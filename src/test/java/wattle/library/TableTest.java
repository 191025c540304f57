package wattle.library;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.derivation.Derivation;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.syntax.PlanParser;

class TableTest {
  private static final String WIRES = """
      table wires "Wires of this test" {
        source "invented" "page 1"
        columns size AWG  metal   load A  place
        14                copper  15      dry    from memory
        12                copper  20      "dry .. wet"
        2/0               copper  175     -
        2/0               alu     -       dry
      }
      table heat "Heat" {
        source "invented"
        columns ambient degC  factor
        -..10                 1.29
        11..15                1.22
        16..20                1.15
        20..-                 0.5
      }
      limit most-outlets "Outlets of one branch" 12 { source "CSA C22.1" "8-304" from memory }
      """;

  private static Checked<Library> load(String text) {
    return LibraryLoader.load(List.of(PlanParser.parse(new Source("test.wattle", text)).value()));
  }

  private final Library library = load(WIRES).value();
  private final Table wires = library.table("wires").orElseThrow();
  private final Table heat = library.table("heat").orElseThrow();

  private static Derivation size(int gauge) {
    return Derivation.stated("size", "", WireSize.awg(gauge));
  }

  private static Derivation metal(String metal) {
    return Derivation.stated("metal", "", metal);
  }

  private static Derivation amperes(double amperes) {
    return Derivation.stated("current", "I", Quantity.of(amperes, Units.AMPERE));
  }

  private static Derivation celsius(double celsius) {
    return Derivation.stated("ambient", "T_a", Quantity.of(celsius, Units.CELSIUS));
  }

  @Test
  void isReadWithoutFindings() {
    assertThat(load(WIRES).findings()).isEmpty();
    assertThat(wires.rows()).hasSize(4);
    assertThat(wires.rows().get(1).cells().get(3)).isEqualTo(new Cell.Words("dry .. wet"));
    assertThat(wires.rows().get(2).cells().get(3)).isEqualTo(new Cell.None());
  }

  @Test
  void aFigureComesWithItsPlaceAndSource() {
    Derivation load = wires.find("load", "I", "load", Key.is("size", size(12)), Key.is("metal", metal("copper"))).orElseThrow();
    assertThat(load).hasToString("load = 20 A");
    assertThat(load.formula()).isEqualTo("table wires, size 12 AWG, metal copper, column load");
    assertThat(load.sources()).hasToString("[invented page 1]");
    Derivation doubtful = wires.find("load", "I", "load", Key.is("size", size(14))).orElseThrow();
    assertThat(doubtful.sources()).hasToString("[invented page 1 (from memory, verify)]");
    assertThat(doubtful.toBeVerified()).isTrue();
  }

  @Test
  void anEmptyCellOrAnotherRowGivesNothing() {
    assertThat(wires.find("load", "I", "load", Key.is("size", size(-1)), Key.is("metal", metal("alu")))).isEmpty();
    assertThat(wires.find("load", "I", "load", Key.is("size", size(10)))).isEmpty();
    assertThat(wires.find("load", "I", "weight", Key.is("size", size(12)))).isEmpty();
    assertThat(wires.find("load", "I", "load", Key.is("weight", size(12)))).isEmpty();
  }

  @Test
  void theLeastRowNotBelowIsTaken() {
    assertThat(wires.find("size", "", "size", Key.notBelow("load", amperes(15)))).hasToString("Optional[size = 14 AWG]");
    assertThat(wires.find("size", "", "size", Key.notBelow("load", amperes(15.01)))).hasToString("Optional[size = 12 AWG]");
    assertThat(wires.find("size", "", "size", Key.notBelow("load", amperes(176)))).isEmpty();
    assertThat(wires.find("load", "", "load", Key.notBelow("size", size(8)))).hasToString("Optional[load = 175 A]");
  }

  @Test
  void whatFallsBetweenTwoRangesBelongsToTheUpper() {
    assertThat(factor(-40)).isEqualTo(1.29);
    assertThat(factor(10)).isEqualTo(1.29);
    assertThat(factor(10.5)).isEqualTo(1.22);
    assertThat(factor(11)).isEqualTo(1.22);
    assertThat(factor(20)).isEqualTo(1.15);
    assertThat(factor(20.1)).isEqualTo(0.5);
    assertThat(factor(900)).isEqualTo(0.5);
  }

  private double factor(double celsius) {
    return heat.find("factor", "k", "factor", Key.notBelow("ambient", celsius(celsius))).orElseThrow().si();
  }

  @Test
  void aLimitIsAFigureWithASource() {
    Derivation most = library.limit("most-outlets").orElseThrow().derivation("n");
    assertThat(most).hasToString("Outlets of one branch = 12");
    assertThat(most.toBeVerified()).isTrue();
  }

  @Test
  void laterLibrariesLieOverEarlierOnes() {
    Library local = load("table heat \"Mine\" {\n source \"common practice\"\n columns ambient degC factor\n 1 2\n}\n").value();
    assertThat(library.with(local).table("heat").orElseThrow().label()).isEqualTo("Mine");
    assertThat(library.with(local).table("wires")).contains(wires);
  }

  @Test
  void eachMistakeIsOneFinding() {
    assertThat(headlines("table t { source \"x\"\n columns a b\n 1 2 3\n 4 5\n }\n"))
        .containsExactly("a row of table 't' has 3 cells");
    assertThat(headlines("table t { source \"x\"\n columns size AWG b\n 13.5 2\n }\n"))
        .containsExactly("'13.5' does not fit column 'size'");
    assertThat(headlines("table t { source \"x\"\n columns a A\n dry\n }\n"))
        .containsExactly("'dry' does not fit column 'a'");
    assertThat(headlines("table t { source \"x\"\n columns a\n 5..1\n }\n"))
        .containsExactly("'5..1' does not fit column 'a'");
    assertThat(headlines("table t { columns a\n 1\n }\n")).containsExactly("'t' names no source");
    assertThat(headlines("table t { source \"x\"\n columns a a\n 1 1\n }\n"))
        .containsExactly("table 't' has two columns 'a'");
    assertThat(headlines("table bundling { source \"x\"\n columns conductors factors\n 1..3 1\n }\n"))
        .containsExactly("table 'bundling' has no column 'factor'");
    assertThat(headlines("table breaker-ratings { source \"x\"\n columns rating V\n 15\n }\n"))
        .containsExactly("column 'rating' of table 'breaker-ratings' has the wrong unit");
    assertThat(headlines("table breaker-ratings { source \"x\"\n columns rating kA\n 15\n }\n")).isEmpty();
  }

  private static List<String> headlines(String text) {
    return load(text).findings().stream().map(Finding::headline).toList();
  }
}
