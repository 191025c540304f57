package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Example plans with trials: what they expect holds, and what they do not expect would be told. */
class ExamplePlansTest {
  private static final List<String> PLANS = List.of(
      "examples/alder-court/house.wattle", "examples/apartment/house.wattle", "examples/longcroft/house.wattle",
      "examples/duplex/house.wattle", "examples/mill-quay/house.wattle", "examples/weir-lane/house.wattle",
      "examples/classroom/lessons.wattle", "examples/marlow-croft/house.wattle", "examples/hollin-farm/house.wattle");

  private static Compilation compile(String plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(Path.of(plan));
  }

  @TestFactory
  Stream<DynamicTest> allThatIsExpectedHolds() {
    return PLANS.stream()
        .map(
            plan -> DynamicTest.dynamicTest(
                plan,
                () -> {
                  Compilation compiled = compile(plan);
                  assertThat(compiled.house().expectations()).hasSizeGreaterThanOrEqualTo(3);
                  assertThat(wattle.Structure.findings(compiled)).isEmpty();
                }));
  }

  /** The same expectations turned into their opposites: each is found out, so that none holds by not being looked at. */
  @TestFactory
  Stream<DynamicTest> noneHoldsByChance() {
    return PLANS.stream()
        .map(
            plan -> DynamicTest.dynamicTest(
                plan,
                () -> {
                  Compilation compiled = compile(plan);
                  String opposite = compiled.source().text()
                      .replaceAll("(?m)^(expect .* is )at most ([0-9.]+)", "$1at least 9$2")
                      .replaceAll("(?m)^(expect .* is )at least ([0-9.]+)( [VA].*)$", "$1at most 0$3")
                      .replaceAll("(?m)^(expect .* is )([0-9.]+)( .*)$", "$19$2$3")
                      .replaceAll("(?m)^(expect \\S+ )trips ", "$1TRIPS ")
                      .replaceAll("(?m)^(expect \\S+ )holds ", "$1trips ")
                      .replaceAll("(?m)^(expect \\S+ )TRIPS ", "$1holds ");
                  int expected = compiled.house().expectations().size();
                  assertThat(
                      new Compiler(SourceReader.FROM_DISK)
                          .compile(new Source(plan, opposite), Path.of(plan))
                          .findings())
                      .filteredOn(f -> f.rule().equals("expectation-failed"))
                      .hasSizeGreaterThanOrEqualTo(expected - 2);
                }));
  }

  /** Two legs of a wye, 120° apart: equal currents leave as much on the neutral; on one leg it would be twice that. */
  @Test
  void theApartmentMovedToOneLeg() throws SourceReader.Unreadable {
    Compilation plan = compile("examples/apartment/house.wattle");
    String more = "\ntrial one-leg { kitchen.c1.upper draws 10 A\n kitchen.c1.lower draws 10 A\n move counter to 2+6 }\n"
        + "expect neutral of counter is 20 A within 0.2 A in one-leg\n";
    Source moved = new Source("moved.wattle", plan.source().text() + more);
    assertThat(wattle.Structure.findings(new Compiler(SourceReader.FROM_DISK).compile(moved, Path.of("examples/apartment/house.wattle"))))
        .isEmpty();
  }
}
