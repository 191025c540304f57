package wattle.emit.media.picture;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The part of CSS that a picture of ours uses: declarations, and rules selected by tag, by class or by both. Rules with
 * any other selector (a state, a child, a medium) are for the screen and leave paper alone.
 */
final class CssRules {
  private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/", Pattern.DOTALL);
  private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)\\}");
  private static final Pattern MEDIUM = Pattern.compile("@[^{};]*\\{(?:[^{}]*\\{[^{}]*\\})*[^{}]*\\}|@[^{};]*;");
  private static final Pattern SELECTOR = Pattern.compile("(\\*|[\\w-]+)?((?:\\.[\\w-]+)*)");

  private record Rule(String tag, List<String> classes, Map<String, String> declarations) {
    boolean selects(String elementTag, List<String> elementClasses) {
      return (tag.isEmpty() || tag.equals("*") || tag.equals(elementTag)) && elementClasses.containsAll(classes);
    }
  }

  private final List<Rule> rules = new ArrayList<>();

  /** Adds the rules of one style sheet after those known so far. */
  void add(String styleSheet) {
    String plain = MEDIUM.matcher(COMMENT.matcher(styleSheet).replaceAll(" ")).replaceAll(" ");
    Matcher found = RULE.matcher(plain);
    while (found.find()) {
      Map<String, String> declarations = declarations(found.group(2));
      for (String selector : found.group(1).split(",")) {
        Matcher parts = SELECTOR.matcher(selector.strip());
        if (parts.matches() && !selector.isBlank()) {
          List<String> classes = parts.group(2).isEmpty() ? List.of() : List.of(parts.group(2).substring(1).split("\\."));
          rules.add(new Rule(parts.group(1) == null ? "" : parts.group(1), classes, declarations));
        }
      }
    }
    rules.sort((a, b) -> Integer.compare(a.classes().size(), b.classes().size())); // stable: later rules win
  }

  /** The rules that are understood, as CSS; another reader need not cope with the rest. */
  String text() {
    StringBuilder css = new StringBuilder();
    for (Rule rule : rules) {
      css.append(rule.tag());
      rule.classes().forEach(name -> css.append('.').append(name));
      css.append('{');
      rule.declarations().forEach((name, value) -> css.append(name).append(':').append(value).append(';'));
      css.append("}\n");
    }
    return css.toString();
  }

  /** What the rules say about an element, the strongest declaration of each property. */
  Map<String, String> of(String tag, List<String> classes) {
    Map<String, String> all = new LinkedHashMap<>();
    rules.stream().filter(rule -> rule.selects(tag, classes)).forEach(rule -> all.putAll(rule.declarations()));
    return all;
  }

  /** The declarations of a {@code style} attribute or of a rule. */
  static Map<String, String> declarations(String text) {
    Map<String, String> found = new LinkedHashMap<>();
    for (String declaration : text.split(";")) {
      int colon = declaration.indexOf(':');
      if (colon > 0) {
        String value = declaration.substring(colon + 1).replace("!important", "").strip();
        found.put(declaration.substring(0, colon).strip(), value);
      }
    }
    return found;
  }
}
