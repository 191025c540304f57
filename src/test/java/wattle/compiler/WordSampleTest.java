package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/** What {@code explain} shows of a word can be written: the plan with it has no error of structure, and the word is in it. */
class WordSampleTest {
  private static final Path PATH = Path.of("sample.wattle");
  private static final Set<String> KINDS = Set.of("kind of room", "grounding electrode", "place of a run", "raceway", "place of a device",
      "trait of a box", "trait of a device", "use of a branch", "status");

  @Test
  void everySampleCanBeWritten() {
    List<Glossary.Entry> entries = Glossary.of(StandardLibrary.library(StandardLibrary.packNames())).stream()
        .filter(e -> KINDS.contains(e.kind())).toList();
    List<String> without = entries.stream().filter(e -> WordSample.of(e).isEmpty()).map(Glossary.Entry::word).toList();
    assertThat(without).as("later is of branches and slots, though a box may be").containsExactly("later");
    assertThat(entries).hasSizeGreaterThan(190);
    for (Glossary.Entry entry : entries) {
      WordSample.of(entry).ifPresent(sample -> {
        assertThat(sample.text()).contains(entry.word());
        assertThat(sample.plan()).contains(sample.text());
        assertThat(errors(sample.plan())).as(entry.kind() + " " + entry.word()).isEmpty();
      });
    }
  }

  private static List<String> errors(String plan) {
    return new Compiler(SourceReader.FROM_DISK).structure(new Source(PATH.toString(), plan), PATH).findings().stream()
        .filter(f -> f.severity() == Severity.ERROR).map(Finding::headline).toList();
  }
}
