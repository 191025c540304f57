package wattle.server;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * A language server and messages of any sort for it: right ones, ones with a part that is wrong, missing or of another kind. Each question
 * must be answered, with a result or with an error of the protocol, and never with an internal error.
 */
public final class ProtocolTarget implements AutoCloseable {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int PATIENCE_SECONDS = 60;
  private static final List<String> OF_DOCUMENT = List.of("hover", "completion", "definition", "references", "documentHighlight",
      "documentSymbol", "codeAction", "codeLens", "foldingRange", "formatting", "rangeFormatting", "selectionRange", "signatureHelp",
      "documentLink", "diagnostic", "semanticTokens/full", "inlayHint", "prepareRename", "rename", "moniker", "onTypeFormatting",
      "implementation", "linkedEditingRange");
  private static final List<String> OTHERS = List.of("workspace/symbol", "workspace/executeCommand", "workspace/willRenameFiles",
      "$/none", "completionItem/resolve", "textDocument/nothing");

  private final List<String> texts;
  private final List<String> uris;
  private final OutputStream in;
  private final CompletableFuture<Integer> exitCode;
  private final Set<Integer> open = new HashSet<>();
  private final List<String> mistakes = new ArrayList<>();
  private int lastId;
  private int version = 1;

  /**
   * @param texts plans to open and to change others into
   * @param folder address of a folder that documents are said to lie in
   */
  public ProtocolTarget(List<String> texts, String folder) throws IOException {
    this.texts = List.copyOf(texts);
    uris = List.of(folder + "one.wattle", folder + "two.wattle", "untitled:3", "not a uri%%%");
    Pipe to = Pipe.open();
    Pipe from = Pipe.open();
    InputStream serverIn = Channels.newInputStream(to.source());
    OutputStream serverOut = Channels.newOutputStream(from.sink());
    in = Channels.newOutputStream(to.sink());
    exitCode = CompletableFuture.supplyAsync(() -> LanguageServerProcess.serve(serverIn, serverOut, "test"));
    InputStream out = Channels.newInputStream(from.source());
    Thread reader = new Thread(() -> read(out), "answers");
    reader.setDaemon(true);
    reader.start();
    ask("initialize", JSON.createObjectNode().putNull("processId").set("capabilities", JSON.createObjectNode()));
    tell("initialized", JSON.createObjectNode());
    for (String uri : uris.subList(0, 3)) {
      open(uri, this.texts.get(0));
    }
    settle();
  }

  private void open(String uri, String text) throws IOException {
    ObjectNode params = JSON.createObjectNode();
    params.putObject("textDocument").put("uri", uri).put("languageId", "wattle").put("version", 1).put("text", text);
    tell("textDocument/didOpen", params);
  }

  /** Sends some messages, and waits until each question among them is answered. */
  public void take(Random random) throws IOException {
    int messages = 1 + random.nextInt(12);
    for (int i = 0; i < messages; i++) {
      switch (random.nextInt(5)) {
        case 0 -> tell("textDocument/didChange", spoiled(change(random), random));
        case 1 -> ask(any(OTHERS, random), spoiled(params(random), random));
        default -> ask("textDocument/" + any(OF_DOCUMENT, random), spoiled(params(random), random));
      }
    }
    settle();
  }

  private ObjectNode change(Random random) {
    ObjectNode params = JSON.createObjectNode();
    params.putObject("textDocument").put("uri", any(uris, random)).put("version", ++version);
    ArrayNode changes = params.putArray("contentChanges");
    for (int i = 0; i <= random.nextInt(3); i++) {
      ObjectNode change = changes.addObject();
      String text = any(texts, random);
      if (random.nextInt(4) == 0) {
        change.put("text", text);
      } else {
        change.set("range", range(random));
        int from = random.nextInt(text.length() + 1);
        change.put("text", text.substring(from, Math.min(text.length(), from + random.nextInt(40))));
      }
    }
    return params;
  }

  private ObjectNode params(Random random) {
    ObjectNode params = JSON.createObjectNode();
    params.putObject("textDocument").put("uri", any(uris, random));
    params.set("position", position(random));
    params.set("range", range(random));
    params.putArray("positions").add(position(random));
    params.putObject("context").putArray("diagnostics");
    ((ObjectNode) params.get("context")).put("includeDeclaration", random.nextBoolean());
    params.putObject("options").put("tabSize", 2).put("insertSpaces", true);
    params.put("newName", any(List.of("a", "kitchen", "15 A", "", "\u202e", "main", "x-1"), random));
    params.put("query", "k").put("command", "none").put("ch", "}");
    params.putArray("files").addObject().put("oldUri", any(uris, random)).put("newUri", any(uris, random));
    return params;
  }

