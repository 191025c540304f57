package wattle.browser;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** A headless Chromium, spoken to by its own debugging protocol; one tab. */
public final class Browser implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();
  /** A page of thousands of cells, judged on a machine that does other things as well. */
  private static final int SECONDS = 120;

  private final Process process;
  private final Path profile;
  private final WebSocket socket;
  private final Map<Integer, CompletableFuture<JsonNode>> waiting = new ConcurrentHashMap<>();
  private final List<JsonNode> events = new ArrayList<>();
  private final AtomicInteger last = new AtomicInteger();
  private final String session;

  private Browser(Process process, Path profile, String address) {
    this.process = process;
    this.profile = profile;
    this.socket = HttpClient.newHttpClient().newWebSocketBuilder().buildAsync(URI.create(address), new Incoming()).join();
    String target = call("", "Target.createTarget", object().put("url", "about:blank")).get("targetId").asText();
    ObjectNode attach = object().put("targetId", target).put("flatten", true);
    session = call("", "Target.attachToTarget", attach).get("sessionId").asText();
    for (String domain : List.of("Page", "Runtime", "Network")) {
      send(domain + ".enable", object());
    }
  }

  /** Where Chromium is installed; empty where it is not. */
  public static Optional<Path> installed() {
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .flatMap(folder -> Stream.of("chromium", "chromium-browser", "google-chrome").map(n -> Path.of(folder, n)))
        .filter(Files::isExecutable)
        .findFirst();
  }

  /** Starts it; it reads and keeps nothing of the user's own. */
  public static Browser start(Path executable) throws IOException {
    Path profile = Files.createTempDirectory("wattle-browser");
    Process process = new ProcessBuilder(
        executable.toString(), "--headless", "--no-sandbox", "--disable-gpu", "--remote-debugging-port=0",
        "--no-first-run", "--user-data-dir=" + profile)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start();
    BufferedReader said = new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8));
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      int at = line.indexOf("ws://");
      if (at >= 0) {
        Thread drain = new Thread(() -> said.lines().forEach(l -> {}));
        drain.setDaemon(true);
        drain.start();
        return new Browser(process, profile, line.substring(at).strip());
      }
    }
    throw new IOException(executable + " ended before it could be spoken to");
  }

  public static ObjectNode object() {
    return JSON.createObjectNode();
  }

  /** A command to the tab, and what it answers. */
  public JsonNode send(String method, ObjectNode parameters) {
    return call(session, method, parameters);
  }

  private JsonNode call(String to, String method, ObjectNode parameters) {
    ObjectNode message = object().put("id", last.incrementAndGet()).put("method", method);
    message.set("params", parameters);
    if (!to.isEmpty()) {
      message.put("sessionId", to);
    }
    CompletableFuture<JsonNode> answer = new CompletableFuture<>();
    waiting.put(last.get(), answer);
    socket.sendText(message.toString(), true).join();
    try {
      JsonNode said = answer.get(SECONDS, TimeUnit.SECONDS);
      if (said.has("error")) {
        throw new IllegalStateException(method + ": " + said.get("error"));
      }
      return said.path("result");
    } catch (InterruptedException | ExecutionException | TimeoutException e) {
      throw new IllegalStateException(method + " was not answered", e);
    }
  }

  /** Opens a page in a window of this size, and waits until it is whole. */
  public void open(URI page, int width, int height) {
    send("Emulation.setDeviceMetricsOverride",
        object().put("width", width).put("height", height).put("deviceScaleFactor", 1).put("mobile", false));
    send("Page.navigate", object().put("url", page.toString()));
    await("document.readyState === 'complete' && location.href.startsWith(" + quoted(page.toString()) + ")");
  }

  /** Waits until an expression is true. */
  public void await(String expression) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
    while (!run(expression).asBoolean()) {
      if (System.nanoTime() > end) {
        throw new IllegalStateException("never true: " + expression);
      }
      try {
        Thread.sleep(20);
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /** The value of an expression in the page; a promise is waited for. */
  public JsonNode run(String expression) {
    ObjectNode asked = object().put("expression", expression).put("returnByValue", true).put("awaitPromise", true);
    JsonNode answer = send("Runtime.evaluate", asked);
    if (answer.has("exceptionDetails")) {
      throw new IllegalStateException(expression + ": " + answer.get("exceptionDetails"));
    }
    return answer.at("/result/value");
  }

  /** A text as a literal of the page's language. */
  public static String quoted(String text) {
    return JSON.getNodeFactory().textNode(text).toString();
  }

  /** Presses and releases a key, as a person would. */
  public void press(String key, String code, int number) {
    ObjectNode down = object().put("type", "keyDown").put("key", key).put("code", code).put("windowsVirtualKeyCode", number);
    if (key.length() == 1) {
      down.put("text", key);
    } else if (key.equals("Enter")) {
      down.put("text", "\r");
    }
    send("Input.dispatchKeyEvent", down);
    send("Input.dispatchKeyEvent",
        object().put("type", "keyUp").put("key", key).put("code", code).put("windowsVirtualKeyCode", number));
  }

  public void type(String text) {
    send("Input.insertText", object().put("text", text));
  }

  /** Clicks with the mouse in the middle of an element. */
  public void click(String element) {
    run(element + ".scrollIntoView({block: 'center', behavior: 'instant'})");
    JsonNode at = run("(() => { const r = " + element + ".getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()");
    for (String type : List.of("mousePressed", "mouseReleased")) {
      send("Input.dispatchMouseEvent",
          object().put("type", type).put("button", "left").put("clickCount", 1).put("x", at.get(0).asDouble()).put("y",
              at.get(1).asDouble()));
    }
  }

  /** What has been heard of a kind of event since the start. */
  public List<JsonNode> heard(String method) {
    synchronized (events) {
      return events.stream().filter(e -> e.path("method").asText().equals(method)).map(e -> e.get("params")).toList();
    }
  }

  /** Ends it with all that it started, and deletes what it kept. */
  @Override
  public void close() {
    List<ProcessHandle> started = process.descendants().toList();
    process.destroy();
    try {
      if (!process.waitFor(20, TimeUnit.SECONDS)) {
        process.destroyForcibly().waitFor();
      }
      // Its helpers write into the profile for a while after it has ended.
      for (ProcessHandle helper : started) {
        helper.destroyForcibly();
        helper.onExit().get(20, TimeUnit.SECONDS);
      }
      Files.walkFileTree(profile, new Deletion());
    } catch (IOException | ExecutionException | TimeoutException e) {
      throw new IllegalStateException("what Chromium kept in " + profile + " could not be deleted", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Deletes a folder; what somebody else deletes meanwhile is as good as deleted. */
  private static final class Deletion extends SimpleFileVisitor<Path> {
    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      Files.deleteIfExists(file);
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
      if (e instanceof NoSuchFileException) {
        return FileVisitResult.CONTINUE;
      }
      throw e;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException e) throws IOException {
      Files.deleteIfExists(folder);
      return FileVisitResult.CONTINUE;
    }
  }

  /** Messages come in pieces; each is an answer or an event. */
  private final class Incoming implements WebSocket.Listener {
    private final StringBuilder message = new StringBuilder();

    @Override
    public CompletionStage<?> onText(WebSocket from, CharSequence piece, boolean whole) {
      message.append(piece);
      if (whole) {
        String text = message.toString();
        message.setLength(0);
        take(text);
      }
      from.request(1);
      return null;
    }

    private void take(String text) {
      try {
        JsonNode node = JSON.readTree(text);
        if (node.has("id")) {
          waiting.remove(node.get("id").asInt()).complete(node);
        } else {
          synchronized (events) {
            events.add(node);
          }
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
