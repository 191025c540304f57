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
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The one way in which JSON is written: indented, its members in the order in which they were put. */
public final class Json {
  private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private static final ObjectMapper LINES = new ObjectMapper();

  /** Lawful in JSON, but not on the terminal on which it is read: such characters are written by their number. */
  private static final Pattern HIDDEN = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}&&[^\n\t\r]]");

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

  /** Text of a document with its hidden characters written by their numbers. */
  static String visible(String json) {
    return HIDDEN.matcher(json).replaceAll(Json::number);
  }

  /** Writes values one after another, laid out like whole documents. */
  static JsonGenerator generator(Writer to) {
    try {
      return MAPPER.createGenerator(to).setPrettyPrinter(new DefaultPrettyPrinter());
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
  }

  private static String number(MatchResult hidden) {
    return hidden.group().chars().mapToObj(c -> String.format(Locale.ROOT, "\\\\u%04x", c)).collect(Collectors.joining());
  }

  private Json() {}
}
