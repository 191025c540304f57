package wattle.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What is measured of services, feeders and panels, and of each conductor of a branch by its color. */
class SupplyMeasurementsTest {
  private static final String HOUSE = """
      use code us-2023
      service main 120/240 V 100 A { run 10 m of 4/3 SER
        earth rods by 6 Cu 20 ohm
        earth water-pipe by 4 Cu
      }
      panel P from main { bus 125 A slots 20 bonded
        main breaker 100 A
        1    15 A  hall
        2+4  20 A  two-pole counter
        6+8  60 A  two-pole G
      }
      panel G from P/6 by 20 m of 6/3 NM-B { bus 100 A slots 8
        1 20 A bench
      }
      branch hall by 14/2 NM-B { P --3 m-- hall.sw --2 m-- hall.l }
      branch counter by 12/3 NM-B { P --3 m-- kitchen.c }
      branch bench by 12/2 NM-B { G --3 m-- garage.o }
      room hall { sw: switch for l   l: light 10 W }
      room kitchen { c: split receptacle }
      room garage { o: receptacle }
      """;

  private static List<Measurement> measurements(String text) {
    return new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle")).figures()
        .measurements();
  }

  private static Measurement measurement(List<Measurement> all, String key) {
    return all.stream().filter(m -> m.key().equals(key)).findFirst()
        .orElseThrow(() -> new AssertionError(key + " in " + all.stream().map(Measurement::key).toList()));
  }

  /** By hand: 20 m of 6 AWG copper out, 1.296 Ω/km at 20 °C (ASTM B258 size), back on the same and on a ground of 10 AWG. */
  @Test
  void aFeedersNeutralAndGround() {
    List<Measurement> all = measurements(HOUSE);
    Measurement neutral = measurement(all, "feeder of G/G/continuity/neutral");
    assertThat(neutral.derivation().orElseThrow().si()).isCloseTo(2 * 0.020 * 1.296, within(0.002));
    assertThat(neutral.between()).isEqualTo("black and neutral joined at the supply end, measured at G");
    assertThat(neutral.breakers()).isEqualTo("P/6+8");
    assertThat(neutral.subject()).isEqualTo("feeder of G on P/6+8");
    Measurement ground = measurement(all, "feeder of G/G/continuity/ground");
    assertThat(ground.derivation().orElseThrow().si()).isCloseTo(0.020 * (1.296 + 3.277), within(0.002));
  }

  /** IEC 60364-6 Table 6A, trv.banenor.no: 1 MΩ at 500 V; ANSI/NETA ATS Table 100.1, from memory: look into what is below 25 MΩ. */
  @Test
  void everyConductorHasItsInsulationLine() {
    List<Measurement> all = measurements(HOUSE);
    for (String color : List.of("black", "red", "white")) {
      Measurement m = measurement(all, "feeder of G/G/insulation/" + color);
      assertThat(m.least()).contains(1.0);
      assertThat(m.expected()).isEqualTo("at least 1 MΩ; find out why below 25 MΩ");
      assertThat(m.between()).contains("500 V direct").startsWith(color);
    }
    assertThat(measurement(all, "feeder of G/G/insulation/black").between()).startsWith("black (leg A) to all others and ground");
    assertThat(all.stream().filter(m -> m.key().startsWith("service main/main/insulation"))).as("two hots and a neutral").hasSize(3);
    assertThat(measurement(all, "counter/P/insulation/black").between()).startsWith("black (hot A) to all others and ground");
    assertThat(measurement(all, "counter/P/insulation/red").between()).startsWith("red (hot B)");
    assertThat(measurement(all, "counter/P/insulation/white").expected()).isEqualTo("at least 1 MΩ");
    String uncoded = HOUSE.replace("use code us-2023\n", "");
    assertThat(measurement(measurements(uncoded), "feeder of G/G/insulation/red").expected()).isEqualTo("at least 1 MΩ");
  }

  /** Bonded at the service, apart in the subpanel: NFPA 70 250.24(A)(5); rods and pipe joined to the neutral bar. */
  @Test
  void bondsWhereTheyBelong() {
    List<Measurement> all = measurements(HOUSE);
    assertThat(measurement(all, "panel P/P/bond").most()).contains(0.5);
    assertThat(measurement(all, "feeder of G/G/insulation/neutral-bar").between()).endsWith("no bond here");
    assertThat(all).noneMatch(m -> m.key().startsWith("feeder of G/G/bond"));
    assertThat(measurement(all, "service main/main/bond/rods-1").between()).endsWith("at the electrode, rods");
    assertThat(measurement(all, "service main/main/bond/water-pipe-2").between()).endsWith("at the electrode, water pipe");
    List<Measurement> old = measurements(
        HOUSE.replace("panel G from P/6 by 20 m of 6/3 NM-B { bus", "panel G from P/6 by 20 m of 6/3 NM-B { bonded bus"));
    assertThat(measurement(old, "feeder of G/G/bond").expected()).isEqualTo("at most 0.5 Ω");
  }

