package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.bind.Binder;
import wattle.read.SourceReader;
import wattle.edit.Mender;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.library.StandardLibrary;
import wattle.model.Device;
import wattle.rules.Rule;
import wattle.rules.RuleLoader;
import wattle.rules.Sample;
import wattle.trials.TrialResult;
import wattle.trials.Trials;

/**
 * A mend never takes a fault's way back: whatever is applied, a fault from hot to ground at each device drives as much current as before,
 * or still more than opens a breaker at once. The judge of mends counts joints; this test drives a fault at each device instead.
 */
class MendsAreNoMoreDangerousTest {
  private static final SourceReader DISK = SourceReader.FROM_DISK;
  /** Amperes that earth alone may carry from a rod of 3 Ω; what is above has a way through metal. */
  private static final double THROUGH_EARTH = 40;
  private static final int DEVICES = 12;

  private static final String THREE_WIRES = """
      plan "An outbuilding on three wires"
      use code us-2023
      dwelling { floor-area 100 m2 }
      service main 120/240 V 200 A { source transformer 50 kVA 2 %  run 20 m of 4/0 Al triplex  earth rods by 6 Cu 25 ohm }
      panel P from main { bus 200 A   slots 20   bonded
        main breaker 200 A 22 kA
        1+3  60 A 22 kA two-pole  G
      }
      panel G from P/1 by 30 m of 6/3 UF-B without ground is outbuilding { bus 100 A   slots 8   bonded
        main breaker 60 A 22 kA
        1  20 A 22 kA ground-fault  o
      }
      branch o by 12/2 NM-B { G --5 m-- shop.o }
      room shop is workshop { o: receptacle 20 A }
      """;

  private static Mender.Mended mend(Source source, Path path, Set<String> named) {
    Compiler compiler = new Compiler(DISK);
    Function<Source, Compilation> compile = text -> compiler.compile(text, path);
    return new Mender(
        text -> compile.apply(text).findings(),
        (fix, before, after) -> FixTrial.objection(fix, compile.apply(before), compile.apply(after)),
        named).mend(source);
  }

  private static Compilation compiled(String text, Path path) {
    return new Compiler(DISK).compile(new Source(path.toString(), text), path);
  }

  /** Amperes of a fault at each of the first devices of a house that metal carries back; none where there is no such way. */
  private static Map<String, Double> faults(Compilation plan) {
    Map<String, Double> amps = new HashMap<>();
    List<Device> devices = plan.house().devices().values().stream().limit(DEVICES).toList();
    for (Device device : devices) {
      Source event = new Source("fault.wattle", "trial f { fault hot to ground at " + device.name() + " }");
      Binder.trials(event, plan.house(), plan.library(), plan.files()).value().stream().findFirst().ifPresent(trial -> {
        TrialResult result = new Trials(plan.house(), plan.library()).run(trial).value();
        result.faults().stream().findFirst().ifPresent(f -> amps.put(device.name(), f.amps().si()));
      });
    }
    return amps;
  }

  private static void noWorse(Compilation before, Compilation after, String what) {
    Map<String, Double> now = faults(after);
    faults(before).forEach((device, amps) -> {
      if (amps > THROUGH_EARTH && now.containsKey(device)) {
        assertThat(now.get(device)).as("a fault at " + device + " after " + what).isGreaterThan(THROUGH_EARTH);
      }
    });
  }

  private static void mendsAreNoWorse(String text, Path path) {
    Compilation before = compiled(text, path);
    Set<String> rules = new java.util.TreeSet<>();
    before.findings().stream().filter(f -> Mender.canMend(f, before.source())).forEach(f -> rules.add(f.rule()));
    if (!rules.isEmpty()) {
      Mender.Mended mended = mend(before.source(), path, rules);
      noWorse(before, compiled(mended.text(), path), rules.toString());
    }
  }

  @TestFactory
  Stream<DynamicTest> ofExamples() {
    List<Path> plans = new ArrayList<>(Golden.plans("examples"));
    return plans.stream()
        .map(p -> DynamicTest.dynamicTest(p.toString(), () -> mendsAreNoWorse(DISK.read(p, p.toString()).text(), p)));
  }

  /** Each edit that a rule offers, in the plan that breaks the rule. */
  @TestFactory
  Stream<DynamicTest> ofRejectedPlans() {
    return StandardLibrary.packNames().stream()
        .flatMap(pack -> RuleLoader.load(StandardLibrary.written(List.of("common", pack)).value()).value().stream()
            .filter(r -> r.pack().equals(pack)))
        .map(rule -> DynamicTest.dynamicTest(rule.pack() + " " + rule.name(), () -> {
          Path path = Path.of("sample.wattle");
          String text = Sample.complete(rule.reject().orElseThrow(), rule.pack());
          Compilation before = compiled(text, path);
          Finding finding = before.findings().stream().filter(f -> f.rule().equals(rule.name())).findFirst().orElseThrow();
          for (Fix fix : finding.fixes()) {
            if (!fix.edits().isEmpty()) {
              Compilation after = compiled(Mender.apply(text, fix.edits()), path);
              assertThat(FixTrial.objection(fix, before, after)).as(rule.name() + ": " + fix.order()).isEmpty();
              noWorse(before, after, fix.order());
            }
          }
        }));
  }

  @Test
  void aBondIsNotTakenOutAloneWhereItIsTheOnlyWayBack() {
    Path path = Path.of("house.wattle");
    Compilation before = compiled(THREE_WIRES, path);
    assertThat(faults(before).get("shop.o")).isGreaterThan(THROUGH_EARTH);
    Compilation alone = compiled(THREE_WIRES.replace("slots 8   bonded", "slots 8"), path);
    assertThat(faults(alone).get("shop.o")).isLessThan(THROUGH_EARTH);
    Fix fix = Fix.offered("take bonded out", before.source().span(0, 1), "p");
    assertThat(FixTrial.objection(fix, before, alone))
        .hasValueSatisfying(why -> assertThat(why).contains("would lose its fault-current path"));
    Mender.Mended mended = mend(before.source(), path, Set.of("neutral-bonded-twice"));
    assertThat(mended.text()).isEqualTo(THREE_WIRES);
  }
}
