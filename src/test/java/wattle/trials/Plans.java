package wattle.trials;

import java.nio.file.Path;
import java.util.List;
import wattle.bind.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Checked;
import wattle.finding.Source;

/** A small invented house for trials: a counter on a shared neutral, a light with a pair of switches, a washer, a range. */
final class Plans {
  static final String HOUSE =
      """
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

  private Plans() {}

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
    Compilation plan = compile("trial t {\n" + events + "\n}\n");
    List<String> faults =
        wattle.Structure.findings(plan).stream().map(f -> f.rule()).filter(r -> !r.startsWith("trial-") && !r.startsWith("load-")).toList();
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
