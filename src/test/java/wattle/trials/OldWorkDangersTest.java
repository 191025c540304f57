package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Dangers of old work, by hand-worked cases: fuses above their wire, hots of one leg on one white, metal without a ground. */
class OldWorkDangersTest {
  private static final String COTTAGE = """
      use code us-2023
      service main 120/240 V 60 A existing { source transformer 15 kVA 2 %  run 10 m of 6 Cu triplex  earth rods by 6 Cu }
      panel F from main existing {
        bus 60 A slots 4 bonded order one-column
        main fuse 60 A 10 kA
        1  15 A  fuse leg A  front
        2  30 A  fuse leg B  kitchen
        3  20 A  fuse leg A  wet
        4  20 A  fuse leg A  wet
      }
      branch front by 14/2 NM existing { F --3 m-- front.r1 --2 m-- front.r2 }
      branch kitchen by 14/2 NM-B existing { F --5 m-- kitchen.c1 }
      branch wet by 12/3 NM-B existing { F --5 m-- bath.heater --4 m-- wash.machine }
      room front existing { r1: receptacle  r2: receptacle }
      room kitchen existing { c1: receptacle 2.7 kW }
      room bath existing { heater: wall heater 12 A 120 V on red }
      room wash existing { machine: washer 10 A on black }
      """;

  private static TrialResult run(String plan, String events) {
    Compilation compiled = new Compiler(SourceReader.FROM_DISK)
        .structure(new Source("o.wattle", "plan \"o\"\n" + plan + "trial t {\n" + events + "\n}\n"), Path.of("o.wattle"));
    return new Trials(compiled.house(), compiled.library()).run(compiled.house().trials().get("t")).value();
  }

  private static List<Danger> of(Danger.Kind kind, TrialResult result) {
    return result.dangers().stream().filter(d -> d.kind() == kind).toList();
  }

  /** 22.5 A on 14 AWG, which NFPA 70 240.4(D)(3) holds to 15 A, behind a fuse of 30 A: nothing opens. */
  @Test
  void aFuseAboveItsWireDoesNotOpen() {
    Danger hot = of(Danger.Kind.CONDUCTOR_OVER, run(COTTAGE, "kitchen.c1 draws 22.5 A")).get(0);
    assertThat(hot.words()).contains("22.5 A").contains("ampacity is 15 A").endsWith("nothing opens");
    assertThat(of(Danger.Kind.CONDUCTOR_OVER, run(COTTAGE, "kitchen.c1 draws 14 A"))).isEmpty();
  }

  /** Both hots are on leg A: 12 A and 10 A return together on a white of 12 AWG, 20 A by NFPA 70 240.4(D)(5). */
  @Test
  void twoHotsOfOneLegOverloadTheirWhite() {
    TrialResult result = run(COTTAGE, "bath.heater draws 12 A\nwash.machine draws 10 A");
    Danger white = of(Danger.Kind.NEUTRAL_OVER, result).get(0);
    assertThat(white.figure().map(Derivation::si).orElseThrow()).isCloseTo(22, Offset.offset(0.01));
    assertThat(white.limit().map(Derivation::si)).contains(20.0);
    assertThat(of(Danger.Kind.OVERCURRENT, result)).as("each fuse holds").isEmpty();
    assertThat(result.conductors()).filteredOn(c -> c.branch().equals("wet") && c.conductor().equals("hot A"))
        .extracting(TrialResult.ConductorReading::color).contains("black", "red");
  }

  /** 120 V across 1000 ohm of a person and the few ohms of the electrodes: 119 mA; no current flows that a fuse would feel. */
  @Test
  void aFaultWhereNoGroundComesLeavesTheMetalLive() {
    TrialResult result = run(COTTAGE, "fault hot to ground at front.r2");
    Danger metal = of(Danger.Kind.TOUCH, result).get(0);
    assertThat(metal.words()).contains("which has no ground").contains("120 V").contains("119 mA").endsWith("nothing opens");
    assertThat(result.dangers().get(0)).as("the deadliest first").isSameAs(metal);
    assertThat(result.dangers()).noneMatch(d -> d.kind() == Danger.Kind.FAULT);
  }

  /** Where a ground comes, the same fault drives hundreds of amperes and the fuse opens. */
  @Test
  void aFaultWhereAGroundComesOpensSomething() {
    Danger fault = of(Danger.Kind.FAULT, run(COTTAGE, "fault hot to ground at kitchen.c1")).get(0);
    assertThat(fault.words()).contains("fuse F/2").doesNotContain("nothing opens");
  }

