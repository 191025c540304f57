package wattle.live;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a page wants to see.
 *
 * @param events lines of a trial
 * @param start a beginning that takes the place of the events: {@code nothing}, {@code stated}, or the name of a trial of the
 *     plan behind {@code trial }
 * @param panel whose front is shown
 * @param branch that is drawn
 * @param place box of the branch whose controls are shown
 * @param width of the picture of the branch in pixels
 * @param panelWidth of the front of the panel
 * @param everyRow whether tables show all their rows
 */
record Asked(
    List<String> events, Optional<String> start, Optional<String> panel, Optional<String> branch, Optional<String> place,
    double width, double panelWidth, boolean everyRow) {
  static final int MOST_EVENTS = 2000;
  private static final int LONGEST_LINE = 1000;
  private static final double NARROWEST = 360;
  private static final double WIDEST = 1500;
  private static final ObjectMapper JSON = new ObjectMapper();

  Asked {
    events = List.copyOf(events);
  }

  /** A request that is not understood; the message says what was expected. */
  static final class Malformed extends Exception {
    private static final long serialVersionUID = 1;

    Malformed(String message) {
      super(message);
    }
  }

  static Asked of(JsonNode root) throws Malformed {
    List<String> events = new ArrayList<>();
    JsonNode lines = root.path("events");
    if (!lines.isMissingNode() && !lines.isArray() || lines.size() > MOST_EVENTS) {
      throw new Malformed("events must be a list of at most " + MOST_EVENTS + " lines");
    }
    for (JsonNode line : lines) {
      if (!line.isTextual() || line.asText().length() > LONGEST_LINE) {
        throw new Malformed("an event must be a text of at most " + LONGEST_LINE + " characters");
      }
      events.add(line.asText());
    }
    return new Asked(
        events, text(root, "start"), text(root, "panel"), text(root, "branch"), text(root, "place"),
        width(root, "width"), width(root, "panelWidth"), root.path("everyRow").asBoolean(false));
  }

  private static double width(JsonNode root, String member) {
    double asked = root.path(member).isNumber() ? root.path(member).asDouble() : WIDEST;
    return Double.isFinite(asked) ? Math.max(NARROWEST, Math.min(WIDEST, asked)) : WIDEST;
  }

  /** The object that a body holds. */
  static JsonNode object(byte[] body) throws Malformed {
    try {
      JsonNode root = JSON.readTree(body);
      if (root == null || !root.isObject()) {
        throw new Malformed("an object in JSON is expected");
      }
      return root;
    } catch (JsonProcessingException e) {
      throw new Malformed("the body is not JSON: line " + (e.getLocation() == null ? "?" : e.getLocation().getLineNr()));
    } catch (java.io.IOException e) {
      throw new Malformed("the body cannot be read as JSON");
    }
  }

  private static Optional<String> text(JsonNode root, String member) {
    JsonNode node = root.path(member);
    return node.isTextual() && !node.asText().isEmpty() ? Optional.of(node.asText()) : Optional.empty();
  }
}
