package wattle.live;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import wattle.read.Reading;
import wattle.read.SourceReader;

/** A live page of one plan, and ways to ask it. */
public final class LiveServer implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final HttpClient client = HttpClient.newHttpClient();
  private final LivePage page;
  final List<String> complaints = new CopyOnWriteArrayList<>();

  public LiveServer(Path plan) {
    try {
      page = LivePage.open(plan, SourceReader.FROM_DISK, new Reading.Remembering(), 0, complaints::add);
    } catch (SourceReader.Unreadable e) {
      throw new IllegalArgumentException(e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public LivePage page() {
    return page;
  }

  public URI address() {
    return page.address();
  }

  /** Reads the files again and tells all pages, as the watcher of files does. */
  public void saved() {
    page.reread();
    page.tell();
  }

  HttpResponse<String> get(String path) {
    return send(HttpRequest.newBuilder(address().resolve(path)).GET().build());
  }

  HttpResponse<String> post(String path, String body) {
    return send(HttpRequest.newBuilder(address().resolve(path)).header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(body)).build());
  }

  HttpResponse<String> send(HttpRequest request) {
    try {
      return client.send(request, HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What a page that asks so is shown. */
  public JsonNode look(ObjectNode asked) {
    HttpResponse<String> answer = post("look", asked.toString());
    if (answer.statusCode() != 200) {
      throw new AssertionError(answer.statusCode() + " " + answer.body());
    }
    return json(answer.body());
  }

  JsonNode look(String... events) {
    ObjectNode asked = object();
    var lines = asked.putArray("events");
    List.of(events).forEach(lines::add);
    return look(asked);
  }

  static ObjectNode object() {
    return JSON.createObjectNode();
  }

  static JsonNode json(String text) {
    try {
      return JSON.readTree(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Bytes as they are, over a connection of their own; what comes back before the other side closes, or for a second. */
  String raw(String request) throws IOException {
    try (Socket socket = new Socket(address().getHost(), address().getPort())) {
      socket.setSoTimeout(1000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
      StringBuilder back = new StringBuilder();
      byte[] piece = new byte[4096];
      try {
        for (int n = socket.getInputStream().read(piece); n >= 0; n = socket.getInputStream().read(piece)) {
          back.append(new String(piece, 0, n, StandardCharsets.ISO_8859_1));
        }
      } catch (java.net.SocketTimeoutException e) {
        return back.toString(); // the connection is kept open for more
      }
      return back.toString();
    }
  }

  @Override
  public void close() {
    page.close();
  }
}
