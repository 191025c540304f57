package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import wattle.bind.NotationWords;
import wattle.golden.Golden;
import wattle.library.StandardLibrary;
import wattle.syntax.grammar.WattleLexer;

/**
 * {@code docs/reference.md} is made from the grammar, the lists that binding reads by and the library. Examples of plans are those that
 * {@link WordSampleTest} compiles; examples of rules and libraries are lines of the library, which the build compiles.
 */
class ReferencePageTest {
  private static final String HEAD = """
      # Reference

      Every word that can be written in a plan, by its place, with an example; then the words of rules and libraries, and the limits and
      units. `wattle explain WORD` shows one of them, `wattle explain --words` lists them all. How the words work together is described in
      [grammar/README.md](../grammar/README.md), what rules may say in [stdlib/README.md](../stdlib/README.md).

      This page is made from the grammar and the library. `mvn test -Dtest=ReferencePageTest -Dgolden=write` makes it anew.
      """;

  private static List<Glossary.Entry> entries() {
    return Glossary.of(StandardLibrary.library(StandardLibrary.packNames()));
  }

  @Test
  void thePageIsUpToDate() throws IOException {
    Map<String, List<Glossary.Entry>> kinds = new LinkedHashMap<>();
    kinds.put(NotationWords.STATEMENT, new ArrayList<>());
    entries().forEach(e -> kinds.computeIfAbsent(e.kind(), k -> new ArrayList<>()).add(e));
    List<String> library = libraryLines();
    StringBuilder page = new StringBuilder(HEAD).append('\n');
    kinds.keySet()
        .forEach(k -> page.append("- [").append(title(k)).append("](#").append(title(k).toLowerCase(Locale.ROOT).replace(' ', '-'))
            .append(")\n"));
    kinds.forEach((kind, words) -> {
      page.append("\n## ").append(title(kind)).append("\n\n");
      boolean examples = !kind.equals("limit");
      page.append(examples ? "| word | meaning | example |\n| --- | --- | --- |\n" : "| word | meaning |\n| --- | --- |\n");
      words.forEach(w -> page.append("| `").append(w.word()).append("` | ").append(w.meaning().replace("|", "\\|")).append(" |")
          .append(examples ? " " + code(example(w, library)) + " |" : "").append('\n'));
    });
    Golden.check(Path.of("docs/reference.md"), page.toString());
  }

  private static String title(String kind) {
    String many = kind.equals("status") ? kind : kind.replaceFirst("^(grounding electrode|\\w+)", "$1s");
    return many.substring(0, 1).toUpperCase(Locale.ROOT) + many.substring(1);
  }

  private static String code(String text) {
    return text.lines().map(String::strip).map(l -> "`" + l.replace("|", "\\|") + "`").collect(Collectors.joining("<br>"));
  }

  private static String example(Glossary.Entry entry, List<String> library) {
    if (Set.of(NotationWords.OF_A_RULE, NotationWords.OF_A_LIBRARY).contains(entry.kind())) {
      Pattern whole = Pattern.compile("(?<![\\w.-])" + Pattern.quote(entry.word()) + "(?![\\w-])");
      Pattern begins = Pattern.compile("^" + Pattern.quote(entry.word()) + "(?![\\w-])");
      boolean ofRule = entry.kind().equals(NotationWords.OF_A_RULE);
      List<String> fitting = library.stream().filter(l -> ofRule != isOfLibrary(l))
          .filter(l -> whole.matcher(l.replaceAll("\"[^\"]*\"", "\"\"")).find()).toList();
      Optional<String> line = fitting.stream().filter(l -> begins.matcher(l).find()).findFirst().or(() -> fitting.stream().findFirst());
      assertThat(line).as(entry.kind() + " " + entry.word()).isPresent();
      return line.get();
    }
    Optional<WordSample> sample = WordSample.of(entry);
    return sample.map(WordSample::text).orElse("");
  }

  private static boolean isOfLibrary(String line) {
    return line.matches("(pack|part|cable|table|columns|limit|source) .*|.* from memory");
  }

  /** Lines of the library that are neither comments nor within the sample of a rule. */
  private static List<String> libraryLines() throws IOException {
    List<String> lines = new ArrayList<>();
    List<Path> files = new ArrayList<>(Golden.plans("stdlib"));
    files.add(Path.of("docs/handbook/plans/local.wattle"));
    for (Path file : files) {
      int depth = 0;
      for (String line : Files.readAllLines(file)) {
        int before = depth;
        depth += count(line, '{') - count(line, '}');
        boolean opensSample = line.strip().matches("(accept|reject|exception).*\\{");
        if (before <= 1 && !line.isBlank() && !line.startsWith("//") && !line.strip().equals("}")) {
          lines.add(line.strip() + (opensSample ? " … }" : ""));
        }
      }
    }
    return lines;
  }

  private static int count(String line, char sign) {
    String bare = line.replaceAll("\"[^\"]*\"", "").replaceAll("//.*", "");
    return (int) bare.chars().filter(c -> c == sign).count();
  }

  /** No word that the grammar writes out is left out. */
  @Test
  void everyWordOfTheGrammarIsThere() {
    Set<String> known = entries().stream().flatMap(e -> java.util.Arrays.stream(e.word().split("[ -]|(?<=.)(?=.{99})")))
        .collect(Collectors.toSet());
    entries().forEach(e -> known.add(e.word()));
    TreeSet<String> left = IntStream.rangeClosed(1, WattleLexer.VOCABULARY.getMaxTokenType())
        .mapToObj(WattleLexer.VOCABULARY::getLiteralName)
        .filter(l -> l != null && Character.isLetter(l.charAt(1))).map(l -> l.substring(1, l.length() - 1)).filter(l -> !known.contains(l))
        .collect(Collectors.toCollection(TreeSet::new));
    assertThat(left).isEmpty();
  }
}
