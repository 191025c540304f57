package wattle.emit.sheet.figures;

import static org.assertj.core.api.Assertions.assertThat;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.finding.Source;
import wattle.model.Trial;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
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

  /** What a derivation calls stated stands in the plan: whatever else it rests on was assumed, counted, looked up or worked out. */
  @ParameterizedTest
  @ValueSource(strings = {"examples/cottage/house.wattle", "examples/workshop/house.wattle", "examples/duplex/house.wattle",
      "examples/kitchen-renovation/after.wattle", "src/test/resources/plans/findings/faults/types.wattle"})
  void whatIsStatedStandsInThePlan(String file) throws Exception {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(file));
    Set<Double> written = new TreeSet<>();
    Matcher matcher = Pattern.compile("(\\d+(?:\\.\\d+)?)(?:/(\\d+))? ?((?:[^\\s\\d,)-][^\\s,)-]*)?)").matcher(plan.source().text());
    while (matcher.find()) {
      Unit unit = Units.find(matcher.group(3)).orElse(Units.ONE);
      written.add(Quantity.of(Double.parseDouble(matcher.group(1)), unit).si());
      if (matcher.group(2) != null) {
        written.add(Quantity.of(Double.parseDouble(matcher.group(2)), unit).si());
      }
    }
    Map<String, Derivation> stated = new TreeMap<>();
    PlanFigures.of(plan, plan.house().units()).all().forEach(f -> f.derivation().ifPresent(d -> stated(d, stated)));
    for (Trial trial : plan.house().trials().values()) {
      PlanFigures.of(plan, trial, plan.house().units()).all().forEach(f -> f.derivation().ifPresent(d -> stated(d, stated)));
    }
    assertThat(stated).hasSizeGreaterThan(5);
    stated.values().stream().filter(d -> d.quantity().isPresent() && !d.name().matches("trade size|number of the size|cross-section of .*"))
        .forEach(d -> assertThat(written).as(d.name() + " " + d.value().text())
            .anyMatch(w -> Math.abs(w - d.si()) <= 1e-6 * Math.abs(d.si())));
  }

  private static void stated(Derivation derivation, Map<String, Derivation> stated) {
    if (derivation.basis() == Derivation.Basis.STATED) {
      stated.put(derivation.name() + " " + derivation.value().text(), derivation);
    }
    derivation.inputs().forEach(input -> stated(input, stated));
  }

  /** Conditions that a rule asks only where they are stated: a receptacle that says nothing of a sink is taken as far from one. */
  @Test
  void whatARuleTakesAsUsualIsTold() {
    List<String> lines = lines(PLAN);
    assertThat(lines)
        .anyMatch(l -> l.startsWith("from-sink of hall.r is not stated; ground-fault-missing") && l.contains("the usual case"));
    List<String> stated = lines(PLAN.replace("tamper-resistant 8 A", "tamper-resistant 8 A from-sink 3 m"));
    assertThat(stated).noneMatch(l -> l.startsWith("from-sink of "));
    assertThat(lines).as("a receptacle is no motor").noneMatch(l -> l.startsWith("overload-protected"));
  }

  /** What a motor takes at the start is six times its current where neither nameplate nor code letter is stated. */
  @Test
  void theStartOfAMotorIsTold() {
    String pump = PLAN.replace("{ r: receptacle tamper-resistant 8 A }", "{ r: sump pump 8 A }");
    assertThat(lines(pump)).anyMatch(l -> l.startsWith("locked-rotor of hall.r is not stated; motor-start-dip takes the usual case"));
    assertThat(lines(pump.replace("8 A }", "8 A locked-rotor 40 A }"))).noneMatch(l -> l.startsWith("locked-rotor of "));
  }

  /** 110.14(C)(1): 60 °C up to 100 A where the terminals are not marked. */
  @Test
  void unmarkedTerminalsAreTold() {
    assertThat(lines(PLAN)).anyMatch(l -> l.startsWith("temperature of unmarked terminals 60 °C, on which "));
  }

  private static List<String> lines(String plan) {
    return Assumptions.of(compile(plan)).stream().map(Assumptions.Assumed::line).toList();
  }

  private static void gather(Derivation derivation, Map<String, Derivation.Basis> bases) {
    if (derivation.inputs().isEmpty()) {
      bases.put(derivation.name(), derivation.basis());
    }
    derivation.inputs().forEach(i -> gather(i, bases));
  }
}
