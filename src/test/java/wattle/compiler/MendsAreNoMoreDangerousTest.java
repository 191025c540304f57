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

  private static final String SURVIVE = "conductor-would-not-survive";

  private static Mender.Mended mend(Source source, Path path, Set<String> named) {
    Compiler compiler = new Compiler(DISK);
    Function<Source, Compilation> compile = text -> compiler.compile(text, path);
    return new Mender(
        text -> compile.apply(text).findings(),
        (found, before) -> FixTrial.wasHidden(found, compile.apply(before)),
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

  private static final String JOINT = "feeder-bonded-without-ground";

  private static Mender.Mended joint(String text) {
    Path path = Path.of("house.wattle");
    return mend(compiled(text, path).source(), path, Set.of(JOINT));
  }

  /** The plan with the joint mend made by hand. */
  private static List<String> rulesWith(String text, String cable) {
    return compiled(text.replace("6/3 UF-B without ground", cable).replace("slots 8   bonded", "slots 8"), Path.of("house.wattle"))
        .findings().stream().map(Finding::rule).toList();
  }

  /** Bond and ground are one mend, in the thinnest cable whose ground a fault at the far end does not ruin. */
  @Test
  void bondAndGroundGoTogetherAndTheGroundWithstandsAFault() {
    assertThat(joint(THREE_WIRES).text()).contains("30 m of 6/3 UF-B is outbuilding { bus 100 A   slots 8\n");
    String far = THREE_WIRES.replace("30 m", "75 m");
    assertThat(rulesWith(far, "6/3 UF-B")).as("a ground of 10 AWG, which Table 250.122 allows for 60 A").contains(SURVIVE);
    assertThat(rulesWith(far, "4/3 UF-B")).as("a ground of 8 AWG").doesNotContain(SURVIVE, "feeder-ground-not-enlarged");
    Mender.Mended mended = joint(far);
    assertThat(mended.text()).contains("75 m of 4/3 UF-B is outbuilding { bus 100 A   slots 8\n");
    assertThat(mended.applied()).extracting(Finding::rule).containsExactly(JOINT);
    assertThat(compiled(far, Path.of("house.wattle")).findings()).filteredOn(f -> f.rule().equals(JOINT))
        .flatExtracting(Finding::fixes).extracting(Fix::order)
        .containsExactly("do both at once: run its feeder in 4/3 UF-B, with its ground of 8 AWG, and take bonded out of panel G");
  }

  @Test
  void aRacewayGetsAGroundOfItsOwnOneForEachSet() {
    String pipe = "1-1/2 in PVC with 3 x 6 Cu THWN";
    String near = THREE_WIRES.replace("6/3 UF-B without ground", pipe);
    assertThat(joint(near).text()).contains(pipe + ", 10 Cu ground is outbuilding { bus 100 A   slots 8\n");
    assertThat(joint(near.replace("30 m", "60 m")).text()).contains(pipe + ", 6 Cu ground is outbuilding");
    // 250.122(F): each set has the full ground; the hots of two sets are enlarged.
    assertThat(joint(near.replace("of 1-1/2", "of 2 sets of 1-1/2")).text()).contains("2 sets of " + pipe + ", 8 Cu ground is");
  }

  /** On two legs of a wye every cable of the type would bring a finding; the words name it, and no size is recommended. */
  @Test
  void whatNoCableOfTheTypeCanDoIsRefusedByName() {
    String wye = THREE_WIRES.replace("120/240 V", "120/208 V").replace("30 m", "60 m");
    // Thinner ones leave a fault there below what trips the breaker at once.
    assertThat(joint(wye).text()).contains("60 m of 3/3 UF-B is outbuilding");
    assertThat(joint(wye.replace("60 m", "25 m")).text()).contains("25 m of 6/3 UF-B is outbuilding");
    // A triplex has no ground in any size.
    String triplex = THREE_WIRES.replace("6/3 UF-B without ground", "2 Al triplex");
    Mender.Mended refused = joint(triplex);
    assertThat(refused.text()).isEqualTo(triplex);
    assertThat(refused.left()).filteredOn(f -> f.rule().equals(JOINT)).flatExtracting(Finding::fixes).extracting(Fix::order)
        .containsExactly("do both at once: run a ground with its feeder, and take bonded out of panel G");
  }

  /** The survey's outbuilding: a motor's current falls below what opens its breaker, which is no new danger. */
  @Test
  void aFaultyOutbuildingIsMendedBesideItsOtherFaults() throws SourceReader.Unreadable {
    Path path = Path.of("src/test/resources/plans/survey/outbuilding.wattle");
    Mender.Mended mended = mend(DISK.read(path, path.toString()), path, Set.of(JOINT));
    assertThat(mended.applied()).extracting(Finding::rule).containsExactly(JOINT);
    assertThat(mended.text()).contains("75 m of 4/3 UF-B buried 24 in is outbuilding {\n  bus 100 A   slots 12\n");
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
