package wattle.compiler;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import wattle.bind.NotationWords;

/**
 * A word as it stands in a plan. {@code word-samples.txt} has for a kind of words a text that {@code structure-sample.wattle} has once, the
 * text with the word in it that may stand there instead, which words of the kind it is for, as regular expressions with a comma between
 * them, and then pairs of texts: what else the plan has, and what it has instead where such a word is in it.
 *
 * @param plan the whole plan with the word in it
 * @param text the part of it that has the word
 */
public record WordSample(String plan, String text) {
  /** Of a word of a kind, as the glossary names both; absent where there is none. */
  public static Optional<WordSample> of(Glossary.Entry entry) {
    return BuildText.of("word-samples.txt").lines().map(l -> l.replace("\\n", "\n").split("\\|", -1))
        .filter(l -> l[0].equals(entry.kind()) && Arrays.stream(l[3].split(", ")).anyMatch(entry.word()::matches))
        .findFirst()
        .map(l -> {
          String written = l[2].replace("{word}", entry.word()).replace("{words}", entry.word().replace('-', ' '));
          String shown = l[2].contains("{words}") ? entry.word().replace('-', ' ') : entry.word();
          return new WordSample(plan(l).replace(l[1], written), shown(written, shown));
        })
        .or(() -> asItIs(entry));
  }

  /** A word of statements that the plan has already. */
  private static Optional<WordSample> asItIs(Glossary.Entry entry) {
    String plan = BuildText.of("structure-sample.wattle").replaceFirst("^//.*\n", "");
    String shown = entry.kind().equals(NotationWords.STATEMENT) ? shown(plan, entry.word()) : "";
    return shown.isEmpty() ? Optional.empty() : Optional.of(new WordSample(plan, shown.lines().findFirst().orElseThrow()));
  }

  private static String plan(String[] sample) {
    return SampleTexts.with(BuildText.of("structure-sample.wattle"), sample, 4);
  }

  /** The lines that have the word in them, without the braces that open or close around it. */
  private static String shown(String written, String word) {
    Pattern whole = Pattern.compile("(?<!\\w|[a-z]-)" + Pattern.quote(word) + "(?!\\w|-\\w)");
    return written.lines().filter(l -> whole.matcher(l).find())
        .map(l -> l.strip().replaceFirst("^\\{ (.*) \\}$", "$1").replaceFirst(" \\{$|^([^{]*) \\}$", "$1"))
        .map(WordSample::closed).collect(Collectors.joining("\n"));
  }

  /** Without braces that close what another line opens. */
  private static String closed(String line) {
    String shown = line;
    while (shown.endsWith(" }") && shown.chars().filter(c -> c == '}').count() > shown.chars().filter(c -> c == '{').count()) {
      shown = shown.substring(0, shown.length() - 2).stripTrailing();
    }
    return shown;
  }
}
