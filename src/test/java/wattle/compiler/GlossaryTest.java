package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import wattle.library.StandardLibrary;

/** No word without its meaning, and no meaning of a word that there is not. */
class GlossaryTest {
  private static List<Glossary.Entry> entries() {
    return Glossary.of(StandardLibrary.library(StandardLibrary.packNames()));
  }

  @Test
  void everyWordHasAMeaning() {
    assertThat(entries()).hasSizeGreaterThan(400);
    assertThat(entries()).filteredOn(e -> e.meaning().isBlank()).extracting(e -> e.kind() + "|" + e.word()).isEmpty();
  }

  @Test
  void everyMeaningIsOfAWord() {
    Set<String> words = entries().stream().map(e -> e.kind() + "|" + e.word()).collect(Collectors.toSet());
    Set<String> meant = new TreeSet<>(Glossary.meanings().keySet());
    meant.removeAll(words);
    assertThat(meant).isEmpty();
  }

  @Test
  void everyMeaningIsASentence() {
    assertThat(entries()).allSatisfy(e -> assertThat(e.meaning()).as(e.word()).endsWith("."));
  }
}
