package wattle.finding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Makes one finding of those that tell one fact of several places: the same rule and weight, in the same words and figures but for the
 * names of the things. Where a figure differs, each is a fact of its own; so is each mistake of writing, which names no thing.
 */
public final class SameFact {
  private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}_]+(?:[./+-][\\p{L}\\p{N}_]+)*");

  /** What makes two findings the same fact; the words without names. */
  private record Key(String rule, Severity severity, Optional<Severity> ofNewWork, Optional<String> silenced, String headline,
      String reason) {}

  private SameFact() {}

  /**
   * Each fact once, with all of its places, where the first of them stood.
   *
   * @param names tells whether a word names a thing of the house, which may differ from one place to the other
   */
  public static List<Finding> once(List<Finding> findings, Predicate<String> names) {
    List<Finding> inOneWord = by(findings, f -> key(f, f.headline(), ""));
    // Most say no name but their own; the others have each word of theirs looked up.
    List<Finding> butForSubject = by(inOneWord, f -> key(f, withoutSubject(f, f.headline()), withoutSubject(f, f.reason())));
    Map<String, Long> ofRule = butForSubject.stream().collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
    return by(butForSubject, f -> ofRule.get(f.rule()) == 1
        ? new Object()
        : key(f, without(names, f.headline()), without(names, f.reason())));
  }

  private interface Grouping {
    Object of(Finding finding);
  }

  private static Key key(Finding finding, String headline, String reason) {
    return new Key(finding.rule(), finding.severity(), finding.ofNewWork(), finding.silenced(), headline, reason);
  }

  private static List<Finding> by(List<Finding> findings, Grouping grouping) {
    Map<Object, List<Finding>> facts = new LinkedHashMap<>();
    for (Finding finding : findings) {
      Object key = finding.subject().isPresent() ? grouping.of(finding) : new Object();
      facts.computeIfAbsent(key, k -> new ArrayList<>()).add(finding);
    }
    return facts.values().stream().map(SameFact::one).toList();
  }

  private static Finding one(List<Finding> same) {
    if (same.size() == 1) {
      return same.get(0);
    }
    List<Finding> each = same.stream().flatMap(f -> f.each().stream()).toList();
    return same.get(0).alsoAt(each.subList(1, each.size()));
  }

  /** A text without the name of the thing that it is about, where that stands as a word of its own. */
  private static String withoutSubject(Finding finding, String text) {
    String name = finding.subject().orElse("");
    int at = name.isEmpty() ? -1 : text.indexOf(name);
    if (at < 0) {
      return text;
    }
    StringBuilder rest = new StringBuilder(text.length());
    int from = 0;
    for (; at >= 0; at = text.indexOf(name, at + name.length())) {
      if (!goesOnBefore(text, at) && !goesOnBehind(text, at + name.length())) {
        rest.append(text, from, at).append('…');
        from = at + name.length();
      }
    }
    return rest.append(text, from, text.length()).toString();
  }

  private static boolean goesOnBefore(String text, int at) {
    return at > 0 && (isOfWord(text.charAt(at - 1)) || at > 1 && isJoint(text.charAt(at - 1)) && isOfWord(text.charAt(at - 2)));
  }

  private static boolean goesOnBehind(String text, int end) {
    int length = text.length();
    return end < length && (isOfWord(text.charAt(end)) || end + 1 < length && isJoint(text.charAt(end)) && isOfWord(text.charAt(end + 1)));
  }

  private static boolean isOfWord(char letter) {
    return Character.isLetterOrDigit(letter) || letter == '_';
  }

  private static boolean isJoint(char letter) {
    return "./+-".indexOf(letter) >= 0;
  }

  private static String without(Predicate<String> names, String text) {
    return NAME.matcher(text).replaceAll(word -> Matcher.quoteReplacement(names.test(word.group()) ? "…" : word.group()));
  }
}
