package wattle.bind;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.finding.Span;

/**
 * A cable, conductor or size as it is named in tables and comparisons: the words of the plan with the blanks that belong
 * between them, so that {@code 12 / 2NM-B} and {@code 12/2 NM-B} are one cable, bought together.
 */
final class WiringWords {
  private static final Pattern COMMENT = Pattern.compile("//[^\\r\\n]*");
  private static final Pattern TOKEN = Pattern
      .compile("[\\p{L}_][\\p{L}\\p{N}_]*(?:-[\\p{L}\\p{N}_]+)*|\\p{Nd}+(?:\\.\\p{Nd}+)?|[^\\s\\u00A0\\uFEFF]");

  private WiringWords() {}

  static String of(Span span) {
    StringBuilder words = new StringBuilder();
    boolean tight = true;
    Matcher token = TOKEN.matcher(COMMENT.matcher(span.text()).replaceAll(" "));
    while (token.find()) {
      String word = token.group();
      boolean sign = word.equals("/") || word.equals("-");
      words.append(tight || sign || word.equals(",") ? "" : " ").append(word);
      tight = sign;
    }
    return words.toString();
  }
}
