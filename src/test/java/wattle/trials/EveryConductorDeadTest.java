package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.Library;
import wattle.lockout.Handle;
import wattle.lockout.Lockout;
import wattle.lockout.Place;
import wattle.lockout.Places;
import wattle.lockout.RandomHouse;
import wattle.model.House;
import wattle.read.SourceReader;

/**
 * The handles of a lockout sheet against the solved network, conductor by conductor, with every source able to hold a
 * voltage: with exactly them open every conductor at the place, both ways out of each box, and every contact of its devices is
 * at no voltage to earth; with any one of them closed again some is not.
 */
class EveryConductorDeadTest {
  private static final double ZERO_VOLTS = 1e-3;

  private static final double LIVE_VOLTS = 90;

  /** How much was looked at, so that a test cannot pass on nothing. */
  private static final class Seen {
    int conductors;
    int handles;
    int sources;
  }

  private static void assertIsolates(House house, Library library, Place place, Seen seen) {
    List<Handle> handles = Lockout.of(house, place).handles();
    Map<String, Double> dead = new Energized(house, library, handles).volts(place);
    seen.conductors += dead.size();
    assertThat(dead).as("%s with %s open", place.text(), tags(handles))
        .allSatisfy((name, volts) -> assertThat(volts).isLessThan(ZERO_VOLTS));
    for (Handle closed : handles) {
      // In a panel the way of a source and the disconnect beyond it are both opened, each for the case that the other fails.
      boolean twofold = place instanceof Place.InPanel panel && closed.part() instanceof Handle.Part.OfBreaker b
          && b.breaker().panel().equals(panel.panel());
      List<Handle> others = handles.stream().filter(h -> h != closed && !(twofold && h.part() instanceof Handle.Part.OfSource)).toList();
      Map<String, Double> partly = new Energized(house, library, others).volts(place);
      partly.keySet().removeIf(name -> twofold && !name.startsWith("bar "));
      seen.handles++;
      seen.sources += closed.part() instanceof Handle.Part.OfSource ? 1 : 0;
      assertThat(partly.values()).as("%s with %s closed: %s", place.text(), closed.part().tag(), partly).anyMatch(v -> v > LIVE_VOLTS);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
          "examples/alder-court/house.wattle", "examples/cottage/house.wattle", "examples/apartment/house.wattle",
          "examples/kitchen-renovation/after.wattle", "examples/longcroft/house.wattle", "examples/linden-row/house.wattle",
          "examples/workshop/house.wattle", "examples/classroom/lessons.wattle", "examples/duplex/house.wattle",
          "examples/marlow-croft/house.wattle"
      })
  void everyConductorInEveryBox(String file) throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(file));
    Seen seen = new Seen();
    List<String> boxes = List.copyOf(plan.house().boxes().keySet());
    // Each figure is a solution of the whole house; of a large one every third box is looked at.
    int step = boxes.size() > 40 ? 3 : 1;
    for (int b = 0; b < boxes.size(); b += step) {
      assertIsolates(plan.house(), plan.library(), new Place.AtBox(boxes.get(b)), seen);
    }
    assertThat(seen.conductors).isGreaterThan(20);
    assertThat(seen.handles).isGreaterThan(3);
  }

  @ParameterizedTest
  @ValueSource(strings = {"examples/workshop/house.wattle", "examples/marlow-croft/house.wattle"})
  void panelsThatSourcesFeed(String file) throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(file));
    Seen seen = new Seen();
    for (String panel : plan.house().panels().keySet()) {
      assertIsolates(plan.house(), plan.library(), new Place.InPanel(panel), seen);
    }
    assertThat(seen.sources).isPositive();
  }

  /** Bound and not judged: that a plan is whole matters here, and not what a code says of it. */
  private static Compilation bound(String text) {
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(new Source("random.wattle", text), Path.of("random.wattle"));
    // Two breakers on one shared neutral are forbidden in new work, and are just what is met in old houses.
    assertThat(bound.findings().stream().filter(f -> f.severity() == Severity.ERROR).map(Finding::rule)
        .filter(r -> !r.equals("shared-neutral-two-breakers")))
        .as(text).isEmpty();
    return bound;
  }

  private static List<Place> allPlaces(House house) {
    List<Place> places = new ArrayList<>();
    house.boxes().keySet().forEach(b -> places.add(new Place.AtBox(b)));
    for (String kind : List.of("branch", "room", "panel")) {
      Places.names(house, kind).forEach(n -> places.addAll(Places.named(house, kind, n)));
    }
    return places;
  }

  @Property(tries = 60)
  void randomHousesWithSourcesAreIsolated(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    String text = RandomHouse.plan(seed);
    Compilation bound = bound(text);
    try {
      allPlaces(bound.house()).forEach(p -> assertIsolates(bound.house(), bound.library(), p, new Seen()));
    } catch (RuntimeException | AssertionError e) {
      throw new AssertionError(text, e);
    }
  }

  @Test
  void whatIsLeftClosedIsSeen() {
    Compilation bound = bound(RandomHouse.plan(1));
    Place place = new Place.AtBox(bound.house().boxes().keySet().iterator().next());
    assertThat(new Energized(bound.house(), bound.library(), List.of()).volts(place).values()).anyMatch(v -> v > LIVE_VOLTS);
  }

  @Test
  void theRandomHousesHaveSourcesOfEveryKind() {
    String plans = "";
    int holding = 0;
    for (long seed = 0; seed < 20; seed++) {
      Compilation bound = bound(RandomHouse.plan(seed));
      holding += new Energized(bound.house(), bound.library(), List.of()).holding();
      plans += RandomHouse.plan(seed);
    }
    assertThat(plans).contains("solar inverter", "storage battery", "generator inlet", "switched-neutral", "main transfer");
    assertThat(holding).isGreaterThan(10);
  }

  private static List<String> tags(List<Handle> handles) {
    return handles.stream().map(h -> h.part().tag()).toList();
  }
}
