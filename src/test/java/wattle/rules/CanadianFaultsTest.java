package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.lockout.Lockout;
import wattle.lockout.Place;
import wattle.read.SourceReader;

/** Houses in Canada that are lawful, and each fault of a list that was written before any of them was checked (CSA C22.1-21). */
class CanadianFaultsTest {
  private static final Path FOLDER = Path.of("src/test/resources/plans/canada");

  private static String text(String house) throws IOException {
    return Files.readString(FOLDER.resolve(house + ".wattle"));
  }

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  /**
   * Split receptacles on handle ties beside 20 A ones, fuses on stated legs, a generator behind a transfer switch whose breaker has no
   * interlock, solar of which supply and breakers are 240 A on a bus that may have 281 A (64-112), a suite with main lugs.
   */
  @ParameterizedTest
  @ValueSource(strings = {"bungalow", "farmhouse", "suite"})
  void theLawfulHouseHasNeitherErrorNorWarning(String house) throws IOException {
    assertThat(compile(text(house)).findings()).noneMatch(f -> f.severity() != Severity.ADVICE);
  }

  static Stream<List<String>> faults() throws IOException {
    return Files.readAllLines(FOLDER.resolve("faults.txt")).stream().filter(l -> !l.startsWith("#"))
        .map(l -> List.of(l.split(" \\| ")));
  }

  @ParameterizedTest
  @MethodSource("faults")
  void theFaultIsFound(List<String> fault) throws IOException {
    String lawful = text(fault.get(0));
    String[] change = fault.get(3).split(" => ", -1);
    assertThat(lawful).contains(change[0]);
    int at = lawful.indexOf(change[0]);
    String faulty = lawful.substring(0, at) + change[1] + lawful.substring(at + change[0].length());
    assertThat(compile(faulty).findings()).as(fault.get(2)).anyMatch(f -> f.rule().equals(fault.get(1)));
  }

  /**
   * By hand. House: 5000 W + 1000 W for 150 m², range 6000 W + 40 % of 2000 W, dryer and water heater 25 % of 9500 W: 15175 W. Suite: the
   * least 14400 W holds its 3000 W of heat, so that 11400 W count at 65 %: 7410 W. Heat 6500 W and charger 11520 W whole (8-200, 8-202 3)).
   */
  @Test
  void theServiceOfAHouseWithASuite() throws IOException {
    String small = text("suite").replace("service main 120/240 V 200 A", "service main 120/240 V 100 A");
    double amperes = (15175 + 7410 + 6500 + 11520) / 240.0;
    assertThat(amperes).isBetween(169.1, 169.2);
    assertThat(compile(small).findings()).extracting(Finding::headline)
        .contains("service 'main' is rated 100 A and its calculated load is 169.2 A");
  }

  /** CSA C22.1-21 10-616 calls it bonding conductor, in lockouts as in findings. */
  @Test
  void theLockoutSpeaksOfTheBondingConductor() throws IOException {
    Compilation old = compile(text("bungalow").replace("5 m of 6/3 NMD90 existing", "5 m of 6/3 NMD90 without ground existing"));
    Lockout lockout = old.figures().lockout(new Place.AtBox("living.lamp"));
    assertThat(lockout.warnings()).anyMatch(w -> w.contains("without a bonding conductor")).noneMatch(w -> w.contains("equipment ground"));
    assertThat(lockout.proofs().get(0).conductorTexts()).anyMatch(c -> c.contains("bonding conductor of lights"));
  }
}
