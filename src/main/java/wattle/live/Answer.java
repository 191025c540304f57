package wattle.live;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import wattle.emit.media.text.Json;

/** What is sent back. */
record Answer(int status, String type, byte[] body) {
  static final String HTML = "text/html; charset=utf-8";
  static final String JSON = "application/json; charset=utf-8";
  static final String SCRIPT = "text/javascript; charset=utf-8";
  static final String STYLE = "text/css; charset=utf-8";
  private static final String PLAIN = "text/plain; charset=utf-8";

  static Answer of(String type, String text) {
    return new Answer(200, type, text.getBytes(StandardCharsets.UTF_8));
  }

  /** In one sentence why not. */
  static Answer refusal(int status, String sentence) {
    return new Answer(status, PLAIN, (sentence + "\n").getBytes(StandardCharsets.UTF_8));
  }

  /** The same for a page, which shows the sentence. */
  static Answer complaint(int status, String sentence) {
    return new Answer(status, JSON, Json.text(Json.object().put("error", sentence)).getBytes(StandardCharsets.UTF_8));
  }

  void send(HttpExchange exchange) throws IOException {
    Headers headers = exchange.getResponseHeaders();
    protect(headers);
    headers.set("Content-Type", type);
    if (exchange.getRequestMethod().equals("HEAD")) {
      exchange.sendResponseHeaders(status, -1); // its answer has no body, and the JDK complains on the terminal of one that is announced
      return;
    }
    exchange.sendResponseHeaders(status, body.length == 0 ? -1 : body.length);
    try (OutputStream out = exchange.getResponseBody()) {
      out.write(body);
    }
  }

  /** Nothing is loaded but from here, nothing of this is kept, framed or told to others. */
  static void protect(Headers headers) {
    headers.set(
        "Content-Security-Policy",
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src data:; base-uri 'none'; form-action"
            + " 'none'; frame-ancestors 'none'");
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("Referrer-Policy", "no-referrer");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
    headers.set("Cross-Origin-Opener-Policy", "same-origin");
    headers.set("Cache-Control", "no-store");
  }
}
