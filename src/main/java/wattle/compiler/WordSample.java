package wattle.compiler;

import java.util.Optional;

/**
 * A word as it stands in a plan. {@code word-samples.txt} has for a kind of words a text that {@code structure-sample.wattle} has once, the
 * text with the word in it that may stand there instead, and which words of the kind it is for, as a regular expression.
 *
 * @param plan the whole plan with the word in it
 * @param text the part of it that has the word
 */
public record WordSample(String plan, String text) {
  /** Of a word of a kind, as the glossary names both; absent where there is none. */
  public static Optional<WordSample> of(Glossary.Entry entry) {
    return BuildText.of("word-samples.txt").lines().map(l -> l.split("\\|", -1))
        .filter(l -> l[0].equals(entry.kind()) && entry.word().matches(l[3]))
        .findFirst()
        .map(l -> {
          String text = l[2].replace("{word}", entry.word());
          return new WordSample(BuildText.of("structure-sample.wattle").replace(l[1], text),
              text.strip().replaceFirst("^\\{ (.*) \\}$", "$1").replaceFirst(" \\{$|^([^{]*) \\}$", "$1"));
        });
  }
}
