package wattle.emit.media.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/** A plan that is written in feet is shown in feet; programs get what they always get. */
class SheetUnitsTest {
  @TempDir
  private Path folder;

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).as(err.toString()).isLessThan(2);
    return out.toString();
  }

  /** Everything of Sorrel Lane that is a length, in feet. */
  private Path inFeet() throws Exception {
    String text = Files.readString(Path.of("examples/kitchen-renovation/after.wattle"));
    String feet = java.util.regex.Pattern.compile("\\b(\\d+(?:\\.\\d+)?) m\\b(?!m|2|²)").matcher(text)
        .replaceAll(m -> String.format(java.util.Locale.ROOT, "%.2f ft", Double.parseDouble(m.group(1)) / 0.3048));
    assertThat(feet).isNotEqualTo(text);
    return Files.writeString(folder.resolve("feet.wattle"), feet);
  }

  @Test
  void aPlanInFeetIsShownInFeet() throws Exception {
    String plan = inFeet().toString();
    assertThat(run("table", "--of", "runs", plan)).contains("length (ft)").doesNotContain("length (m)");
    assertThat(run("table", "--of", "runs", "--format", "md", plan)).contains("length (ft)");
    assertThat(run("table", "--of", "heat", plan)).contains("(°F)", "(W/ft)").doesNotContain("°C)");
    assertThat(run("draw", "--view", "one-line", "--format", "dot", plan)).contains(" ft").doesNotContainPattern("[0-9] m\\b");
    assertThat(run("draw", "--view", "voltage", "--of", "counter", plan)).contains(">10 ft<");
  }

  /** The kitchen has 8 m of cable to its range; 8 / 0.3048 = 26.2 ft, by the international yard. */
  @Test
  void figuresAreConverted() {
    Sheet meters = new Sheet("s", "S", List.of(Column.figures("length-m", "length", "m", 1), Column.figures("amps", "current", "A", 0)),
        List.of(Row.of(Cell.of(8), Cell.of(3))), List.of());
    Sheet feet = SheetUnits.shown(meters, UnitSystem.CUSTOMARY);
    assertThat(((Cell.Figure) feet.rows().get(0).cells().get(0)).value()).isCloseTo(26.2467, within(1e-4));
    assertThat(feet.rows().get(0).cells().get(1)).isEqualTo(Cell.of(3));
    assertThat(SheetUnits.shown(meters, UnitSystem.METRIC)).isEqualTo(meters);
    assertThat(UnitSystem.CUSTOMARY.shown(Quantity.of(100, Units.CELSIUS)).value()).isCloseTo(212, within(1e-9));
    assertThat(UnitSystem.CUSTOMARY.shown(Quantity.of(2.5, Units.SQUARE_MILLIMETER)).unit()).isEqualTo(Units.SQUARE_MILLIMETER);
  }

  @Test
  void programsGetOneUnitWhateverAPlanIsWrittenIn() throws Exception {
    String plan = inFeet().toString();
    assertThat(run("table", "--of", "runs", "--format", "csv", plan)).contains("length-m");
    assertThat(run("table", "--of", "runs", "--format", "json", plan)).containsPattern("\"key\" *: *\"length-m\"[^}]*\"unit\" *: *\"m\"");
  }

  /** Most of what is written decides; as many of the one as of the other is metric, as is a plan without any. */
  @Test
  void mostOfWhatIsWrittenDecides() {
    Quantity meter = Quantity.of(3, Units.METER);
    Quantity foot = Quantity.of(3, Units.FOOT);
    Quantity area = Quantity.of(1500, Units.SQUARE_FOOT);
    assertThat(UnitSystem.ofMost(List.of(meter, foot, area))).isEqualTo(UnitSystem.CUSTOMARY);
    assertThat(UnitSystem.ofMost(List.of(meter, foot))).isEqualTo(UnitSystem.METRIC);
    assertThat(UnitSystem.ofMost(List.of(Quantity.of(3, Units.AMPERE)))).isEqualTo(UnitSystem.METRIC);
  }
}
