package wattle.emit.document.changes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import wattle.compare.Change;
import wattle.compare.Comparison;
import wattle.compare.Consequences;
import wattle.compare.Thing;
import wattle.finding.Finding;
import wattle.finding.Severity;

/** The first sentence of a comparison counts what differs, and stays away where few lines say it themselves. */
class HeadlineTest {
  private static Change added(Thing.Kind kind, String name) {
    return new Change.Added(new Thing(kind, name), List.of());
  }

  private static Change changed(Thing.Kind kind, String name, String property) {
    return new Change.Changed(new Thing(kind, name), new Thing(kind, name), property, "a", "b");
  }

  private static Comparison comparison(List<Change> changes, List<Finding> appeared, List<Finding> gone) {
    return new Comparison(changes, appeared, gone, new Consequences(List.of(), List.of()), Map.of());
  }

  private static Finding finding(String headline) {
    return Finding.of("box-overfilled", Severity.WARNING, headline).build();
  }

  @Test
  void thingsAndFindingsAreCounted() {
    Comparison both = comparison(
        List.of(
            added(Thing.Kind.BRANCH, "counter"), added(Thing.Kind.BRANCH, "island"),
            changed(Thing.Kind.BRANCH, "lights", "wiring"), changed(Thing.Kind.BRANCH, "lights", "label"),
            new Change.Removed(new Thing(Thing.Kind.DEVICE, "kitchen.stove"), List.of())),
        List.of(finding("box a is overfilled")), List.of(finding("box b is overfilled"), finding("box c is overfilled")));
    assertThat(Headline.of(both)).isEqualTo("2 branch circuits new, 1 changed; 1 device gone; 2 findings cured, 1 new.");
  }

  @Test
  void fewChangesSayItThemselves() {
    assertThat(Headline.of(comparison(List.of(added(Thing.Kind.BRANCH, "counter")), List.of(), List.of()))).isEmpty();
    assertThat(Headline.of(comparison(List.of(), List.of(), List.of()))).isEmpty();
  }
}
