package wattle.live;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/** A live page and requests of any sort for it, by one who has its token: each is answered, and never with a mistake of the server. */
public final class PageTarget implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final List<String> LINES = List.of("open breaker P/1", "open neutral of counter", "open service neutral", "lose main",
      "fault hot to ground at hall.lamp", "lift ground at hall.lamp leaking 5 mA", "loosen hot at hall.lamp by 1 ohm", "swap at hall.lamp",
      "hall.lamp draws 3 A", "hall.lamp on", "hall.lamp off", "open main P", "move hall to 7", "", "}", "trial x {", "\u0000", "draws");
  private static final List<String> WORDS = List.of("P", "hall", "1", "99999999999999999999", "-1", "NaN", "0", "kohm", "of", "at", "\"",
      "\u202e", "main", "breaker", "0.0000001", "A", "{", "//");

  private final LiveServer server;

  public PageTarget(Path plan) {
    server = new LiveServer(plan);
  }

  /** Sends one request and looks at its answer. */
  public void take(Random random) throws IOException {
    if (random.nextInt(6) == 0) {
      String[] path = {"", "live.js", "versions", "look", "unfold", "none", "%2e%2e/", "look?x=%00"};
      String method = List.of("GET", "HEAD", "PUT", "POST", "OPTIONS", "BREW").get(random.nextInt(6));
      String answer = server.raw(method + " " + server.address().getPath() + path[random.nextInt(path.length)] + " HTTP/1.1\r\nHost: "
          + server.address().getAuthority() + "\r\nContent-Length: " + (random.nextBoolean() ? 0 : 7)
          + "\r\nConnection: close\r\n\r\n"
          + "{}{}{}{");
      require(!answer.startsWith("HTTP/1.1 5") || answer.startsWith("HTTP/1.1 503"), answer);
    } else {
      String path = random.nextInt(4) == 0 ? "unfold" : "look";
      String body = body(random);
      HttpResponse<String> answer = server.post(path, body);
      require(answer.statusCode() < 500, path + " " + body + ": " + answer.statusCode() + " " + answer.body());
      boolean figures = !answer.body().contains("NaN") && !answer.body().contains("Infinity");
      require(figures || body.contains("NaN"), path + " " + body + ": a figure that is none");
    }
    require(server.complaints.isEmpty(), server.complaints.toString());
  }

  private static String body(Random random) {
    ObjectNode asked = JSON.createObjectNode();
    ArrayNode events = asked.putArray("events");
    for (int i = 0; i < random.nextInt(5); i++) {
      String line = LINES.get(random.nextInt(LINES.size()));
      if (random.nextBoolean()) {
        String[] words = line.split(" ");
        words[random.nextInt(words.length)] = WORDS.get(random.nextInt(WORDS.size()));
        line = String.join(" ", words);
      }
      events.add(line);
    }
    for (String number : List.of("width", "panelWidth", "look", "step", "figure")) {
      if (random.nextBoolean()) {
        asked.set(number, number(random));
      }
    }
    asked.put("panel", WORDS.get(random.nextInt(WORDS.size()))).put("branch", WORDS.get(random.nextInt(WORDS.size())));
    asked.put("trial", WORDS.get(random.nextInt(WORDS.size()))).put("everyRow", random.nextBoolean());
    if (random.nextInt(8) == 0) {
      asked.set("events", number(random));
    }
    String text = asked.toString();
    return random.nextInt(10) == 0 ? text.substring(0, random.nextInt(text.length() + 1)) : text;
  }

  private static JsonNode number(Random random) {
    return switch (random.nextInt(7)) {
      case 0 -> JSON.getNodeFactory().numberNode(1e308);
      case 1 -> JSON.getNodeFactory().numberNode(-5);
      case 2 -> JSON.getNodeFactory().textNode("NaN");
      case 3 -> JSON.nullNode();
      case 4 -> JSON.createArrayNode().add(3);
      case 5 -> JSON.getNodeFactory().numberNode(Long.MAX_VALUE);
      default -> JSON.getNodeFactory().numberNode(random.nextInt(2000));
    };
  }

  private static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new AssertionError(otherwise);
    }
  }

  @Override
  public void close() {
    server.close();
  }
}
