package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.Breaker;
import wattle.read.SourceReader;

/**
 * When fuses must have opened: 1.35 times the rating within an hour, twice within 2 min up to 30 A and 4 min up to 60 A (UL 248-14, as
 * reprinted by electronicscatalogs.littelfuse.com), and 1.1 times is carried (UL 248-9 8.2.3, as reprinted by jiaotongmap.com).
 */
class FuseOpeningTest {
  private static Compilation plan(String supply) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("f.wattle", """
        plan "f"
        use code us-2023
        service main %s 60 A existing { source available 5 kA  run 10 m of 6 Cu triplex  earth rods by 6 Cu }
        panel F from main existing { bus 60 A slots 4 bonded
          main fuse 60 A 10 kA
          1  15 A  type-s  a
          2  30 A  edison-base  b
          3  20 A  cartridge  c
          4  20 A  fuse  d
        }
        branch a by 14/2 NM-B existing { F --4 m-- den.a }
        branch b by 10/2 NM-B existing { F --4 m-- den.b }
        branch c by 12/2 NM-B existing { F --4 m-- den.c }
        branch d by 12/2 NM-B existing { F --4 m-- den.d }
        room den existing { a: light 60 W  b: light 60 W  c: light 60 W  d: light 60 W }
        """.formatted(supply)), Path.of("f.wattle"));
  }

  private static TripCurve curve(Compilation plan, int index) {
    Breaker fuse = plan.house().panels().get("F").breakers().get(index);
    return new TripCurves(plan.library()).of(fuse, plan.house().panels().get("F").system()).orElseThrow();
  }

  @Test
  void pointsAreThoseOfTheStandard() {
    for (String supply : java.util.List.of("120/240 V", "120/208 V")) {
      TripCurve fifteen = curve(plan(supply), 0);
      assertThat(fifteen.isFuse()).isTrue();
      assertThat(fifteen.at(16.4).most()).as("1.1 times is carried").isEmpty();
      assertThat(fifteen.at(20.25).most().orElseThrow()).isCloseTo(3600, Offset.offset(1.0));
      assertThat(fifteen.at(30).most().orElseThrow()).isCloseTo(120, Offset.offset(0.1));
      // No more of I² × t above: 120 s × (30 A / 150 A)² = 4.8 s.
      assertThat(fifteen.at(150).most().orElseThrow()).isCloseTo(4.8, Offset.offset(0.01));
      TripCurve sixty = new TripCurves(plan(supply).library()).ofFuse(60, plan(supply).house().panels().get("F").system()).orElseThrow();
      assertThat(sixty.at(120).most().orElseThrow()).isCloseTo(240, Offset.offset(0.1));
    }
  }

  @Test
  void theBaseOfAWayIsSaid() {
    assertThat(plan("120/240 V").house().panels().get("F").breakers()).extracting(b -> b.base().map(Breaker.Base::word).orElse(""))
        .containsExactly("type-s", "edison-base", "cartridge", "");
    assertThat(plan("120/240 V").house().panels().get("F").breakers()).allMatch(b -> b.device() == Breaker.Device.FUSE);
    assertThat(plan("120/240 V").findings()).filteredOn(f -> f.rule().equals("edison-base-kept")).hasSize(1);
  }

  /** A fuse to a standard of IEC is another one. */
  @Test
  void ofSuppliesOfOneLegNothingIsKnown() {
    Compilation plan = plan("230 V");
    assertThat(new TripCurves(plan.library()).ofFuse(16, plan.house().panels().get("F").system())).isEmpty();
  }
}
