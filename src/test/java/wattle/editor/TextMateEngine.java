package wattle.editor;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jcodings.specific.UTF8Encoding;
import org.joni.Matcher;
import org.joni.Option;
import org.joni.Regex;

/**
 * Applies a TextMate grammar as editors do: line by line, from where the last match ended the pattern that matches earliest, and of
 * several there the first; captures have scopes of their own, and what is between {@code begin} and {@code end} has patterns of its
 * own. No pattern of ours goes on over the end of a line. Regular expressions are Oniguruma's.
 */
final class TextMateEngine {
  /** The patterns that apply at a place, and what ends them; the outermost have no end. */
  private record Context(String scope, Regex end, List<Rule> rules) {}

  private record Rule(String scope, Regex regex, Map<Integer, String> captures, Context within) {}

  private final Context whole;

  TextMateEngine(Path file) throws IOException {
    whole = new Context("", null, rules(new ObjectMapper().readTree(file.toFile()).get("patterns")));
  }

  private static List<Rule> rules(JsonNode patterns) {
    List<Rule> rules = new ArrayList<>();
    for (JsonNode pattern : patterns) {
      Map<Integer, String> captures = new LinkedHashMap<>();
      JsonNode named = pattern.path("captures");
      named.fieldNames().forEachRemaining(n -> captures.put(Integer.parseInt(n), named.get(n).get("name").asText()));
      String scope = pattern.path("name").asText("");
      rules.add(pattern.has("begin")
          ? new Rule(scope, regex(pattern, "begin"), captures,
              new Context(scope, regex(pattern, "end"), rules(pattern.get("patterns"))))
          : new Rule(scope, regex(pattern, "match"), captures, null));
    }
    return rules;
  }

  private static Regex regex(JsonNode pattern, String field) {
    byte[] text = pattern.get(field).asText().getBytes(StandardCharsets.UTF_8);
    return new Regex(text, 0, text.length, Option.NONE, UTF8Encoding.INSTANCE);
  }

  /** The scope of each character of a text; empty for one that has none. */
  String[] scopes(String text) {
    String[] scopes = new String[text.length()];
    Arrays.fill(scopes, "");
    int start = 0;
    for (String line : text.split("(?<=\n)|(?<=\r)(?!\n)", -1)) {
      line(line, start, scopes);
      start += line.length();
    }
    return scopes;
  }

  private void line(String line, int start, String[] scopes) {
    byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
    int[] places = new int[bytes.length + 1];
    for (int at = 0, b = 0; at < line.length(); at += Character.charCount(line.codePointAt(at))) {
      int end = at + Character.charCount(line.codePointAt(at));
      int length = line.substring(at, end).getBytes(StandardCharsets.UTF_8).length;
      Arrays.fill(places, b, b + length, start + at);
      places[b + length] = start + end;
      b += length;
    }
    String[] ofBytes = new String[bytes.length];
    Arrays.fill(ofBytes, "");
    context(whole, bytes, 0, ofBytes);
    for (int b = 0; b < bytes.length; b++) {
      for (int at = places[b]; at < Math.max(places[b] + 1, places[b + 1]); at++) {
        scopes[at] = ofBytes[b];
      }
    }
  }

  /** Where the context ended, or the line. */
  private int context(Context context, byte[] bytes, int from, String[] scopes) {
    int at = from;
    while (true) {
      Matcher end = context.end == null ? null : found(context.end, bytes, at);
      Rule rule = null;
      Matcher first = null;
      for (Rule each : context.rules) {
        Matcher matcher = found(each.regex, bytes, at);
        if (matcher != null && (first == null || matcher.getBegin() < first.getBegin())) {
          first = matcher;
          rule = each;
        }
      }
      if (end != null && (first == null || end.getBegin() <= first.getBegin())) {
        fill(scopes, at, end.getEnd(), context.scope);
        return end.getEnd();
      }
      if (first == null) {
        fill(scopes, at, bytes.length, context.scope);
        return bytes.length;
      }
      fill(scopes, at, first.getBegin(), context.scope);
      fill(scopes, first.getBegin(), first.getEnd(), rule.scope.isEmpty() ? context.scope : rule.scope);
      for (Map.Entry<Integer, String> capture : rule.captures.entrySet()) {
        int number = capture.getKey();
        if (first.getRegion() != null && number < first.getRegion().getNumRegs() && first.getRegion().getBeg(number) >= 0) {
          fill(scopes, first.getRegion().getBeg(number), first.getRegion().getEnd(number), capture.getValue());
        }
      }
      int next = rule.within == null ? first.getEnd() : context(rule.within, bytes, first.getEnd(), scopes);
      if (next == at && first.getEnd() == at && rule.within == null) {
        throw new AssertionError("a pattern matches nothing, for ever: " + rule.scope);
      }
      at = next;
    }
  }

  private static Matcher found(Regex regex, byte[] bytes, int from) {
    Matcher matcher = regex.matcher(bytes);
    return matcher.search(from, bytes.length, Option.DEFAULT) >= 0 ? matcher : null;
  }

  private static void fill(String[] scopes, int from, int to, String scope) {
    if (!scope.isEmpty() && from < to) {
      Arrays.fill(scopes, from, to, scope);
    }
  }
}
