package wattle.emit.media.text;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.Locale;

/** The one way in which JSON is written: indented, its members in the order in which they were put. */
public final class Json {
  private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private static final ObjectMapper LINES = new ObjectMapper();

  /** An empty document that says what it is; the version grows when a reader would have to change. */
  public static ObjectNode document(String format, int version) {
    return object().put("format", format).put("version", version);
  }

  public static ObjectNode object() {
    return MAPPER.createObjectNode();
  }

  /** The whole document, ending in a line end. */
  public static String text(ObjectNode root) {
    try {
      return visible(MAPPER.writeValueAsString(root)) + "\n";
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("a tree in memory did not become text", e);
    }
  }

  /** One value in one line, without a line end. */
  public static String line(JsonNode value) {
    try {
      return visible(LINES.writeValueAsString(value));
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("a tree in memory did not become text", e);
    }
  }

  /** A value that {@link #line} wrote. */
  public static JsonNode read(String text) {
    try {
      return LINES.readTree(text);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("what was written as JSON cannot be read", e);
    }
  }

  /** Text of a document with its hidden characters, lawful in JSON but not on the terminal that shows it, written by their numbers. */
  static String visible(String json) {
    StringBuilder out = null;
    int plain = 0;
    for (int i = 0; i < json.length(); i++) {
      char c = json.charAt(i);
      if (c >= ' ' && c < 0x7F || c == '\n' || c == '\t' || c == '\r') {
        continue; // nearly all there is
      }
      int codePoint = json.codePointAt(i);
      int length = Character.charCount(codePoint);
      if (VisibleText.isHidden(codePoint)) {
        out = out == null ? new StringBuilder(json.length() + 64) : out;
        out.append(json, plain, i);
        for (char half : Character.toChars(codePoint)) {
          out.append(String.format(Locale.ROOT, "\\u%04x", (int) half));
        }
        plain = i + length;
      }
      i += length - 1;
    }
    return out == null ? json : out.append(json, plain, json.length()).toString();
  }

  /** Writes values one after another, laid out like whole documents. */
  static JsonGenerator generator(Writer to) {
    try {
      return MAPPER.createGenerator(to).setPrettyPrinter(new DefaultPrettyPrinter());
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
  }

  private Json() {}
}
