package wattle.lockout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Span;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Load;
import wattle.model.Role;
import wattle.model.Section;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;
import wattle.trials.Trials;

/**
 * The handles of a sheet, against the solved network of the whole house with everything in it drawing: with exactly them
 * open every outlet of the place is at no voltage, and with any one of them closed one of its branches is live.
 */
class LockoutVoltageTest {
  /**
   * Far below what any closed breaker gives, and above what an open hot shows against a neutral that is still joined to the
   * neutral bar: the loads of the rest of the house raise that bar over earth by the fall in the service neutral.
   */
  private static final double DEAD_VOLTS = 1;

  private Map<String, Double> volts(Compilation plan, List<Handle> open) {
    House house = plan.house();
    Span nowhere = plan.source().span(0, 0);
    List<Event> events = new ArrayList<>();
    for (Device device : house.devices().values()) {
      if (device.voltAmperes() > 0) {
        events
            .add(new Event.Drawing(device.name(), "", Quantity.of(device.voltAmperes(), Units.WATT), 1, Load.Behavior.IMPEDANCE, false,
                nowhere));
      }
    }
    for (Handle handle : open) {
      if (handle.part() instanceof Handle.Part.OfBreaker breaker) {
        events.add(new Event.BreakerOpen(breaker.breaker(), nowhere));
      }
    }
    TrialResult result = new Trials(house, plan.library()).run("", events).value();
    return result.outlets().stream().collect(Collectors.toMap(TrialResult.OutletReading::name, o -> o.volts().si(), Math::max));
  }

  @ParameterizedTest
  @ValueSource(strings = {"examples/alder-court/house.wattle", "examples/cottage/house.wattle",
      "src/test/resources/plans/lockout/two-fuses-of-one-leg.wattle"})
  void branchesAreDeadWithTheirHandlesOpenAndLiveWithOneClosed(String file) throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(file));
    Map<String, Double> all = volts(plan, List.of());
    assertThat(all).isNotEmpty().allSatisfy((outlet, volts) -> assertThat(volts).as(outlet).isGreaterThan(90));
    List<String> names = List.copyOf(plan.house().branches().keySet());
    for (String name : names) {
      if (names.size() > 10 && plan.house().branches().get(name).hots().size() < 2 && names.indexOf(name) % 5 != 0) {
        continue; // each is a solution of the whole house; branches of one hot differ little
      }
      Place place = Places.named(plan.house(), "branch", name).get(0);
      Lockout lockout = Lockout.of(plan.house(), place);
      List<String> outlets = outletsOf(plan.house(), name);
      Map<String, Double> open = volts(plan, lockout.handles());
      assertThat(outlets).allSatisfy(outlet -> assertThat(open.get(outlet)).as(outlet).isLessThan(DEAD_VOLTS));
      for (Handle closed : lockout.handles()) {
        List<Handle> others = lockout.handles().stream().filter(h -> h != closed).toList();
        Map<String, Double> partly = volts(plan, others);
        assertThat(outlets).as("%s with %s closed", name, closed.part().tag()).anyMatch(o -> partly.get(o) > 90);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {14, 2653})
  void randomBoxesAreDead(long seed) {
    Compilation plan = new Compiler(SourceReader.FROM_DISK)
        .compile(new wattle.finding.Source("random.wattle", RandomHouse.plan(seed)), Path.of("random.wattle"));
    for (String box : plan.house().boxes().keySet()) {
      Map<String, Double> open = volts(plan, Lockout.of(plan.house(), new Place.AtBox(box)).handles());
      for (String device : plan.house().boxes().get(box).devices()) {
        open.forEach((outlet, volts) -> {
          if (outlet.equals(device) || outlet.startsWith(device + ".")) {
            assertThat(volts).as("%s in %s", outlet, box).isLessThan(DEAD_VOLTS);
          }
        });
      }
    }
  }

  private static List<Path> plans() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("examples"))) {
      return Stream.concat(
          files.filter(f -> f.endsWith("house.wattle")).sorted(),
          Stream.of(Path.of("src/test/resources/plans/lockout/two-fuses-of-one-leg.wattle")))
          .toList();
    }
  }

  /** Two hots of one leg are two conductors: whatever feeds a box is met by a test of its own, live while that handle is closed. */
  @ParameterizedTest
  @MethodSource("plans")
  void everyHotOfABoxHasTestsOfItsOwn(Path file) throws Exception {
    House house = new Compiler(SourceReader.FROM_DISK).compile(file).house();
    for (String box : house.boxes().keySet()) {
      Lockout.Proof proof = Lockout.of(house, new Place.AtBox(box)).proofs().get(0);
      Set<List<Object>> hots = new HashSet<>();
      for (Branch branch : house.branches().values()) {
        for (Section section : branch.sections()) {
          boolean here = Stream.of(section.from(), section.to())
              .anyMatch(p -> branch.points().get(p).box().filter(box::equals).isPresent());
          section.conductors().stream()
              .filter(c -> here && c.role() instanceof Role.Hot hot && hot.hot() < branch.hots().size()
                  && branch.hots().get(hot.hot()).leg().isPresent())
              .forEach(c -> hots.add(List.of(branch.name(), c.role(), c.wire().color())));
        }
      }
      List<Lockout.Reading> toGround = proof.readings().stream()
          .filter(r -> r.to().contains("ground") && r.from().contains(" hot "))
          .toList();
      assertThat(toGround).as(box + " of " + file).hasSize(hots.size()).allMatch(r -> r.liveVolts().orElse(0.0) > 50);
      assertThat(toGround.stream().map(Lockout.Reading::from)).doesNotHaveDuplicates();
    }
  }

  private static List<String> outletsOf(House house, String branch) {
    List<String> names = new ArrayList<>();
    for (var point : house.branches().get(branch).points()) {
      for (String device : point.devices()) {
        house.devices().get(device).loads().stream().map(l -> l.part().isEmpty() ? device : device + "." + l.part()).distinct()
            .forEach(names::add);
      }
    }
    return names;
  }
}
