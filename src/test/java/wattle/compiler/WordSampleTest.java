package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/** What {@code explain} shows of a word can be written: the plan with it has no error, and the word is in it. */
class WordSampleTest {
  private static final Path PATH = Path.of("sample.wattle");

  /** Words that no plan shows, each with the reason; of a kind of words all of them. */
  private static final Map<String, String> WITHOUT = Map.of(
      "limit", "a figure of the library that rules and calculations look up: no plan writes it",
      "word of a rule", "a file of rules has it: the reference shows it as the library has it",
      "word of a library", "a library has it: the reference shows it as the library has it",
      "trait of a box later", "later is of branches and slots, though a box may be");

  @Test
  void everySampleCanBeWritten() {
    List<Glossary.Entry> entries = Glossary.of(StandardLibrary.library(StandardLibrary.packNames()));
    TreeSet<String> without = entries.stream().filter(e -> WordSample.of(e).isEmpty())
        .map(e -> WITHOUT.containsKey(e.kind()) ? e.kind() : e.kind() + " " + e.word()).collect(Collectors.toCollection(TreeSet::new));
    assertThat(without).isEqualTo(new TreeSet<>(WITHOUT.keySet()));
    assertThat(entries).hasSizeGreaterThan(500);
    TreeSet<String> wrong = new TreeSet<>();
    for (Glossary.Entry entry : entries) {
      WordSample.of(entry).ifPresent(sample -> {
        String word = sample.text().contains(entry.word()) ? entry.word() : entry.word().replace('-', ' ');
        assertThat(sample.text()).as(entry.kind() + " " + entry.word()).contains(word);
        sample.text().lines().forEach(line -> assertThat(sample.plan()).contains(line));
        errors(sample.plan()).forEach(e -> wrong.add(entry.kind() + " " + entry.word() + ": " + e));
      });
    }
    assertThat(wrong).isEmpty();
  }

  private static List<String> errors(String plan) {
    Compilation structure = new Compiler(SourceReader.FROM_DISK).structure(new Source(PATH.toString(), plan), PATH);
    return java.util.stream.Stream
        .concat(structure.findings().stream().filter(f -> f.severity() == Severity.ERROR),
            wattle.trials.Expectations.check(structure.house(), structure.figures().trials()).stream()
                .filter(f -> f.rule().equals("expectation-unmeasured") || f.rule().equals("trial-impossible")))
        .map(Finding::headline).toList();
  }
}
