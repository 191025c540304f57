package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.trials.ProtectionReading.Verdict;

/** Ground-fault protection in trials, against the published bounds of UL 943 and hand-worked residual currents. */
class ProtectionsTest {
  private static final String HOUSE = """
      plan "Protected"
      use code us-2023
      service main 120/240 V 100 A { source transformer 25 kVA 2 % ratio 1.5   run 20 m of 2 Al triplex   earth rods by 6 Cu 25 ohm }
      panel P from main {
        bus 125 A   slots 20   bonded
        main breaker 100 A 10 kA
        1    20 A  ground-fault arc-fault     washer
        2+4  20 A  two-pole ground-fault      counter
        5+7  20 A  handle-tied ground-fault   pair
        6    20 A                             bath
        8    20 A  ground-fault 30 mA         heat
      }
      branch washer by 12/2 NM-B { P --7 m-- laundry.washer --3 m-- laundry.o }
      branch counter by 12/3 NM-B { P --9 m-- kitchen.c1 --2 m-- kitchen.c2 }
      branch pair by 12/2 NM-B { P --9 m-- den.one }
      branch bath by 12/2 NM-B { P --9 m-- bath.g through --2 m-- bath.o }
      branch heat by 12/2 NM-B { P --9 m-- hall.o }
      room kitchen { c1: split receptacle at counter   c2: split receptacle at counter }
      room laundry { washer: washer 900 W   o: receptacle }
      room bath { g: ground-fault receptacle protects onward   o: receptacle }
      room den { one: baseboard heater 1 kW }
      room hall { o: receptacle }
      """;

  private static TrialResult run(String events) {
    return Plans.runIn(HOUSE, events).value();
  }

  private static ProtectionReading reading(String events, String name) {
    return run(events).allProtections().stream().filter(p -> p.name().equals(name) && p.residual().isPresent()).findFirst().orElseThrow();
  }

  /** T = (20 / I)^1.43, I in mA: 6 mA 5.59 s, 20 mA 1 s, 264 mA 0.025 s, and no shorter above it. */
  @ParameterizedTest
  @CsvSource({"6, 5.594", "10, 2.694", "20, 1", "30, 0.560", "264, 0.02498", "3000, 0.02498"})
  void theLongestTimeIsThatOfTheFormula(double milliamperes, double seconds) {
    ResidualTrip trip = new ResidualTrip(Plans.compile("").library(), false, java.util.Optional.empty());
    var residual = Figures.solved("residual", milliamperes / 1000, wattle.quantity.Units.AMPERE, "");
    assertThat(trip.within(residual).orElseThrow().si()).isCloseTo(seconds, within(0.001 * Math.max(1, seconds)));
  }

  /** IEC 61009-1, general type, barfuse.com 4963: 0.3 s at its rated current, 0.15 s at twice, 0.04 s at five times it. */
  @ParameterizedTest
  @CsvSource({"30, 0.3", "59, 0.3", "60, 0.15", "150, 0.04", "5000, 0.04"})
  void byIecTheTimeFallsInSteps(double milliamperes, double seconds) {
    ResidualTrip trip = new ResidualTrip(Plans.compile("").library(), true, java.util.Optional.empty());
    var residual = Figures.solved("residual", milliamperes / 1000, wattle.quantity.Units.AMPERE, "");
    assertThat(trip.within(residual).orElseThrow().si()).isCloseTo(seconds, within(1e-9));
    assertThat(trip.holdsBelow()).isCloseTo(0.015, within(1e-9));
  }

  /** A hot that leaks to the ground through a resistance: 120 V over it, within what the wires drop. */
  @ParameterizedTest
  @CsvSource({"40, HOLDS", "24, MAY", "15, TRIPS"})
  void aLeakageIsJudgedByItsCurrent(double kiloohms, Verdict verdict) {
    ProtectionReading p = reading("fault hot to ground at laundry.o through " + kiloohms + " kohm", "breaker P/1");
    assertThat(p.residual().orElseThrow().si()).isCloseTo(0.120 / kiloohms, within(2e-5));
    assertThat(p.verdict()).isEqualTo(verdict);
    assertThat(p.within().isPresent()).isEqualTo(verdict == Verdict.TRIPS);
  }

  /** 5 kΩ of leakage and a person of 1 kΩ, 120 V: 20 mA, less what the earth adds. */
  @Test
  void aLiftedGroundTripsWhenTouched() {
    ProtectionReading p = reading("lift ground at laundry.washer leaking 5 kohm", "breaker P/1");
    assertThat(p.verdict()).isEqualTo(Verdict.TRIPS_ON_TOUCH);
    assertThat(p.residual().orElseThrow().si()).isCloseTo(0, within(1e-6));
    assertThat(p.touched().orElseThrow().si()).isCloseTo(0.020, within(2e-4));
    assertThat(p.within().orElseThrow().si()).isCloseTo(1, within(0.02));
  }