  private static final String SHOP = """
      use code us-2023
      service main %s 100 A { source transformer 25 kVA 2 %%  run 10 m of 2 Al triplex  earth rods by 6 Cu }
      panel P from main { bus 100 A slots 8 bonded main breaker 100 A 22 kA
        1+3  30 A two-pole  sub }
      panel sub from P/1 by 20 m of 10/2 UF-B existing is outbuilding { bus 60 A slots 4
        1 20 A  tools }
      branch tools by 12/2 NM-B { sub --5 m-- shop.saw }
      room shop is workshop { saw: receptacle 20 A }
      """;

  /** A feeder that brings no neutral and no ground to the bar: whatever hot touches, nothing opens. */
  @Test
  void metalOfAnOutbuildingWithoutAPathStaysLive() {
    for (String supply : List.of("120/240 V", "120/208 V")) {
      TrialResult result = run(SHOP.formatted(supply).replace("10/2 UF-B", "10/3 UF-B without ground"), "fault hot to ground at shop.saw");
      Danger metal = of(Danger.Kind.TOUCH, result).get(0);
      assertThat(metal.words()).as(supply).contains("shop.saw").contains("120 V").endsWith("nothing opens");
    }
  }

  /** 1200 W and 300 W in series across 240 V: 12 ohm and 48 ohm give 48 V and 192 V; across 208 V of a wye 41.6 V and 166.4 V. */
  @Test
  void theVoltageThatBurnsComesBeforeTheOneThatDims() {
    String plan = """
        use code us-2023
        service main %s 100 A { run 1 m of 2 Al triplex  earth rods by 6 Cu }
        panel P from main { bus 100 A slots 8 bonded main breaker 100 A 22 kA
          1+3 20 A two-pole counter }
        branch counter by 12/3 NM-B { P --1 m-- kitchen.c1 }
        room kitchen { c1: split receptacle 20 A }
        """;
    String events = "kitchen.c1.upper draws 12 ohm\nkitchen.c1.lower draws 48 ohm\nopen neutral of counter";
    for (var supply : List.of(java.util.Map.entry("120/240 V", 192.0), java.util.Map.entry("120/208 V", 166.4))) {
      TrialResult result = run(plan.formatted(supply.getKey()), events);
      Danger first = result.dangers().get(0);
      assertThat(first.kind()).as(supply.getKey()).isEqualTo(Danger.Kind.OVERVOLTAGE);
      assertThat(first.figure().map(Derivation::si).orElseThrow()).isCloseTo(supply.getValue(), Offset.offset(0.5));
      assertThat(result.outlets().get(0).name()).as("the table says it first, too").isEqualTo("kitchen.c1.lower");
      assertThat(result.outlets().get(0).rise().si()).isPositive();
    }
  }

  /** Of hots with breakers of 20 A each on one leg the white may come to 40 A, whatever draws at the moment. */
  @Test
  void aMoveToOneLegIsShownWithItsNeutral() {
    Compilation plan = Plans.compile("trial t {\nmove counter to 2+6\n}\n");
    TrialResult result = new Trials(plan.house(), plan.library()).run(plan.house().trials().get("t")).value();
    assertThat(result.dangers()).singleElement().matches(d -> d.words().contains("40 A") && d.words().contains("no 2-pole breaker fits"));
  }

  /** All that the cottage states is on, and the neutral of the service is gone: legs of 22 A and 22.5 A share 240 V. */
  @Test
  void eventsComeOnTopOfTheHouseAsStated() {
    Compilation plan = new Compiler(SourceReader.FROM_DISK)
        .structure(new Source("o.wattle", "plan \"o\"\n" + COTTAGE + "trial t {\nopen service neutral\nwash.machine off\n}\n"),
            Path.of("o.wattle"));
    TrialResult result = new Trials(plan.house(), plan.library()).statedWith(plan.house().trials().get("t").events()).value();
    assertThat(result.drawing()).contains("kitchen.c1", "bath.heater").doesNotContain("wash.machine");
    // 22.5 A against 12 A: 120 / 12 = 10 ohm and 5.33 ohm in series across 240 V, 156 V on the heater.
    assertThat(of(Danger.Kind.OVERVOLTAGE, result)).anyMatch(d -> d.at().equals("bath.heater")
        && Math.abs(d.figure().orElseThrow().si() - 156) < 6);
  }
}
