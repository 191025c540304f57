package wattle.boxes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.finding.Source;
import wattle.quantity.Units;
import wattle.read.SourceReader;
import wattle.reference.Reference;

class BoxFillTest {
  /** What a box needs, in cubic inches, where cables come in from branches of their own. */
  private static Derivation needed(String code, String box, String... cables) {
    StringBuilder plan = new StringBuilder("plan \"Box\"\nuse code " + code + "\n");
    plan.append("service main 120/240 V 200 A { source available 10 kA }\npanel P from main {\n  bus 200 A  slots 20\n");
    for (int i = 0; i < cables.length; i++) {
      plan.append("  %d 15 A b%d\n".formatted(i + 1, i));
    }
    plan.append("}\n");
    for (int i = 0; i < cables.length; i++) {
      plan.append("branch b%d by %s NM-B { P --5 m-- den.b }\n".formatted(i, cables[i]));
    }
    plan.append("room den { box b ").append(box).append(" }\n");
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(new Source("box.wattle", plan.toString()), Path.of("box.wattle"));
    return new BoxFill(bound.house(), bound.library()).needed(bound.house().boxes().get("den.b")).orElseThrow();
  }

  /** A two-gang box with a receptacle on 12 AWG and a switch on 14 AWG, by names of a box and what is inside it. */
  private static Derivation shared(String code, String inside) {
    String plan = """
        plan "Box"
        use code %s
        service main 120/240 V 200 A { source available 10 kA }
        panel P from main {
          bus 200 A slots 20
          1 20 A counter
          2 15 A lights
        }
        branch counter by 12/2 NM-B { P --5 m-- den.o --3 m-- den.far }
        branch lights by 14/2 NM-B { P --5 m-- den.sw --3 m by 14/3 NM-B-- den.lamp }
        room den { box b 60 in3 %s { o: receptacle  sw: switch for lamp }  lamp: light 20 W  far: receptacle }
        """.formatted(code, inside);
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(new Source("box.wattle", plan), Path.of("box.wattle"));
    return new BoxFill(bound.house(), bound.library()).needed(bound.house().boxes().get("den.b")).orElseThrow();
  }

  /**
   * NFPA 70 314.16(B)(4), as reported at boxfillcalculator.com device-fill-calculations: each yoke by the largest conductor on that
   * device. By hand: 4 × 2.25 and 5 × 2.00 of wires, 2 × 2.25 of the receptacle, 2 × 2.00 of the switch, four grounds once 2.25.
   */
  @Test
  void eachYokeByItsOwnConductors() {
    Derivation needed = shared("us-2023", "");
    assertThat(cubicInches(needed)).isEqualTo(9.0 + 10.0 + 4.5 + 4.0 + 2.25, within(1e-9));
    assertThat(needed.inputs()).extracting(Derivation::name)
        .containsExactly("conductors 14 AWG", "conductors 12 AWG", "yokes, 14 AWG", "yokes, 12 AWG", "grounds, 12 AWG");
  }

  /** NFPA 70 314.16(B)(2), (3) and (6): clamps, a stud, a hickey and a terminal block once each, of the largest conductor in the box. */
  @Test
  void whatIsInsideTheBoxTakesRoom() {
    double bare = cubicInches(shared("us-2023", ""));
    assertThat(cubicInches(shared("us-2023", "clamps"))).isEqualTo(bare + 2.25, within(1e-9));
    assertThat(cubicInches(shared("us-2023", "stud"))).isEqualTo(bare + 2.25, within(1e-9));
    assertThat(cubicInches(shared("us-2023", "stud hickey"))).isEqualTo(bare + 4.5, within(1e-9));
    assertThat(cubicInches(shared("us-2023", "terminal-block clamps"))).isEqualTo(bare + 4.5, within(1e-9));
    double canadian = cubicInches(shared("ca-2021", ""));
    assertThat(cubicInches(shared("ca-2021", "stud clamps"))).as("CSA C22.1 12-3034 counts no clamps").isEqualTo(
        canadian + 28.7 / 16.387064, within(1e-6));
  }