  private static ObjectNode position(Random random) {
    int line = random.nextInt(20) == 0 ? Integer.MAX_VALUE : random.nextInt(60);
    return JSON.createObjectNode().put("line", line).put("character", random.nextInt(20) == 0 ? 1 << 30 : random.nextInt(50));
  }

  private static ObjectNode range(Random random) {
    ObjectNode range = JSON.createObjectNode();
    range.set("start", position(random));
    range.set("end", position(random));
    return range;
  }

  /** Parameters of which, now and then, a part is another thing than it should be. */
  private static JsonNode spoiled(ObjectNode params, Random random) {
    if (random.nextInt(3) > 0) {
      return params;
    }
    List<JsonNode> wrong = List.of(JSON.nullNode(), JSON.getNodeFactory().textNode("x".repeat(random.nextInt(20_000))),
        JSON.getNodeFactory().numberNode(-1), JSON.getNodeFactory().numberNode(1e300), JSON.createArrayNode(), JSON.createObjectNode(),
        JSON.getNodeFactory().booleanNode(true));
    JsonNode other = wrong.get(random.nextInt(wrong.size()));
    if (random.nextInt(6) == 0) {
      return other;
    }
    ObjectNode at = params;
    while (true) {
      List<String> names = new ArrayList<>();
      at.fieldNames().forEachRemaining(names::add);
      if (names.isEmpty()) {
        return params;
      }
      String name = any(names, random);
      if (at.get(name) instanceof ObjectNode inner && random.nextBoolean()) {
        at = inner;
      } else if (random.nextBoolean()) {
        at.remove(name);
        return params;
      } else {
        at.set(name, other);
        return params;
      }
    }
  }

  private static <T> T any(List<T> of, Random random) {
    return of.get(random.nextInt(of.size()));
  }

  private void tell(String method, JsonNode params) throws IOException {
    send(JSON.createObjectNode().put("jsonrpc", "2.0").put("method", method).set("params", params));
  }

  private void ask(String method, JsonNode params) throws IOException {
    int id = ++lastId;
    synchronized (open) {
      open.add(id);
    }
    send(JSON.createObjectNode().put("jsonrpc", "2.0").put("id", id).put("method", method).set("params", params));
  }

  private void send(JsonNode message) throws IOException {
    byte[] bytes = JSON.writeValueAsBytes(message);
    in.write(("Content-Length: " + bytes.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
    in.write(bytes);
    in.flush();
  }

  private void settle() {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    synchronized (open) {
      while (!open.isEmpty() && mistakes.isEmpty()) {
        long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
        if (left <= 0) {
          throw new AssertionError("no answer to " + open);
        }
        try {
          open.wait(left);
        } catch (InterruptedException e) {
          throw new AssertionError(e);
        }
      }
      if (!mistakes.isEmpty()) {
        throw new AssertionError(mistakes.toString());
      }
    }
  }

  private void read(InputStream out) {
    try {
      while (true) {
        int length = 0;
        String line = line(out);
        while (!line.isEmpty()) {
          length = line.startsWith("Content-Length: ") ? Integer.parseInt(line.substring(16)) : length;
          line = line(out);
        }
        take(JSON.readTree(out.readNBytes(length)));
      }
    } catch (IOException e) {
      synchronized (open) {
        open.notifyAll(); // the server has ended
      }
    }
  }

  private static String line(InputStream out) throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int b = out.read(); b != '\n'; b = out.read()) {
      if (b < 0) {
        throw new IOException("ended");
      }
      if (b != '\r') {
        line.write(b);
      }
    }
    return line.toString(StandardCharsets.US_ASCII);
  }

  private void take(JsonNode message) {
    synchronized (open) {
      boolean ours = message.path("error").path("code").asInt() == -32603 || message.toString().contains("internal error");
      if (ours) {
        mistakes.add(message.toString());
      }
      if (message.has("id") && !message.has("method")) {
        open.remove(message.get("id").asInt());
      }
      open.notifyAll();
    }
  }

  @Override
  public void close() throws IOException {
    in.close();
    exitCode.join();
  }
}
