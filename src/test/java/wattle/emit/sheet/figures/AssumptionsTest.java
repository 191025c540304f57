package wattle.emit.sheet.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What was assumed is told completely, and nothing that was assumed or counted says that the plan states it. */
class AssumptionsTest {
  private static final String PLAN = """
      plan "Cabin" revision "A"
      use code us-2023
      dwelling { floor-area 60 m2 storeys 1 }
      service main 120/240 V 100 A { source available 10 kA ratio 1.2  run 3 m of 2 Al SER  earth rods by 6 Cu 25 ohm }
      panel P "P" from main { bus 100 A slots 20 bonded main breaker 100 A 22 kA
        1 15 A arc-fault hall "Hall"
      }
      branch hall by 14/2 NM-B { P --5 m-- hall.r }
      room hall { r: receptacle tamper-resistant 8 A }
      """;

  private static Compilation compile(String plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle"));
  }

  private static List<String> airOf(String plan) {
    return Assumptions.of(compile(plan)).stream().map(Assumptions.Assumed::line).filter(l -> l.startsWith("ambient ")).toList();
  }

  /** NFPA 70 table 310.16 is for air of 30 °C; where the plan says how warm it is, nothing is assumed of that run. */
  @Test
  void theAirIsToldWhereItIsNotStated() {
    assertThat(airOf(PLAN)).singleElement().asString().contains("30 °C").contains("service main");
    String stated = PLAN.replace("2 Al SER", "2 Al SER in wall 35 degC").replace("14/2 NM-B {", "14/2 NM-B in wall 35 degC {");
    assertThat(compile(stated).findings()).extracting(f -> f.rule()).doesNotContain("unexpected", "word-unknown");
    assertThat(airOf(stated)).isEmpty();
  }

  @Test
  void kindsOfRoomsAreTold() {
    assertThat(Assumptions.of(compile(PLAN))).contains(new Assumptions.Assumed("room hall counts as hall, by its name", List.of()));
  }

  /** Numbers of circuits, dwellings, conductors and allowances are counted; the plan states none of them. */
  @ParameterizedTest
  @ValueSource(strings = {"alder-court/house.wattle", "linden-row/house.wattle", "workshop/house.wattle"})
  void whatIsCountedSaysSo(String example) throws SourceReader.Unreadable {
    Path path = Path.of("examples", example);
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(path);
    Map<String, Derivation.Basis> bases = new TreeMap<>();
    PlanFigures.of(plan, plan.house().units()).all().forEach(f -> f.derivation().ifPresent(d -> gather(d, bases)));
    assertThat(bases).containsValues(Derivation.Basis.STATED, Derivation.Basis.COUNTED, Derivation.Basis.ASSUMED);
    bases.forEach((name, basis) -> {
      if (name.matches(".*\\b(dwellings|circuits|appliances|dryers|conductors together|allowances|number)")) {
        assertThat(basis).as(name).isNotEqualTo(Derivation.Basis.STATED);
      }
      if (name.startsWith("usual ")) {
        assertThat(basis).as(name).isEqualTo(Derivation.Basis.ASSUMED);
      }
    });
  }

  private static void gather(Derivation derivation, Map<String, Derivation.Basis> bases) {
    if (derivation.inputs().isEmpty()) {
      bases.put(derivation.name(), derivation.basis());
    }
    derivation.inputs().forEach(i -> gather(i, bases));
  }
}
