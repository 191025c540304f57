package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.bind.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Span;
import wattle.lockout.Handle;
import wattle.lockout.Lockout;
import wattle.lockout.Place;
import wattle.model.Branch;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Section;
import wattle.network.Network;

/**
 * The handles of a lockout sheet against the solved network, conductor by conductor: with exactly them open every conductor
 * in the box, both ways out of it, and every contact of its devices is at no voltage to earth; with any one closed again some is
 * not.
 */
class EveryConductorDeadTest {
  /** Nothing draws, so that nothing raises the neutral bar: what is dead is at zero but for rounding. */
  private static final double ZERO_VOLTS = 1e-3;

  private static final double LIVE_VOLTS = 90;

  /** Volts to earth of what is in a box, by name. */
  private static Map<String, Double> volts(Compilation plan, String box, List<Handle> open) {
    House house = plan.house();
    Span nowhere = plan.source().span(0, 0);
    List<Event> events = new ArrayList<>();
    for (Handle handle : open) {
      if (handle.part() instanceof Handle.Part.OfBreaker breaker) {
        events.add(new Event.BreakerOpen(breaker.breaker(), nowhere));
      }
    }
    TrialResult result = new Trials(house, plan.library()).run("", events).value();
    HouseNetwork network = result.network();
    Map<String, Double> volts = new LinkedHashMap<>();
    for (HouseNetwork.Conductor conductor : network.conductors()) {
      Optional<Branch> branch = conductor.branch().map(house.branches()::get);
      if (branch.isPresent() && touches(branch.get(), conductor.point(), box)) {
        volts.put(conductor.name() + ", " + conductor.run(), result.solution().volts(conductor.box(), conductor.local()).magnitude());
      }
    }
    for (HouseNetwork.Outlet outlet : network.outlets()) {
      if (house.devices().get(outlet.device()).box().equals(box)) {
        volts.put(outlet.name() + " first contact", result.solution().volts(outlet.box(), outlet.a(), Network.EARTH).magnitude());
        volts.put(outlet.name() + " second contact", result.solution().volts(outlet.box(), outlet.b(), Network.EARTH).magnitude());
      }
    }
    return volts;
  }

  /** Whether the run that ends at a point begins or ends in the box. */
  private static boolean touches(Branch branch, int point, String box) {
    for (Section section : branch.sections()) {
      if (section.to() == point) {
        return List.of(section.from(), section.to()).stream().anyMatch(p -> branch.points().get(p).box().equals(Optional.of(box)));
      }
    }
    return false;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "examples/alder-court/house.wattle", "examples/cottage/house.wattle", "examples/apartment/house.wattle",
        "examples/kitchen-renovation/after.wattle", "examples/longcroft/house.wattle", "examples/linden-row/house.wattle",
        "examples/workshop/house.wattle", "examples/classroom/lessons.wattle", "examples/duplex/house.wattle"
      })
  void everyConductorInEveryBox(String file) throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(file));
    int conductors = 0;
    int handles = 0;
    List<String> boxes = List.copyOf(plan.house().boxes().keySet());
    // Each figure is a solution of the whole house; of a large one every third box is looked at.
    int step = boxes.size() > 40 ? 3 : 1;
    for (int b = 0; b < boxes.size(); b += step) {
      String box = boxes.get(b);
      Lockout lockout = Lockout.of(plan.house(), new Place.AtBox(box));
      Map<String, Double> dead = volts(plan, box, lockout.handles());
      conductors += dead.size();
      assertThat(dead).as(box + " with " + tags(lockout.handles()) + " open").allSatisfy((name, volts) -> assertThat(volts).isLessThan(ZERO_VOLTS));
      for (Handle closed : lockout.handles()) {
        // A source that is a device, and the breaker behind which it stands, are no source of this network: LockoutWalkTest walks them.
        if (closed.part() instanceof Handle.Part.OfBreaker breaker && !plan.house().breaker(breaker.breaker()).orElseThrow().backFed()) {
          List<Handle> others = lockout.handles().stream().filter(h -> h != closed).toList();
          Map<String, Double> partly = volts(plan, box, others);
          handles++;
          assertThat(partly.values()).as("%s with %s closed: %s", box, closed.part().tag(), partly).anyMatch(v -> v > LIVE_VOLTS);
        }
      }
    }
    assertThat(conductors).isGreaterThan(20);
    assertThat(handles).isGreaterThan(3);
  }

  private static List<String> tags(List<Handle> handles) {
    return handles.stream().map(h -> h.part().tag()).toList();
  }
}
