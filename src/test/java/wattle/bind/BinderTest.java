package wattle.bind;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.BranchHot;
import wattle.read.SourceReader;

/** Legs of slots by the supply, in panels numbered with odd slots on the left (common practice), and the findings of a wrong leg. */
class BinderTest {
  private static Compilation bind(String supply, String slots) {
    return new Compiler(SourceReader.FROM_DISK).structure(new Source("bind.wattle", """
        plan "Bind"
        use code us-2023
        service main %s 200 A { source transformer 25 kVA 2 %% }
        panel P from main {
          bus 200 A  slots 20  bonded
          main breaker 200 A 22 kA
        %s
        }
        branch b by 12/3 NM-B { P --3 m-- a.c }
        room a { c: split receptacle }
        """.formatted(supply, slots)), Path.of("bind.wattle"));
  }

  private static List<String> legs(Compilation plan) {
    return plan.house().branches().get("b").hots().stream().map(BranchHot::leg).map(l -> l.map(Object::toString).orElse("?")).toList();
  }

  private static List<String> rules(Compilation plan) {
    return plan.findings().stream().map(Finding::rule).toList();
  }

  @Test
  void rowsOfASplitPhasePanelAlternate() {
    assertThat(legs(bind("120/240 V", "  1+3 20 A two-pole b"))).containsExactly("A", "B");
    assertThat(legs(bind("120/240 V", "  2+4 20 A two-pole b"))).containsExactly("A", "B");
    assertThat(legs(bind("120/240 V", "  3+5 20 A two-pole b"))).containsExactly("B", "A");
  }

  @Test
  void twoSlotsOfOneRowAreOnOneLeg() {
    Compilation plan = bind("120/240 V", "  1+5 20 A two-pole b");
    assertThat(rules(plan)).contains("shared-neutral-same-leg");
    assertThat(plan.completeness()).isEqualTo(Completeness.WRONG);
  }

  /** What is no slot at all has no number; each is called as it is written, and none stands for another. */
  @Test
  void breakersInSlotsThatNoPanelHasAreEachToldByTheirOwnName() {
    Compilation plan = bind("120/240 V", """
          1+3      20 A  two-pole b
          1.5      15 A  attic
          2.5      15 A  cellar
          1234567  15 A  porch
          0        15 A  shed
          0        15 A  barn
        """);
    assertThat(plan.findings()).filteredOn(f -> f.rule().equals("slot-out-of-range")).extracting(Finding::headline).containsExactly(
        "panel 'P' has no slot 1.5", "panel 'P' has no slot 2.5", "panel 'P' has no slot 1234567", "panel 'P' has no slot 0",
        "panel 'P' has no slot 0");
    assertThat(plan.findings()).filteredOn(f -> f.rule().equals("breaker-without-branch")).extracting(Finding::headline).containsExactly(
        "breaker P/1.5 feeds 'attic', which the plan does not have", "breaker P/2.5 feeds 'cellar', which the plan does not have",
        "breaker P/1234567 feeds 'porch', which the plan does not have", "breaker P/0 feeds 'shed', which the plan does not have",
        "breaker P/0 feeds 'barn', which the plan does not have");
    assertThat(plan.house().panels().get("P").breakers()).extracting(b -> b.id().toString())
        .containsExactly("P/1+3", "P/1.5", "P/2.5", "P/1234567", "P/0", "P/0");
  }

  /** A cable type may have fewer colors than a cable of it has hots: two of one color are two conductors. */
  @Test
  void twoHotsOfOneColorAreTwoConductors() {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).structure(
        new Source("bind.wattle",
            """
                      plan "Bind"
                      cable two-colored "Cable of two colors" { metal Cu insulation 90 degC ground bare
                hots 2 with-neutral colors black red neutral white places dry }
                      service main 120/208 V 200 A three-phase { source available 10 kA }
                      panel P from main { bus 200 A  slots 20  bonded
                        main breaker 200 A 22 kA
                        1+3+5 30 A three-pole b
                      }
                      branch b by 10-10-10-10-10 two-colored { P --3 m-- y.g }
                      room y is outdoors { g: three-phase standby generator 8 kW }
                      """),
        Path.of("bind.wattle"));
    assertThat(plan.house().branches().get("b").sections().get(0).conductors()).extracting(c -> c.role().toString())
        .filteredOn(r -> r.startsWith("Hot")).hasSize(3);
  }

  /** One insulated conductor brings one hot: the neutral is missing, and no second hot is spoken of. */
  @Test
  void oneConductorBringsNoTwoHots() {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).structure(new Source("bind.wattle", """
        plan "Bind"
        service main 120/240 V 100 A { source transformer 25 kVA 2 % }
        panel P from main { bus 100 A  slots 4  bonded
          1 15 A old
        }
        branch old by 14 Cu knob-and-tube { P --3 m-- a.r }
        room a { r: receptacle ungrounded }
        """), Path.of("bind.wattle"));
    assertThat(rules(plan)).contains("neutral-missing").doesNotContain("load-120-without-neutral");
  }

  /** A place that could not be read hides no branch whose cable is not stated, and its breaker is judged without it. */
  @Test
  void aCableThatIsNotStatedIsMissedBesideAPlaceThatIsNotRead() {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("bind.wattle", """
        plan "Bind"
        service main 120/240 V 100 A { source transformer 25 kVA 2 % }
        panel P from main { bus 100 A  slots 4  bonded
          1 15 A hall
        }
        branch hall { P --9 m-- hall.lamp }
        room hall { s: switch for lamp   lamp: light 12 W }
        """), Path.of("bind.wattle"));
    assertThat(rules(plan)).contains("cable-missing", "unit-as-name").doesNotContain("internal-error");
  }

  /** A panel that does not say how many slots it has is no larger than any panel is. */
  @Test
  void aSlotThatNoPanelHasIsOutOfRange() {
    for (String slot : List.of("0", "401", "99999999999999999999", "2147483647")) {
      assertThat(rules(bind("120/240 V", "  " + slot + " 20 A b"))).as(slot).contains("slot-out-of-range");
      Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("bind.wattle", """
          plan "Bind"
          service main 120/240 V 100 A { source transformer 25 kVA 2 %% }
          panel P from main { bus 100 A
            %s 20 A b
            2+6 20 A two-pole b
          }
          branch b by 12/3 NM-B { P --3 m-- y.r }
          room y { r: split receptacle }
          """.formatted(slot)), Path.of("bind.wattle"));
      assertThat(rules(plan)).as(slot).contains("slot-out-of-range").doesNotContain("internal-error");
    }
  }

  @Test
  void somethingThatIsNotUnderstoodLeavesTheHouseInPieces() {
    assertThat(bind("120/240 V", "  1+3 20 A two-pole b\n  5 15 A nowhere").completeness())
        .isEqualTo(Completeness.IN_PIECES);
    assertThat(bind("120/240 V", "  1+3 20 A two-pole b").completeness()).isEqualTo(Completeness.SOUND);
  }
}