  /** Voltages of each leg to neutral, ground and the other leg; a sequence only where there are three phases. */
  @Test
  void voltagesAndRotation() {
    List<Measurement> all = measurements(HOUSE);
    assertThat(measurement(all, "panel P/P/voltage/A-N").expected()).isEqualTo("120 V");
    assertThat(measurement(all, "feeder of G/G/voltage/A-B").expected()).isEqualTo("240 V");
    assertThat(measurement(all, "feeder of G/G/voltage/B-G").expected()).isEqualTo("120 V");
    assertThat(all).noneMatch(m -> m.kind() == Measurement.Kind.ROTATION);
    List<Measurement> three = measurements("""
        service main 120/208 V three-phase 200 A { run 9 m of 4 x 3/0 Cu THWN-2 in 2 in PVC }
        panel M from main { bus 200 A slots 24 bonded
          main breaker 200 A
          1+3 60 A two-pole flat
        }
        panel flat from M/1 by 9 m of 6/3 NM-B { bus 100 A slots 8 }
        """);
    assertThat(measurement(three, "panel M/M/rotation").between()).startsWith("phase sequence A, B, C");
    assertThat(measurement(three, "panel M/M/voltage/B-C").expected()).isEqualTo("208 V");
    assertThat(three.stream().filter(m -> m.kind() == Measurement.Kind.ROTATION)).as("none for two legs").hasSize(1);
    List<Measurement> single = measurements("""
        service main 230 V 63 A { run 9 m of 6/2 NM-B }
        panel P from main { bus 63 A slots 8 bonded
          main breaker 63 A
        }
        """);
    assertThat(measurement(single, "panel P/P/voltage/A-N").expected()).isEqualTo("230 V");
    assertThat(single.stream().map(Measurement::key)).noneMatch(k -> k.contains("A-B"));
  }

  /** NFPA 70 110.14(D): to the torque on the equipment, by a calibrated tool. */
  @Test
  void eachPanelHasItsTorqueLines() {
    List<Measurement> all = measurements(HOUSE);
    for (String panel : List.of("panel P/P", "feeder of G/G")) {
      assertThat(all.stream().map(Measurement::key).filter(k -> k.startsWith(panel + "/torque")))
          .containsExactly(panel + "/torque/supply", panel + "/torque/bars", panel + "/torque/ways");
    }
  }

  /** A service that stands is live up to its main: nobody here measures its insulation. Beside an error elsewhere the lines stay. */
  @Test
  void anExistingServiceIsNotMeasuredDead() {
    List<Measurement> all = measurements(HOUSE.replace("100 A { run", "100 A existing { run"));
    assertThat(all.stream().map(Measurement::key)).noneMatch(k -> k.startsWith("service main/main/insulation"))
        .anyMatch(k -> k.startsWith("service main/main/bond"));
    assertThat(measurements(HOUSE + "room attic { x: lamp-post 40 W }\n").stream().map(Measurement::key))
        .containsAll(measurements(HOUSE).stream().map(Measurement::key).toList());
  }

  /** An old branch without a ground has none to be joined at its receptacles. */
  @Test
  void noGroundIsExpectedWhereThereIsNone() {
    assertThat(measurement(measurements(HOUSE), "bench/garage.o/polarity").between()).endsWith("ground joined");
    String old = HOUSE.replace("branch bench by 12/2 NM-B", "branch bench by 12/2 NM existing");
    assertThat(measurement(measurements(old), "bench/garage.o/polarity").between()).endsWith("neutral on the wide one");
  }

  /** Two hots on one neutral are two loops; what is behind a switch is measured with it on. */
  @Test
  void everyHotHasALoop() {
    List<Measurement> all = measurements(HOUSE);
    assertThat(measurement(all, "counter/kitchen.c/continuity").between()).startsWith("black and ground joined");
    assertThat(measurement(all, "counter/kitchen.c/continuity/red").between()).startsWith("red and ground joined");
    assertThat(measurement(all, "hall/hall.l/continuity").between()).startsWith("black with hall.sw on and ground joined");
    Optional<Double> most = measurement(all, "counter/kitchen.c/continuity/red").most();
    assertThat(most).isEqualTo(measurement(all, "counter/kitchen.c/continuity").most());
  }
}
