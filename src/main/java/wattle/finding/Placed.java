package wattle.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a part of a text has come into a house once more: by a placement of a pattern, or by a line that stands for several.
 *
 * @param place where that is written; inside a pattern, a span of a source that is placed itself
 * @param words what is so there, such as {@code placed here as flat1}
 * @param name what the placement is called in the house, such as {@code floor3.flat1}; empty for a line, which gives no name
 * @param pattern the name of the pattern, which within it means this placement; empty where there is none
 * @param locals names that the pattern gives
 * @param own names that what it makes has beside those that begin with its own
 * @param parameters words that stand for something else in each placement
 */
public record Placed(
    Span place, String words, String name, String pattern, Set<String> locals, Set<String> own, Set<String> parameters) {
  private static final Pattern NAMED = Pattern.compile("[\\p{L}\\p{N}_]+(?:[.-][\\p{L}\\p{N}_]+)*");

  public Placed {
    locals = Set.copyOf(locals);
    own = Set.copyOf(own);
    parameters = Set.copyOf(parameters);
  }

  /** This placement, the one that it stands in, and so on outwards. */
  public List<Placed> chain() {
    List<Placed> chain = new ArrayList<>();
    for (Optional<Placed> at = Optional.of(this); at.isPresent(); at = at.get().place.source().placed()) {
      chain.add(at.get());
    }
    return chain;
  }

  /**
   * A name of the house as it is written within the pattern.
   *
   * @return absent where it has no name there, since it belongs to a placement around this one or is this one's own
   */
  public Optional<String> local(String text) {
    String local = name.isEmpty() ? text : NAMED.matcher(text).replaceAll(word -> Matcher.quoteReplacement(within(word.group())));
    boolean foreign = chain().stream()
        .anyMatch(p -> !p.name.isEmpty() && !p.name.equals(pattern)
            && Pattern.compile(beginning(p.name) + "(?![\\p{L}\\p{N}_-])").matcher(local).find());
    return foreign ? Optional.empty() : Optional.of(local);
  }

  /** What begins with the name of the placement is one of the pattern's names, or stands in the room that has its own. */
  private String within(String word) {
    if (word.equals(name)) {
      return pattern;
    }
    if (!word.startsWith(name + ".")) {
      return word;
    }
    String rest = word.substring(name.length() + 1);
    int dot = rest.indexOf('.');
    return locals.contains(dot < 0 ? rest : rest.substring(0, dot)) ? rest : pattern + "." + rest;
  }

  private String commonly(String word) {
    return word.equals(name) ? "…" : word.startsWith(name + ".") ? word.substring(name.length() + 1) : word;
  }

  private static String beginning(String name) {
    return "(?<![\\p{L}\\p{N}_.-])" + Pattern.quote(name);
  }

  /** Whether a text of the pattern says something else in each placement. */
  public boolean differs(String text) {
    Matcher word = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}_-]*").matcher(text);
    while (word.find()) {
      if (parameters.contains(word.group())) {
        return true;
      }
    }
    return false;
  }

  /** A text with the names of this placement taken out, so that what is said of two of them can be told to be the same. */
  String common(String text) {
    String common = text;
    for (Placed each : chain()) {
      if (!each.name.isEmpty()) {
        common = NAMED.matcher(common).replaceAll(word -> Matcher.quoteReplacement(each.commonly(word.group())));
      }
      for (String word : each.own) {
        common = common.replace(word, "…");
      }
    }
    return common;
  }
}