  /** Worked example: joshthesparky.com boxfill-qotw; NFPA 70 314.16(B): 7 conductors, grounds, clamps and a switch, 11 × 2.25 in³. */
  @Test
  void aSwitchOnThreeCables() {
    assertThat(cubicInches(needed("us-2023", "21 in3 clamps { o: receptacle }", "12/2", "12/2", "12/3"))).isEqualTo(24.75, within(1e-9));
  }

  /** Worked example: diychatroom.com thread 102858, confirmed there: three 14/2 and a receptacle, no clamps, 9 × 2 in³. */
  @Test
  void aReceptacleOnThreeCables() {
    assertThat(cubicInches(needed("us-2023", "18 in3 { o: receptacle }", "14/2", "14/2", "14/2"))).isEqualTo(18.0, within(1e-9));
  }

  private static double cubicInches(Derivation volume) {
    return volume.quantity().orElseThrow().in(Units.CUBIC_INCH);
  }

  /** Worked example: page tradelicenseprep.com calc-box-fill, example 1; NFPA 70 314.16(B): 8 × 2.25 in³. */
  @Test
  void receptacleOnTwoCables() {
    Derivation needed = needed("us-2023", "34 in3 clamps { o: receptacle }", "12/2", "12/2");
    assertThat(cubicInches(needed)).isEqualTo(18.0, within(1e-9));
    assertThat(needed.inputs()).extracting(BoxFillTest::cubicInches).containsExactly(9.0, 4.5, 2.25, 2.25);
  }

  /** Worked example: page electrical-contractor.net, post 95184; NFPA 70 314.16(B): 11 × 2.25 in³, no clamps inside. */
  @Test
  void oneDeviceOnFourCables() {
    assertThat(cubicInches(needed("us-2023", "34 in3 { o: receptacle }", "12/2", "12/2", "12/2", "12/2")))
        .isEqualTo(24.75, within(1e-9));
  }

  /**
   * Worked example: page electricianprep.co box-fill-calculator, two 14/2 and one 12/2, clamps and a receptacle on the 12 AWG: 21.5 in³.
   * NFPA 70 314.16(B): 4 × 2.00 + 2 × 2.25, and clamps, yoke and grounds by the largest size.
   */
  @Test
  void mixedSizes() {
    Derivation needed = needed("us-2023", "21 in3 clamps { o: receptacle }", "12/2", "14/2", "14/2");
    assertThat(cubicInches(needed)).isEqualTo(21.5, within(1e-9));
    assertThat(needed.inputs().stream().mapToDouble(BoxFillTest::cubicInches).sum()).isEqualTo(21.5, within(1e-9));
  }

  /** NFPA 70 314.16(B)(5): a quarter for each ground above four, of the largest ground: 12 × 2.25 + 1.5 × 2.25. */
  @Test
  void groundsAboveFour() {
    assertThat(cubicInches(needed("us-2023", "34 in3", "12/2", "12/2", "12/2", "12/2", "12/2", "12/2")))
        .isEqualTo(12 * 2.25 + 1.5 * 2.25, within(1e-9));
  }

