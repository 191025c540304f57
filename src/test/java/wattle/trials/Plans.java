package wattle.trials;

import java.nio.file.Path;
import java.util.List;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Checked;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A small invented house for trials: a counter on a shared neutral, a light with a pair of switches, a washer, a range. */
final class Plans {
  static final String HOUSE = """
      plan "Trial house"
      use code us-2023
      service main 120/240 V 100 A {
        source transformer 25 kVA 2 % ratio 1.5
        run    20 m of 2 Al triplex
        earth  rods by 6 Cu 25 ohm
      }
      panel P from main {
        bus 125 A   slots 12   bonded
        main breaker 100 A 10 kA
        1      15 A  hall      "Hall"
        2+4    20 A  two-pole counter  "Counter"
        3      20 A  washer    "Washer"
        5+7    50 A  two-pole  range   "Range"
        6      15 A  loop      "Loop"
      }
      branch hall by 14/3 NM-B {
        P --8 m by 14/2 NM-B-- hall.sw1 --5 m-- hall.sw2 --4 m by 14/2 NM-B-- hall.lamp
      }
      branch loop by 14/2 NM-B { P --6 m-- den.lamp --3 m-- den.sw }
      branch counter by 12/3 NM-B { P --9 m-- kitchen.c1 --2 m-- kitchen.c2 }
      branch washer by 12/2 NM-B { P --7 m-- laundry.washer }
      branch range by 6/3 NM-B { P --10 m-- kitchen.range }
      room hall { sw1: three-way switch for lamp  sw2: three-way switch for lamp  lamp: light 120 W }
      room den { lamp: light 60 W   sw: switch for lamp }
      room kitchen { c1: split receptacle at counter  c2: split receptacle at counter  range: range 8 kW }
      room laundry { washer: washer 900 W }
      """;

  /** The house with solar, storage, and a generator behind an interlock. */
  static final String SOURCES = HOUSE
      .replace("slots 12   bonded", "slots 20   bonded")
      .replace("6      15 A  loop",
          "13+15  30 A  two-pole back-fed sun\n  17+19  30 A  two-pole back-fed store\n  14+16  30 A  two-pole back-fed interlocked"
              + " gen\n  6      15 A  loop")
      + """
          branch sun by 10/2 NM-B { P --30 m-- yard.pv }
          branch store by 10/3 NM-B { P --3 m-- yard.store }
          branch gen by 10/3 NM-B { P --10 m-- yard.g }
          room yard { pv: solar inverter 5 kW   store: storage battery 5 kW   g: generator inlet 6 kW reactance 12 % }
          """;

  private Plans() {}

  /** Runs the events of a trial in the house with sources. */
  static Checked<TrialResult> runWithSources(String events) {
    return runIn(SOURCES, events);
  }

  /** Runs the events of a trial in any house, which must be without fault of structure. */
  static Checked<TrialResult> runIn(String house, String events) {
    return runCompiled(
        new Compiler(SourceReader.FROM_DISK).compile(new Source("trial.wattle", house + "trial t {\n" + events + "\n}\n"),
            Path.of("trial.wattle")));
  }

  static Compilation compile(String more) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("trial.wattle", HOUSE + more), Path.of("trial.wattle"));
  }

  /** The house with one text of it replaced. */
  static Compilation compileWith(String text, String other, String more) {
    if (!HOUSE.contains(text)) {
      throw new AssertionError(text);
    }
    return new Compiler(SourceReader.FROM_DISK)
        .compile(new Source("trial.wattle", HOUSE.replace(text, other) + more), Path.of("trial.wattle"));
  }

  /** Runs the events of a trial; the plan must be without fault. */
  static TrialResult run(String events) {
    return runChecked(events).value();
  }

  static Checked<TrialResult> runChecked(String events) {
    return runCompiled(compile("trial t {\n" + events + "\n}\n"));
  }

  private static Checked<TrialResult> runCompiled(Compilation plan) {
    List<String> faults = wattle.Structure.findings(plan).stream().map(f -> f.rule())
        .filter(r -> !r.startsWith("trial-") && !r.startsWith("load-") && !r.startsWith("sources-")).toList();
    if (!faults.isEmpty()) {
      throw new AssertionError(plan.findings());
    }
    return new Trials(plan.house(), plan.library()).run(plan.house().trials().get("t"));
  }

  static double volts(TrialResult result, String outlet) {
    return result.outlets().stream().filter(o -> o.name().equals(outlet)).findFirst().orElseThrow().volts().si();
  }

  /** Largest current in a conductor of a branch whose name begins so. */
  static double amps(TrialResult result, String branch, String conductor) {
    return result.conductors().stream()
        .filter(c -> c.branch().equals(branch) && c.conductor().startsWith(conductor))
        .mapToDouble(c -> c.amps().si())
        .max()
        .orElseThrow();
  }
}
