package wattle.emit.media.text;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.UncheckedIOException;

/** The one way in which JSON is written: indented, its members in the order in which they were put. */
public final class Json {
  private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

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
      return MAPPER.writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("a tree in memory did not become text", e);
    }
  }

  private Json() {}
}