  /** NFPA 70 table 314.16(B) and CSA C22.1 table 22, every size that the grammar has cables of: two conductors and grounds. */
  @TestFactory
  List<DynamicTest> everyListedAllowance() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("box.csv")) {
      String size = row.get("item").replace(" AWG", "");
      if (!row.get("kind").equals("conductor_allowance") || !List.of("14", "12", "10", "8", "6").contains(size)) {
        continue;
      }
      boolean us = row.get("table").startsWith("NEC");
      // CSA C22.1 prints milliliters.
      double allowance = us ? Double.parseDouble(row.get("value")) : Double.parseDouble(row.get("value_ml")) / 16.387064;
      tests.add(
          DynamicTest.dynamicTest(
              row.get("table") + " " + size,
              () -> {
                Derivation needed = needed(us ? "us-2023" : "ca-2021", "60 in3", size + "/2");
                assertThat(cubicInches(needed.inputs().get(0))).isEqualTo(2 * allowance, within(1e-6));
              }));
    }
    assertThat(tests).hasSizeGreaterThanOrEqualTo(10);
    return tests;
  }

  private static double pulled(String box, String more) {
    String plan = """
        plan "Box"
        use code us-2023
        service main 120/240 V 200 A { source available 10 kA }
        panel P from main {
          bus 200 A slots 20
          1+3 20 A two-pole pump
          5 15 A lights
        }
        branch pump by 3/4 in EMT with 12 Cu THWN, 12 Cu THWN, 12 Cu ground { P --5 m-- den.b --5 m-- den.p }
        branch lights by 1/2 in EMT with 2 x 14 Cu THWN, 14 Cu ground { P --5 m-- den.b --3 m-- den.lamp }
        room den {
          box b %s { j: junction }
          p: well pump 8 A   lamp: light 20 W %s
        }
        """.formatted(box, more);
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(new Source("box.wattle", plan), Path.of("box.wattle"));
    assertThat(bound.findings()).extracting(f -> f.headline()).isEmpty();
    String of = more.isEmpty() ? "den.b" : "den.lamp";
    return cubicInches(new BoxFill(bound.house(), bound.library()).needed(bound.house().boxes().get(of)).orElseThrow());
  }

  /**
   * NFPA 70 314.16(B)(1): of two 12 AWG and two 14 AWG that pass through, each counts once, and twice where it is looped; by hand
   * 2 × 2.25 + 2 × 2.00, with four grounds once 2.25. A plan that does not say so has two ends of each.
   */
  @Test
  void conductorsThatPassThrough() {
    assertThat(pulled("40 in3 uncut", "")).isEqualTo(4.5 + 4.0 + 2.25, within(1e-9));
    assertThat(pulled("40 in3 uncut looped", "")).isEqualTo(9.0 + 8.0 + 2.25, within(1e-9));
    assertThat(pulled("40 in3", "")).isEqualTo(9.0 + 8.0 + 2.25, within(1e-9));
  }

  /** NFPA 70 314.16(B)(1) exception: up to four fixture wires of a canopy take no room; six of 18 AWG take 1.5 in³ each. */
  @Test
  void fixtureWires() {
    assertThat(pulled("40 in3", "fixture-wires 4")).isEqualTo(4.0 + 2.0, within(1e-9));
    assertThat(pulled("40 in3", "fixture-wires 6")).isEqualTo(4.0 + 2.0 + 9.0, within(1e-9));
  }

  /** NFPA 70 table 314.16(A): FS 13.5 in³, FD 18 in³, several gangs 18 and 24 in³ each; masonry 14 and 21 in³ each gang. */
  @Test
  void castAndMasonryBoxes() {
    assertThat(volume("FS")).isEqualTo(13.5, within(1e-9));
    assertThat(volume("FD")).isEqualTo(18, within(1e-9));
    assertThat(volume("2-gang FS")).isEqualTo(36, within(1e-9));
    assertThat(volume("2-gang FD")).isEqualTo(48, within(1e-9));
    assertThat(volume("masonry 3.75 in 2 in 2.5 in")).isEqualTo(14, within(1e-9));
    assertThat(volume("2-gang masonry 3.75 in 2 in 3.5 in")).isEqualTo(42, within(1e-9));
    assertThat(volume("FS 15 in3")).as("what is marked on it counts").isEqualTo(15, within(1e-9));
  }

  private static double volume(String box) {
    String plan = "plan \"Box\"\nuse code us-2023\nroom den { box b " + box + " { r: receptacle } }\n";
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(new Source("box.wattle", plan), Path.of("box.wattle"));
    return bound.house().boxes().get("den.b").volume().orElseThrow().in(Units.CUBIC_INCH);
  }
}
