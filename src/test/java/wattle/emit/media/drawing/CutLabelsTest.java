package wattle.emit.media.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compare.Comparison;
import wattle.compare.Plan;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.view.branchwiring.BranchWiring;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.oneline.OneLineDifference;
import wattle.emit.view.panelfront.PanelFront;
import wattle.emit.view.plot.LegsPlot;
import wattle.emit.view.plot.TripPlot;
import wattle.emit.view.plot.VoltagePlot;
import wattle.emit.view.rooms.RoomSheet;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.faults.TimeCurrent;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Trial;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;
import wattle.trials.VoltageProfile;

/** In every view, of the examples and of plans with long names and wires in raceways, no label is cut where there is room for it. */
class CutLabelsTest {
  private static final List<String> LONG_NAMES = List.of(
      "Receptacles along the north wall of the workshop, behind the bench", "Lighting of the covered walk between house and barn",
      "Conservatory-and-orangery-receptacles-behind-the-planters", "Pump", "Upper hall, stair, landing and the linen closet beside it",
      "The old kitchen, now a study with two desks and a daybed");

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("long.wattle", text), Path.of("long.wattle"));
  }

  @TestFactory
  Stream<DynamicTest> labelsOfTheExamples() {
    return Golden.plans("examples").stream().filter(p -> !p.toString().contains("broken"))
        .map(p -> DynamicTest.dynamicTest(p.toString(), () -> check(new Compiler(SourceReader.FROM_DISK).compile(p))));
  }

  @TestFactory
  Stream<DynamicTest> labelsOfLongNames() {
    return Stream.of(0, 1, 2, 3, 4, 5).map(n -> DynamicTest.dynamicTest("names from " + n, () -> check(compile(plan(n)))));
  }

  /** A house in raceways, whose names begin at a place of the list. */
  private static String plan(int first) {
    List<String> wirings = List.of("0.5 in EMT with 2 x 14 Cu THHN, 14 Cu ground", "1.25 in PVC-80 with 3 x 6 Cu THWN-2, 10 Cu ground",
        "14/2 NM-B", "0.75 in EMT with 3 x 10 Cu THWN-2, 10 Cu ground");
    StringBuilder slots = new StringBuilder();
    StringBuilder branches = new StringBuilder();
    StringBuilder rooms = new StringBuilder();
    for (int i = 0; i < 8; i++) {
      String name = LONG_NAMES.get((first + i) % LONG_NAMES.size());
      slots.append("  ").append(i + 1).append(" 15 A arc-fault b").append(i).append(" \"").append(name).append("\"\n");
      branches.append("branch b").append(i).append(" \"").append(name).append("\" by ").append(wirings.get((first + i) % 4))
          .append(" in insulation { P --12 m-- r").append(i).append(".switch --3 m existing-- r").append(i)
          .append(".receptacle-behind-the-door --2 m-- r")
          .append(i).append(".l }\n");
      rooms.append("room r").append(i).append(" \"").append(name)
          .append("\" { switch: switch for l   receptacle-behind-the-door: receptacle tamper-resistant \"").append(name)
          .append("\"   l: light 20 W \"")
          .append(name).append("\" }\n");
    }
    return "plan \"" + LONG_NAMES.get(first) + "\" revision \"D\" use code us-2023\n"
        + "service main 120/240 V 200 A { source transformer 50 kVA 1.8 % run 27 m of 4/0 Al triplex earth rods by 6 Cu 25 ohm }\n"
        + "panel P \"" + LONG_NAMES.get((first + 1) % LONG_NAMES.size())
        + "\" from main { bus 225 A slots 24 bonded main breaker 200 A 22 kA\n"
        + slots + "  9+11 60 A two-pole Q \"" + LONG_NAMES.get((first + 2) % LONG_NAMES.size()) + "\"\n}\n" + "panel Q \""
        + LONG_NAMES.get((first + 3) % LONG_NAMES.size())
        + "\" from P/9+11 by 12 m of 1.25 in EMT with 3 x 4 Cu THWN-2, 8 Cu ground { bus 100 A slots 12 main breaker 60 A 10 kA }\n"
        + branches
        + rooms + "trial t \"" + LONG_NAMES.get((first + 4) % LONG_NAMES.size())
        + "\" { r0.l draws 1 A  loosen neutral at r0.switch by 0.1 ohm }\n";
  }

  @Test
  void theCheckSeesWhatIsCut() {
    Drawing room = new Sketch().fitted(0, 0, "one two three four", 12, false, Shape.Anchor.START, 60).line(0, 40, 300, 40).drawing(24,
        "cut", "");
    assertThat(CutLabels.faults(room)).hasSize(1).allMatch(f -> f.startsWith("cut where there is room"));
    Drawing wall = new Sketch().fitted(0, 0, "one two three four", 12, false, Shape.Anchor.START, 60).line(62, -20, 62, 20)
        .line(0, 40, 300, 40)
        .drawing(24, "cut", "");
    assertThat(CutLabels.faults(wall)).isEmpty();
    Drawing within = new Sketch().add(new Shape.Text(0, 0, "one tw…", 12, false, Shape.Anchor.START, "one two")).drawing(24, "cut", "");
    assertThat(CutLabels.faults(within)).hasSize(1).allMatch(f -> f.startsWith("cut within a word"));
  }

  private static void check(Compilation plan) {
    Map<String, Drawing> drawings = drawings(plan);
    assertThat(drawings).hasSizeGreaterThan(3);
    List<String> faults = new ArrayList<>();
    drawings.forEach((name, drawing) -> CutLabels.faults(drawing).forEach(f -> faults.add(name + ": " + f)));
    assertThat(faults).isEmpty();
  }

  /** Of a plan and itself. */
  private static Drawing difference(Compilation plan) {
    Plan one = new Plan(plan.figures(), plan.findings(), true, plan.undecided());
    return new OneLineDifference(plan.figures(), plan.figures(), Comparison.of(one, one)).drawing();
  }

  private static Map<String, Drawing> drawings(Compilation plan) {
    House house = plan.house();
    Map<String, Drawing> drawings = new LinkedHashMap<>();
    drawings.put("one-line", new OneLine(house, plan.figures()).drawing());
    drawings.put("panel", new PanelFront(house).drawing());
    drawings.put("legs", LegsPlot.of(house, plan.figures().loads()));
    drawings.put("rooms", new RoomSheet(house, List.copyOf(house.rooms().values())).plate().drawing());
    drawings.put("difference", difference(plan));
    for (Branch branch : house.branches().values().stream().limit(40).toList()) {
      drawings.put("branch " + branch.name(), BranchWiring.of(house, branch, BranchWiring.USUAL_WIDTH).drawing());
      TimeCurrent.of(branch, house, plan.library(), plan.figures().faults())
          .ifPresent(s -> drawings.put("trip " + branch.name(), TripPlot.of(s, house.units())));
      Optional<VoltageProfile> profile = VoltageProfile.of(branch, house, plan.figures().trials());
      profile.ifPresent(p -> drawings.put("voltage " + branch.name(), VoltagePlot.of(p, plan.library(), house.units())));
    }
    for (Trial trial : house.trials().values().stream().limit(8).toList()) {
      TrialResult result = plan.figures().trials().result(trial).value();
      result.mainBranches().stream().limit(2).forEach(b -> drawings.put(
          "trial " + trial.name() + " " + b,
          new TrialPicture(house, house.branches().get(b), result, trial.label().orElse(trial.name())).plate(TrialPicture.USUAL_WIDTH)
              .drawing()));
    }
    return drawings;
  }
}