  /** Whatever the loads on a shared neutral, a two-pole breaker sees all that comes back. */
  @Property(tries = 30)
  void twoPolesOverASharedNeutralHold(@ForAll @DoubleRange(min = 0, max = 16) double upper,
      @ForAll @DoubleRange(min = 0, max = 16) double lower) {
    ProtectionReading p = reading(
        String.format(java.util.Locale.ROOT, "kitchen.c1.upper draws %.3f A%n kitchen.c2.lower draws %.3f A", upper, lower),
        "breaker P/2+4");
    assertThat(p.residual().orElseThrow().si()).isLessThan(1e-4);
    assertThat(p.verdict()).isEqualTo(Verdict.HOLDS);
  }

  /** Two single poles over one neutral: each misses what returns for the other. */
  @Test
  void singlePolesOverASharedNeutralTrip() {
    String house = HOUSE.replace("2+4  20 A  two-pole ground-fault      counter",
        "2 20 A ground-fault counter\n 4 20 A ground-fault counter");
    TrialResult result = new Trials(compile(house), library())
        .run("", events(house, "kitchen.c1.upper draws 4 A\n kitchen.c2.lower draws 1 A")).value();
    for (String name : java.util.List.of("breaker P/2", "breaker P/4")) {
      ProtectionReading p = result.allProtections().stream().filter(r -> r.name().equals(name)).findFirst().orElseThrow();
      assertThat(p.residual().orElseThrow().si()).as(name).isCloseTo(1, within(1e-3));
      assertThat(p.verdict()).isEqualTo(Verdict.TRIPS);
    }
  }

  private static wattle.model.House compile(String house) {
    return plan(house, "").house();
  }

  private static wattle.library.Library library() {
    return Plans.compile("").library();
  }

  private static java.util.List<wattle.model.Event> events(String house, String events) {
    return plan(house, events).house().trials().get("t").events();
  }

  private static wattle.compiler.Compilation plan(String house, String events) {
    return new wattle.compiler.Compiler(wattle.read.SourceReader.FROM_DISK)
        .compile(new wattle.finding.Source("trial.wattle", house + "trial t {\n" + events + "\n}\n"),
            java.nio.file.Path.of("trial.wattle"));
  }

  /** Of the returning 5 A half goes by the ground: neutral and ground of 12/2 have the same size. */
  @Test
  void neutralToGroundUnderLoadTrips() {
    ProtectionReading p = reading("fault neutral to ground at bath.o\n bath.o draws 5 A", "bath.g");
    assertThat(p.verdict()).isEqualTo(Verdict.TRIPS);
    assertThat(p.residual().orElseThrow().si()).isCloseTo(2.5, within(0.05));
    assertThat(reading("fault neutral to ground at bath.o", "bath.g").verdict()).isEqualTo(Verdict.MAY);
  }

  @Test
  void exchangedConductorsAreNoResidual() {
    ProtectionReading p = reading("swap at bath.o\n bath.o draws 5 A", "bath.g");
    assertThat(p.residual().orElseThrow().si()).isCloseTo(0, within(1e-6));
    assertThat(p.verdict()).isEqualTo(Verdict.HOLDS);
  }

  /** What leaks before the receptacle is none of its business; what is wired beyond is. */
  @Test
  void aReceptacleGuardsItsLoadSide() {
    assertThat(reading("fault hot to ground at bath.o through 10 kohm", "bath.g").verdict()).isEqualTo(Verdict.TRIPS);
    assertThat(reading("fault hot to ground at laundry.o through 10 kohm", "bath.g").verdict()).isEqualTo(Verdict.HOLDS);
    String alone = HOUSE.replace(" protects onward", "");
    TrialResult result = Plans.runIn(alone, "fault hot to ground at bath.o through 10 kohm").value();
    assertThat(result.allProtections().stream().filter(p -> p.name().equals("bath.g")).findFirst().orElseThrow().verdict())
        .isEqualTo(Verdict.HOLDS);
  }

  @Test
  void aStatedResidualCurrentReplacesTheUsualOne() {
    assertThat(reading("fault hot to ground at hall.o through 10 kohm", "breaker P/8").verdict()).isEqualTo(Verdict.HOLDS);
    assertThat(reading("fault hot to ground at hall.o through 3 kohm", "breaker P/8").verdict()).isEqualTo(Verdict.TRIPS);
  }

  @Test
  void arcFaultProtectionIsNotComputed() {
    TrialResult result = run("loosen hot at laundry.o by 0.5 ohm\n laundry.o draws 8 A");
    ProtectionReading arc = result.protections().stream().filter(p -> p.kind().equals("arc-fault")).findFirst().orElseThrow();
    assertThat(arc.verdict()).isEqualTo(Verdict.UNKNOWN);
    assertThat(arc.because()).contains("a glowing joint").contains("8 A");
  }
}
