package wattle.lockout;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import wattle.bind.Binder;
import wattle.bind.SourceReader;
import wattle.compiler.Compiler;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.House;

/**
 * The handles of a sheet, against a walk over the copper: with exactly them open no source reaches any conductor of the
 * place, and with any one of them closed again some source does.
 */
class LockoutWalkTest {
  private static final Compiler COMPILER = new Compiler(SourceReader.FROM_DISK);

  /** Bound and not judged: that a plan is whole matters here, and not what a code says of it. */
  private static House bound(String text) {
    Checked<Binder.Bound> bound = Binder.bind(new Source("random.wattle", text), Path.of("random.wattle"), SourceReader.FROM_DISK);
    // Two breakers on one shared neutral are forbidden in new work, and are just what is met in old houses.
    assertThat(bound.findings().stream().filter(f -> f.severity() == Severity.ERROR).map(Finding::rule).filter(r -> !r.equals("shared-neutral-two-breakers")))
        .as(text).isEmpty();
    return bound.value().house();
  }

  private static void assertIsolates(House house, Place place) {
    Lockout lockout = Lockout.of(house, place);
    Set<Handle.Part> handles = lockout.handles().stream().map(Handle::part).collect(Collectors.toSet());
    for (String box : place.boxes()) {
      assertThat(LiveWalk.liveEnds(house, handles, box)).as("live in %s with %s open", box, handles).isEmpty();
    }
    for (Handle.Part closed : handles) {
      Set<Handle.Part> others = new HashSet<>(handles);
      others.remove(closed);
      boolean live = place.boxes().stream().anyMatch(box -> !LiveWalk.liveEnds(house, others, box).isEmpty());
      assertThat(live).as("%s is needless for %s", closed.tag(), place.text()).isTrue();
    }
  }

  private static void assertAllPlacesIsolate(House house) {
    house.boxes().keySet().forEach(b -> assertIsolates(house, new Place.AtBox(b)));
    house.branches().keySet().forEach(b -> Places.named(house, "branch", b).forEach(p -> assertIsolates(house, p)));
    house.rooms().keySet().forEach(r -> Places.named(house, "room", r).forEach(p -> assertIsolates(house, p)));
  }

  @Property(tries = 300)
  void randomHousesAreIsolated(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    assertAllPlacesIsolate(bound(RandomHouse.plan(seed)));
  }

  @Test
  void theExamplesAreIsolated() throws SourceReader.Unreadable {
    for (String example : List.of("examples/alder-court/house.wattle", "examples/cottage/house.wattle")) {
      House house = COMPILER.compile(Path.of(example)).house();
      assertThat(house.boxes()).hasSizeGreaterThan(5);
      assertAllPlacesIsolate(house);
    }
  }

  @Test
  void theWalkSeesWhatIsLeftClosed() {
    House house = bound(RandomHouse.plan(1));
    String box = house.boxes().keySet().iterator().next();
    assertThat(LiveWalk.liveEnds(house, Set.of(), box)).isNotEmpty();
  }
}
