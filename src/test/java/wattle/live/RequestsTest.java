package wattle.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who is answered, and with what: token, host, origin, methods, paths, bodies, and what is no request at all. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RequestsTest {
  private LiveServer server;
  private String host;
  private String token;

  @BeforeAll
  void open() {
    server = new LiveServer(Path.of("examples/cottage/house.wattle"));
    host = server.address().getAuthority();
    token = server.address().getPath().replace("/", "");
  }

  @AfterAll
  void close() {
    server.close();
    assertThat(server.complaints).as("mistakes of ours").isEmpty();
  }

  private String status(String request) throws IOException {
    return server.raw(request).lines().findFirst().orElse("");
  }

  private String got(String path, String... headers) throws IOException {
    return server.raw("GET " + path + " HTTP/1.1\r\n" + String.join("", List.of(headers).stream().map(h -> h + "\r\n").toList())
        + "Connection: close\r\n\r\n");
  }

  private static void assertRefused(String answer) {
    assertThat(answer).startsWith("HTTP/1.1 403").contains("wattle live printed").doesNotContain("<");
  }

  @Test
  void thePageComesWithItsProtection() {
    HttpResponse<String> page = server.get("");
    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.body()).startsWith("<!DOCTYPE html>").contains("House current kills");
    for (String path : List.of("", "live.js", "live.css")) {
      HttpResponse<String> answer = server.get(path);
      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(answer.headers().firstValue("Content-Security-Policy").orElse("")).startsWith("default-src 'none'; script-src 'self'")
          .contains("frame-ancestors 'none'").doesNotContain("unsafe");
      assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
      assertThat(answer.headers().firstValue("Referrer-Policy")).contains("no-referrer");
      assertThat(answer.headers().firstValue("Cache-Control")).contains("no-store");
    }
    assertThat(server.get("live.js").body()).doesNotContain("http://").doesNotContain("https://");
  }

  @Test
  void tokensAreLongAndNeverTheSame() {
    assertThat(token).matches("[A-Za-z0-9_-]{32}");
    assertThat(Gate.of(1).address()).isNotEqualTo(Gate.of(1).address());
  }

  @Test
  void withoutTheTokenNobodyIsAnswered() throws IOException {
    String right = "Host: " + host;
    String other = token.substring(0, 31) + (token.endsWith("A") ? "B" : "A");
    for (String path : List.of("/", "/favicon.ico", "/live.js", "/look", "/" + token, "/" + other + "/",
        "/" + token.toLowerCase(java.util.Locale.ROOT) + "x/", "//" + token + "/", "/x/../" + token + "/", "/%2e%2e/" + token + "/")) {
      assertRefused(got(path, right));
    }
    assertThat(got("/" + token + "/", right)).startsWith("HTTP/1.1 200");
  }

  @ParameterizedTest
  @ValueSource(strings = {"example.org", "127.0.0.1", "127.0.0.1:1", "localhost", "[::1]:PORT", "0.0.0.0:PORT",
      "127.0.0.1:PORT.example.org", "127.0.0.2:PORT", "LOCALHOST.:PORT", ""})
  void otherHostsAreRefused(String name) throws IOException {
    String port = String.valueOf(server.address().getPort());
    assertRefused(got("/" + token + "/", "Host: " + name.replace("PORT", port)));
  }

  @Test
  void thereMustBeOneHost() throws IOException {
    assertRefused(got("/" + token + "/"));
    assertRefused(got("/" + token + "/", "Host: " + host, "Host: " + host));
    assertRefused(got("http://" + host + "/" + token + "/", "Host: " + host));
    assertThat(got("/" + token + "/", "Host: localhost:" + server.address().getPort())).startsWith("HTTP/1.1 200");
  }

  @ParameterizedTest
  @ValueSource(strings = {"null", "http://example.org", "https://HOST", "http://HOST.example.org", "http://localhost:PORT", "file://",
      "http://HOST/", "HOST"})
  void otherOriginsAreRefused(String origin) throws IOException {
    String port = String.valueOf(server.address().getPort());
    assertRefused(got("/" + token + "/live.js", "Host: " + host, "Origin: " + origin.replace("HOST", host).replace("PORT", port)));
    assertThat(got("/" + token + "/live.js", "Host: " + host, "Origin: http://" + host)).startsWith("HTTP/1.1 200");
  }

  @Test
  void thereAreNoFiles() throws IOException {
    for (String path : List.of(
        "house.wattle", "../../../../etc/passwd", "..%2f..%2fetc%2fpasswd", "%2e%2e/", "./", "live.js/", "live.js%00", "//live.js",
        "LIVE.JS", ".git/config", "live.css/../house.wattle", "x".repeat(5000))) {
      assertThat(got("/" + token + "/" + path, "Host: " + host)).as(path).startsWith("HTTP/1.1 404").contains("There is nothing here.")
          .doesNotContain("wattle.");
    }
    assertThat(got("/" + token + "/?x=../../etc/passwd", "Host: " + host)).as("a query asks for nothing").startsWith("HTTP/1.1 200");
  }

  @Test
  void eachPathHasItsMethod() throws IOException {
    for (String method : List.of("POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "BREW")) {
      String answer = server
          .raw(method + " /" + token + "/ HTTP/1.1\r\nHost: " + host + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
      assertThat(answer).as(method).startsWith("HTTP/1.1 405").contains("Allow: GET");
      assertThat(answer).doesNotContain("Access-Control");
    }
    assertThat(got("/" + token + "/look", "Host: " + host)).startsWith("HTTP/1.1 405").contains("Allow: POST");
    assertThat(server.raw("POST /" + token + "/versions HTTP/1.1\r\nHost: " + host + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"))
        .startsWith("HTTP/1.1 405");
  }

  private int posted(String type, String body) {
    HttpRequest.Builder request = HttpRequest.newBuilder(server.address().resolve("look")).POST(HttpRequest.BodyPublishers.ofString(body));
    return server.send((type.isEmpty() ? request : request.header("Content-Type", type)).build()).statusCode();
  }

  /** A page elsewhere can make a browser send forms and plain texts, but no JSON. */
  @Test
  void bodiesAreJsonAndSmall() {
    assertThat(posted("application/json", "{}")).isEqualTo(200);
    assertThat(posted("application/json; charset=utf-8", "{\"events\":[]}")).isEqualTo(200);
    for (String type : List.of("", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data", "application/jsonx")) {
      assertThat(posted(type, "{}")).as(type).isEqualTo(415);
    }
    for (String body : List.of("", "[]", "null", "7", "{", "{\"events\":7}", "{\"events\":[7]}",
        "{\"events\":[\"" + "x".repeat(1001) + "\"]}", "[".repeat(50_000), "{\"events\":" + "[".repeat(50_000))) {
      HttpResponse<String> answer = server.post("look", body);
      assertThat(answer.statusCode()).as(body.substring(0, Math.min(40, body.length()))).isEqualTo(400);
      assertThat(LiveServer.json(answer.body()).path("error").asText()).isNotEmpty().doesNotContain("Exception").doesNotContain("wattle.");
    }
    String many = "{\"events\":[" + "\"x\",".repeat(Asked.MOST_EVENTS) + "\"x\"]}";
    assertThat(server.post("look", many).statusCode()).isEqualTo(400);
    assertThat(posted("application/json", " ".repeat(Requests.MOST_BYTES) + "{}")).isEqualTo(413);
    assertThat(posted("application/json", " ".repeat(Requests.MOST_BYTES - 2) + "{}")).isEqualTo(200);
  }

  @Test
  void figuresOfAnotherMomentAreGone() {
    assertThat(server.post("unfold", "{\"look\":-1,\"figure\":0}").statusCode()).isEqualTo(410);
    long look = server.look().path("look").asLong();
    assertThat(server.post("unfold", "{\"look\":" + look + ",\"figure\":0}").statusCode()).isEqualTo(200);
    for (String asked : List.of("\"figure\":-1", "\"figure\":1000000", "\"step\":7777777", "\"figure\":\"x\"", "\"x\":1")) {
      assertThat(server.post("unfold", "{\"look\":" + look + "," + asked + "}").statusCode()).as(asked).isEqualTo(400);
    }
  }

  /** What is no HTTP gets an error or nothing, and the next request is answered. */
  @Test
  void garbageDoesNoHarm() throws IOException {
    List<String> requests = new ArrayList<>(List.of("\r\n\r\n", "GET\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", "GET  HTTP/1.1\r\n\r\n",
        "GET " + "/".repeat(100_000) + " HTTP/1.1\r\nHost: " + host + "\r\n\r\n",
        "GET /%zz HTTP/1.1\r\nHost: " + host + "\r\n\r\n", "GET * HTTP/1.1\r\nHost: " + host + "\r\n\r\n",
        "GET / HTTP/1.1\r\n" + "x".repeat(100_000) + ": y\r\n\r\n",
        "POST /" + token + "/look HTTP/1.1\r\nHost: " + host + "\r\nContent-Type: application/json\r\nContent-Length: -5\r\n\r\n",
        "POST /" + token + "/look HTTP/1.1\r\nHost: " + host + "\r\nContent-Type: application/json\r\nContent-Length: x\r\n\r\n",
        "POST /" + token + "/look HTTP/1.1\r\nHost: " + host
            + "\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n"));
    Random random = new Random(7);
    for (int i = 0; i < 20; i++) {
      StringBuilder bytes = new StringBuilder();
      for (int n = random.nextInt(2000); n >= 0; n--) {
        bytes.append((char) random.nextInt(256));
      }
      requests.add(bytes + "\r\n\r\n");
    }
    for (String request : requests) {
      String answer = server.raw(request);
      assertThat(answer).doesNotContain("HTTP/1.1 200").doesNotContain("wattle.").doesNotContain("\tat ");
    }
    assertThat(server.get("").statusCode()).isEqualTo(200);
  }

  /** Connections that say nothing, or half of something, keep nobody from being answered. */
  @Test
  void theSlowDoNotStopTheQuick() throws IOException {
    List<Socket> slow = new ArrayList<>();
    try {
      for (int i = 0; i < 120; i++) {
        Socket socket = new Socket(server.address().getHost(), server.address().getPort());
        slow.add(socket);
        if (i % 2 == 0) {
          socket.getOutputStream().write(("GET /" + token + "/ HTT").getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        }
      }
      assertThat(server.get("").statusCode()).isEqualTo(200);
    } finally {
      for (Socket socket : slow) {
        socket.close();
      }
    }
  }

  @Test
  void onlyThisMachineIsListenedTo() throws IOException {
    assertThat(InetAddress.getByName(URI.create(server.address().toString()).getHost()).isLoopbackAddress()).isTrue();
    for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
      for (InetAddress address : Collections.list(card.getInetAddresses())) {
        if (!address.isLoopbackAddress()) {
          assertThatThrownBy(() -> new Socket(address, server.address().getPort()).close()).as(address.toString())
              .isInstanceOf(IOException.class);
        }
      }
    }
  }
}
