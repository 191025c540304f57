package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * Twenty ordinary, lawful houses as they are built (common practice): ranches and cottages, flats and a duplex on a wye, barns, shops and
 * chargers, services of 60 to 400 A, aluminum feeders and weak transformers. None gets an error, and none is warned of its breakers on a
 * fault. Beside them, houses in which a long thin run truly is in danger.
 */
class OrdinaryHousesTest {
  private static final Path HOUSES = Path.of("src/test/resources/plans/ordinary");
  private static final Set<String> SURVIVAL = Set.of("conductor-would-not-survive", "fault-below-instantaneous");

  @TestFactory
  List<DynamicTest> areQuiet() throws IOException {
    try (Stream<Path> files = Files.list(HOUSES)) {
      List<DynamicTest> tests = files.sorted().map(f -> DynamicTest.dynamicTest(f.getFileName().toString(), () -> quiet(f))).toList();
      assertThat(tests).hasSizeGreaterThanOrEqualTo(20);
      return tests;
    }
  }

  private static void quiet(Path file) {
    List<Finding> findings = findings(file);
    assertThat(findings).filteredOn(f -> f.severity() == Severity.ERROR).as("a lawful house has no error").isEmpty();
    assertThat(findings).filteredOn(f -> SURVIVAL.contains(f.rule())).as("nor is it warned of its breakers").isEmpty();
  }

  private static List<Finding> findings(Path file) {
    try {
      return new Compiler(SourceReader.FROM_DISK).compile(file).facts();
    } catch (SourceReader.Unreadable unreadable) {
      throw new UncheckedIOException(new IOException(unreadable));
    }
  }

  private static List<Finding> survival(String feeders, String branches) {
    String plan = """
        plan "Far" use code us-2023
        service main 120/240 V 200 A { source transformer 50 kVA 1.8 % ratio 2   run 20 m of 4/0 Al triplex   earth rods by 6 Cu }
        """.replace(" use", "\nuse") + feeders + branches;
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("far.wattle", plan), Path.of("far.wattle")).facts().stream()
        .flatMap(f -> f.each().stream()).filter(f -> SURVIVAL.contains(f.rule())).toList();
  }

  /**
   * By hand, hot: 6 AWG 1.7 Ω/km and 10 AWG 4.3 Ω/km over 75 m make 0.45 Ω, some 265 A: less than 5 × 60 A, and more than the
   * 235 A at which 10 AWG withstands it for 5 s, as (99.9 × 5.26 mm²)² = 276157 A²s has it.
   */
  @Test
  void aLongThinFeederIsFoundOnceByTheGroundThatItHas() {
    List<Finding> found = survival("""
        panel P from main { bus 200 A slots 12 bonded
          main breaker 200 A 22 kA
          1+3 60 A two-pole S }
        panel S from P/1 by 75 m of 6/3 UF-B { bus 100 A slots 12
          1+3 40 A two-pole charger
          5 20 A bench }
        """, """
        branch charger by 8/2 NM-B { S --5 m-- shop.charger }
        branch bench by 12/2 NM-B { S --5 m-- shop.r }
        room shop is workshop { charger: vehicle charger 32 A   r: receptacle }
        """);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).rule()).isEqualTo("conductor-would-not-survive");
    assertThat(found.get(0).subject()).hasValue("S");
    assertThat(found.get(0).headline()).contains("the 10 AWG ground of the feeder of 'S'");
    assertThat(found.get(0).fixes().get(0).order()).doesNotContain("feeder of 'P'");
  }

  /** The feeder makes it, not the 5 m beyond it, however the panels are nested and in whatever order they are written. */
  @Test
  void aShortFeederBehindALongOneIsNotBlamed() {
    String top = """
        panel P from main { bus 200 A slots 12 bonded
          main breaker 200 A 22 kA
          1+3 60 A two-pole S }
        """;
    String near = "panel S from P/1 by 120 m of 6/3 UF-B { bus 100 A slots 12\n  1+3 60 A two-pole T }\n";
    String far = "panel T from S/1 by 5 m of 6/3 NM-B { bus 100 A slots 12\n  1+3 40 A two-pole charger }\n";
    String branch = "branch charger by 8/2 NM-B { T --5 m-- shop.charger }\nroom shop is workshop { charger: vehicle charger 32 A }\n";
    for (String feeders : List.of(top + near + far, top + far + near)) {
      assertThat(survival(feeders, branch)).extracting(f -> f.subject().orElse("")).containsExactly("S");
    }
  }

  /** Twice the length: the ground outlasts 5 s there, and the fault still burns; the 5 m branches beyond say nothing of their own. */
  @Test
  void aFeederTooLongForItsBreakerSpeaksForItsBranches() {
    List<Finding> found = survival("""
        panel P from main { bus 200 A slots 12 bonded
          main breaker 200 A 22 kA
          1+3 60 A two-pole S }
        panel S from P/1 by 120 m of 6/3 UF-B { bus 100 A slots 12
          5 20 A bench }
        """, "branch bench by 12/2 NM-B { S --5 m-- shop.r }\nroom shop is workshop { r: receptacle }\n");
    assertThat(found).extracting(f -> f.rule() + " " + f.subject().orElse("")).containsExactly("fault-below-instantaneous S");
    assertThat(found.get(0).severity()).isEqualTo(Severity.WARNING);
  }

  /** A long thin branch on a stout feeder answers for itself. */
  @Test
  void aLongBranchIsBlamedItself() {
    List<Finding> found = survival("""
        panel P from main { bus 200 A slots 12 bonded
          main breaker 200 A 22 kA
          1+3 100 A two-pole S }
        panel S from P/1 by 20 m of 1-1-1-3 Al SER { bus 125 A slots 12
          1 15 A gate }
        """, "branch gate by 14/2 UF-B { S --120 m-- yard.gate }\nroom yard is outdoors { gate: light 12 W }\n");
    assertThat(found).extracting(f -> f.subject().orElse("")).containsExactly("gate");
    assertThat(found.get(0).fixes().get(0).order()).doesNotContain("feeder");
  }
}
