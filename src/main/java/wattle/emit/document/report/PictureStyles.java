package wattle.emit.document.report;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How the shapes of a page's pictures look, said once for all that look alike: a report has ten thousand shapes and some hundred looks,
 * and half of a picture's text is how its shapes look.
 */
final class PictureStyles {
  private static final Pattern TAG = Pattern.compile("<(line|rect|circle|path|text|polygon|polyline|g)((?: [\\w-]+=\"[^\"]*\")+)");
  private static final Pattern ATTRIBUTE = Pattern.compile(" ([\\w-]+)=\"([^\"]*)\"");

  private static final Pattern FINE = Pattern.compile("(?<![\\w.])\\d+\\.\\d\\d+|(?<=[A-Za-z])\\d+\\.\\d\\d+");

  /** Attributes that mean the same as the property of that name. */
  private static final Set<String> LOOKS = Set.of(
      "fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linejoin", "stroke-linecap", "font-size", "font-weight", "font-style",
      "text-anchor");

  private final Map<String, String> names = new LinkedHashMap<>();

  /** A picture whose shapes bear names of looks. */
  String shared(String svg) {
    Matcher tag = TAG.matcher(svg);
    StringBuilder out = new StringBuilder(svg.length());
    while (tag.find()) {
      StringBuilder kept = new StringBuilder();
      StringBuilder looks = new StringBuilder();
      Matcher attribute = ATTRIBUTE.matcher(tag.group(2));
      while (attribute.find()) {
        if (LOOKS.contains(attribute.group(1))) {
          String unit = attribute.group(1).equals("font-size") ? "px" : "";
          looks.append(attribute.group(1)).append(':').append(attribute.group(2)).append(unit).append(';');
        } else {
          kept.append(rounded(attribute.group()));
        }
      }
      String name = looks.isEmpty() ? "" : " class=\"" + names.computeIfAbsent(looks.toString(), l -> "k" + names.size()) + "\"";
      tag.appendReplacement(out, Matcher.quoteReplacement("<" + tag.group(1) + kept + name));
    }
    return tag.appendTail(out).toString();
  }

  /** Places to a tenth of a pixel: what was equal stays so, and nobody sees less. */
  private static String rounded(String attribute) {
    Matcher fine = FINE.matcher(attribute);
    return fine.find() ? fine.replaceAll(m -> tenth(m.group())) : attribute;
  }

  private static String tenth(String number) {
    long tenths = Math.round(Double.parseDouble(number) * 10);
    return tenths % 10 == 0 ? Long.toString(tenths / 10) : tenths / 10 + "." + tenths % 10;
  }

  /** The looks by their names. */
  String css() {
    StringBuilder out = new StringBuilder();
    names.forEach((looks, name) -> out.append('.').append(name).append('{').append(looks).append("}\n"));
    return out.toString();
  }
}
