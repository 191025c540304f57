package wattle.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import wattle.compare.Description;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Formatter;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A plan with patterns is the plan that has each placement written out. */
class WrittenOutTest {
  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("tower.wattle", text), Path.of("tower.wattle"));
  }

  private static List<String> house(Compilation plan) {
    return Description.of(plan.house()).entrySet().stream().map(e -> Tower.named(e.getKey() + " " + e.getValue())).sorted().toList();
  }

  private static Set<String> rules(Compilation plan) {
    return plan.findings().stream().map(f -> f.severity() + " " + f.rule()).collect(Collectors.toCollection(TreeSet::new));
  }

  @Property(tries = 40)
  void theHouseIsTheSame(@ForAll long seed) {
    Tower tower = new Tower(seed);
    Compilation patterns = compile(tower.withPatterns());
    Compilation written = compile(tower.writtenOut());
    assertThat(house(patterns)).as(tower.withPatterns()).isEqualTo(house(written));
    if (patterns.findings().stream().anyMatch(f -> f.rule().equals("kind-unknown"))) {
      // A mistake that is given to a pattern may leave more in doubt than one that stands where it counts, and never less.
      assertThat(rules(written)).containsAll(rules(patterns));
    } else {
      assertThat(rules(patterns)).isEqualTo(rules(written));
    }
    Set<String> headlines = written.findings().stream().map(f -> f.headline()).collect(Collectors.toSet());
    assertThat(patterns.findings()).allSatisfy(f -> assertThat(headlines).contains(Tower.named(f.headline())));
  }

  /** Every finding of a placement points at the pattern and names a placement beside it. */
  @Property(tries = 20)
  void whatIsFoundStandsInTheText(@ForAll long seed) {
    String text = new Tower(seed).withPatterns();
    assertThat(compile(text).findings())
        .allSatisfy(f -> assertThat(f.place().orElseThrow().span().source().text()).isSameAs(text))
        .allSatisfy(f -> assertThat(f.place().orElseThrow().span().source().placed()).isEmpty());
  }

  @Property(tries = 20)
  void tidiedItIsTheSameHouse(@ForAll long seed) {
    String text = new Tower(seed).withPatterns();
    String once = Formatter.format(new Source("tower.wattle", text)).value();
    assertThat(once).isNotEqualTo(text);
    assertThat(Formatter.format(new Source("tower.wattle", once)).value()).isEqualTo(once);
    assertThat(house(compile(once))).isEqualTo(house(compile(text)));
  }
}
