package wattle.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.read.SourceReader;

/** A fix stays only where it does what it says: its finding goes, and none comes. */
class MenderTest {
  private static Finding finding(Source source, String word, String replacement) {
    int at = source.text().indexOf(word);
    return Finding.error("word-" + word, "the word " + word)
        .at(source.span(at, at + word.length()), "")
        .fix(Fix.safe("write " + replacement, source.span(at, at + word.length()), replacement))
        .build();
  }

  /** Finds the words given, each with a fix. */
  private static Mender mender(String[]... words) {
    return new Mender(
        source -> {
          List<Finding> found = new ArrayList<>();
          for (String[] word : words) {
            if (source.text().contains(word[0])) {
              found.add(finding(source, word[0], word[1]));
            }
          }
          return found;
        },
        (found, before) -> found.rule().startsWith("word-hidden"),
        (fix, before, after) -> Optional.empty(),
        Set.of());
  }

  private static Mender.Mended mend(Mender mender, String text) {
    return mender.mend(new Source("house.wattle", text));
  }

  @Test
  void aFixThatTakesTwoFindingsAwayAndBringsOneIsRefused() {
    // Mending "left" removes "eft" as well and brings "right": fewer findings than before, and one of them new.
    Mender mender = mender(new String[]{"left", "right"}, new String[]{"eft", "x"}, new String[]{"right", "right"});
    Mender.Mended mended = mend(mender, "left");
    assertThat(mended.text()).doesNotContain("right");
    assertThat(mended.refused()).extracting(r -> r.finding().headline()).contains("the word left");
  }

  /** What the mistake had hidden is no work of its fix, which leaves the house as it is. */
  @Test
  void aFixThatBringsToLightWhatWasThereIsMade() {
    Mender.Mended mended = mend(mender(new String[]{"slip", "hidden"}, new String[]{"hidden", "hidden"}), "slip");
    assertThat(mended.text()).isEqualTo("hidden");
    assertThat(mended.left()).extracting(Finding::rule).containsExactly("word-hidden");
  }

  @Test
  void aFixThatLeavesItsFindingIsRefusedAndTheOthersGoOn() {
    Mender mender = mender(new String[]{"stays", "stays"}, new String[]{"goes", "gone"});
    Mender.Mended mended = mend(mender, "stays goes");
    assertThat(mended.text()).isEqualTo("stays gone");
    assertThat(mended.applied()).hasSize(1);
    assertThat(mended.refused()).hasSize(1);
    assertThat(mended.left()).hasSize(1);
  }

  /** Every broken plan: what is left was there before, and what was applied is gone. */
  @TestFactory
  Stream<DynamicTest> mendingBrokenPlansBringsNothingNew() {
    return Golden.plans("examples/broken").stream()
        .map(
            plan -> DynamicTest.dynamicTest(
                plan.toString(),
                () -> {
                  Compiler compiler = new Compiler(SourceReader.FROM_DISK);
                  Source source = SourceReader.FROM_DISK.read(plan, plan.toString());
                  List<Finding> before = compiler.compile(source, plan).findings();
                  Mender.Mended mended = new Mender(text -> compiler.compile(text, plan).findings(), (found, hidden) -> false,
                      (fix, one, other) -> Optional.empty(),
                      Set.of()).mend(source);
                  List<String> known = new ArrayList<>(before.stream().map(Finding::headline).toList());
                  mended.left().forEach(f -> assertThat(known.remove(f.headline())).as(f.headline()).isTrue());
                  assertThat(known).containsAll(mended.applied().stream().map(Finding::headline).toList());
                  assertThat(mended.left()).hasSizeLessThanOrEqualTo(before.size() - mended.applied().size());
                }));
  }
}
