package wattle.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import wattle.edit.Formatter;
import wattle.emit.document.changes.Changes;
import wattle.finding.Source;

/** What holds of any two revisions, whole or under work. */
class ComparisonProperties {
  /** Named so that a failure shows what differs in words, before the records are held against each other. */
  private static void assertMirrored(Comparison there, Comparison back) {
    assertThat(Changes.text(back)).isEqualTo(Changes.text(there.mirrored()));
    assertThat(back).isEqualTo(there.mirrored());
  }

  @Property(tries = 100)
  void theOtherWayRoundMirrors(@ForAll long seed) {
    RevisedPlans plans = new RevisedPlans(seed);
    RevisedPlans.Text any = plans.any();
    Plan before = plans.revised(any).plan();
    Plan after = plans.revised(any).plan();
    assertMirrored(Comparison.of(before, after), Comparison.of(after, before));
  }

  @Property(tries = 40)
  void twoHousesMirrorToo(@ForAll long seed) {
    RevisedPlans plans = new RevisedPlans(seed);
    Plan before = plans.any().plan();
    Plan after = plans.any().plan();
    assertMirrored(Comparison.of(before, after), Comparison.of(after, before));
  }

  @Property(tries = 100)
  void aPlanDoesNotDifferFromItsTidiedSelf(@ForAll long seed) {
    RevisedPlans plans = new RevisedPlans(seed);
    RevisedPlans.Text text = plans.revised(plans.any());
    String tidied = Formatter.format(new Source("house.wattle", text.text())).value();
    Comparison comparison = Comparison.of(text.plan(), text.with(tidied).plan());
    assertThat(Changes.text(comparison)).isEmpty();
    assertThat(comparison.isEmpty()).isTrue();
  }

  /** A thing under another name is renamed, and nothing else has happened: no figure moves by it. */
  @Property(tries = 60)
  void aRenameIsARename(@ForAll long seed) {
    RevisedPlans plans = new RevisedPlans(seed);
    RevisedPlans.Text text = plans.any();
    String renamed = plans.renamed(text.text());
    Plan before = text.plan();
    Plan after = text.with(renamed).plan();
    // A name that is also a kind of room or device changes what things are; that is no mere renaming.
    Assume
        .that(before.whole() && after.whole() && before.findings().size() == after.findings().size() && kinds(before).equals(kinds(after)));
    Comparison comparison = Comparison.of(before, after);
    assertThat(comparison.changes()).allSatisfy(c -> assertThat(c).as(renamed).isInstanceOf(Change.Renamed.class));
    assertThat(comparison.consequences().figures()).isEmpty();
    assertThat(comparison.appeared()).isEmpty();
  }

  private static List<String> kinds(Plan plan) {
    List<String> kinds = new ArrayList<>();
    plan.house().rooms().values().forEach(r -> kinds.add(r.kind().toString()));
    plan.house().devices().values().forEach(d -> kinds.add(d.kind().name() + d.location() + d.traits()));
    return kinds;
  }
}
