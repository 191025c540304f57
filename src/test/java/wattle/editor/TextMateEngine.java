package wattle.editor;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jcodings.specific.UTF8Encoding;
import org.joni.Matcher;
import org.joni.Option;
import org.joni.Regex;

/**
 * Applies a TextMate grammar of plain {@code match} patterns as editors do: line by line, from where the last match ended
 * the pattern that matches earliest, and of several there the first. Regular expressions are Oniguruma's.
 */
final class TextMateEngine {
  private record Rule(String scope, Regex regex) {}

  /** A classed piece of a line; {@code start} in UTF-8 bytes of the whole text. */
  record Piece(int start, String text, String scope) {}

  private final List<Rule> rules = new ArrayList<>();

  TextMateEngine(Path file) throws IOException {
    for (JsonNode pattern : new ObjectMapper().readTree(file.toFile()).get("patterns")) {
      byte[] match = pattern.get("match").asText().getBytes(StandardCharsets.UTF_8);
      rules.add(new Rule(pattern.get("name").asText(), new Regex(match, 0, match.length, Option.NONE, UTF8Encoding.INSTANCE)));
    }
  }

  List<Piece> pieces(String text) {
    List<Piece> pieces = new ArrayList<>();
    int start = 0;
    for (String line : text.split("(?<=\n)|(?<=\r)(?!\n)", -1)) {
      byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
      line(bytes, start, pieces);
      start += bytes.length;
    }
    return pieces;
  }

  private void line(byte[] bytes, int start, List<Piece> pieces) {
    int at = 0;
    while (at < bytes.length) {
      int from = Integer.MAX_VALUE;
      int to = 0;
      String scope = "";
      for (Rule rule : rules) {
        Matcher matcher = rule.regex.matcher(bytes);
        if (matcher.search(at, bytes.length, Option.DEFAULT) >= 0 && matcher.getBegin() < from) {
          from = matcher.getBegin();
          to = matcher.getEnd();
          scope = rule.scope;
        }
      }
      if (from == Integer.MAX_VALUE) {
        return;
      }
      pieces.add(new Piece(start + from, new String(bytes, from, to - from, StandardCharsets.UTF_8), scope));
      at = to;
    }
  }
}
