package wattle.live;

import com.fasterxml.jackson.databind.JsonNode;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Answers requests: the page and its two files, looks, opened figures, and the stream of versions. There is nothing else. */
final class Requests implements HttpHandler {
  static final int MOST_BYTES = 256 * 1024;

  private final Gate gate;
  private final Supplier<Version> latest;
  private final Listeners listeners;
  private final Consumer<String> complain;
  private final Looks looks = new Looks();

  /** @param complain told, in one line, of an internal error */
  Requests(Gate gate, Supplier<Version> latest, Listeners listeners, Consumer<String> complain) {
    this.gate = gate;
    this.latest = latest;
    this.listeners = listeners;
    this.complain = complain;
  }

  @Override
  public void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      Optional<String> path = gate.admitted(exchange.getRequestURI(), exchange.getRequestHeaders());
      if (path.isEmpty()) {
        Answer.refusal(403, "Not allowed: open the address that wattle live printed.").send(exchange);
      } else if (path.get().equals("versions") && exchange.getRequestMethod().equals("GET") && !listeners.isFull()) {
        listeners.serve(exchange);
      } else {
        answer(exchange, path.get()).send(exchange);
      }
    }
  }

  private Answer answer(HttpExchange exchange, String path) throws IOException {
    try {
      return switch (path) {
        case "" -> got(exchange, () -> Answer.of(Answer.HTML, PageFrame.html(latest.get())));
        case "live.js" -> got(exchange, () -> Answer.of(Answer.SCRIPT, PageFrame.script()));
        case "live.css" -> got(exchange, () -> Answer.of(Answer.STYLE, PageFrame.style()));
        case "versions" -> got(exchange, () -> Answer.refusal(503, "Too many pages of this plan are open; close one."));
        case "look" -> posted(exchange, root -> Answer.of(Answer.JSON, looks.make(latest.get(), Asked.of(root)).json()));
        case "unfold" -> posted(exchange, this::unfolded);
        default -> Answer.refusal(404, "There is nothing here.");
      };
    } catch (Asked.Malformed e) {
      return Answer.complaint(400, e.getMessage());
    } catch (RuntimeException | StackOverflowError e) {
      complain.accept("internal error: " + e + "; please report it with the plan and what was clicked");
      return Answer.complaint(500, "internal error; the terminal in which wattle live runs says more");
    } catch (OutOfMemoryError e) {
      looks.letGo();
      complain.accept("out of memory: what was asked takes more than the " + (Runtime.getRuntime().maxMemory() >> 20)
          + " MiB that Java may use here; allow more, such as with JAVA_TOOL_OPTIONS=-Xmx4g");
      return Answer.complaint(503, "there is not enough memory for this; the terminal in which wattle live runs says more");
    }
  }

  private static Answer got(HttpExchange exchange, Supplier<Answer> answer) {
    if (!exchange.getRequestMethod().equals("GET")) {
      return notAllowed(exchange, "GET");
    }
    return answer.get();
  }

  private static Answer notAllowed(HttpExchange exchange, String method) {
    exchange.getResponseHeaders().set("Allow", method);
    return Answer.refusal(405, "Only " + method + " is answered here.");
  }

  /** What is made of a body. */
  private interface Maker {
    Answer of(JsonNode root) throws Asked.Malformed;
  }

  private static Answer posted(HttpExchange exchange, Maker maker) throws IOException, Asked.Malformed {
    if (!exchange.getRequestMethod().equals("POST")) {
      return notAllowed(exchange, "POST");
    }
    // A page of another site may send plain forms and texts without asking, but not this type.
    List<String> types = exchange.getRequestHeaders().getOrDefault("Content-Type", List.of());
    if (types.size() != 1 || !types.get(0).toLowerCase(Locale.ROOT).split(";")[0].strip().equals("application/json")) {
      return Answer.refusal(415, "A body in JSON is expected.");
    }
    byte[] body = exchange.getRequestBody().readNBytes(MOST_BYTES + 1);
    return body.length > MOST_BYTES
        ? Answer.complaint(413, "a body of more than " + MOST_BYTES / 1024 + " KiB is not read")
        : maker.of(Asked.object(body));
  }

  private Answer unfolded(JsonNode root) throws Asked.Malformed {
    Optional<Look> look = looks.get(root.path("look").asLong(-1));
    if (look.isEmpty()) {
      return Answer.complaint(410, "these figures are out of date; load them again");
    }
    Folds folds = look.get().folds();
    Optional<String> told = root.has("step") ? folds.step(root.path("step").asInt(-1)) : folds.figure(root.path("figure").asInt(-1));
    return told.map(t -> Answer.of(Answer.HTML, t)).orElseThrow(() -> new Asked.Malformed("no such figure"));
  }
}
