package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.FileChangeType;
import org.eclipse.lsp4j.FileEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What an editor should not do, and does: garbage, half messages, going away, files that vanish. */
@Timeout(60)
class RobustnessTest {
  private static final String INITIALIZE = message(
      "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"processId\":null,\"rootUri\":null,\"capabilities\":{}}}");

  @TempDir
  Path folder;

  private static String message(String json) {
    return "Content-Length: " + json.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + json;
  }

  /** A server with its raw streams. */
  private record Raw(OutputStream in, InputStream out, CompletableFuture<Integer> exitCode) {
    static Raw start() throws IOException {
      Pipe to = Pipe.open();
      Pipe from = Pipe.open();
      InputStream serverIn = Channels.newInputStream(to.source());
      OutputStream serverOut = Channels.newOutputStream(from.sink());
      return new Raw(
          Channels.newOutputStream(to.sink()), Channels.newInputStream(from.source()),
          CompletableFuture.supplyAsync(() -> LanguageServerProcess.serve(serverIn, serverOut, "test")));
    }

    void send(String bytes) throws IOException {
      in.write(bytes.getBytes(StandardCharsets.UTF_8));
      in.flush();
    }

    /** Reads until a piece of text has come. */
    String readUntil(String piece) throws IOException {
      StringBuilder read = new StringBuilder();
      byte[] some = new byte[4096];
      while (read.indexOf(piece) < 0) {
        int count = out.read(some);
        assertThat(count).as("ended after " + read).isPositive();
        read.append(new String(some, 0, count, StandardCharsets.UTF_8));
      }
      return read.toString();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
          "this is no message\r\n\r\n",
          "\r\n\r\n\r\n",
          "Content-Length: many\r\n\r\n",
          "Content-Length: -5\r\n\r\n",
          "Content-Length: 99999999999999999999\r\n\r\n",
          "Content-Length: 12\r\n\r\nthis is none",
          "Content-Length: 2\r\n\r\n[]",
          "Content-Length: 4\r\n\r\nnull",
          "Content-Length: 25\r\n\r\n{\"jsonrpc\":2,\"method\":[]}",
          "Content-Length: 39\r\n\r\n{\"jsonrpc\":\"2.0\",\"method\":\"no/such\"   }",
      })
  void garbageIsPassedOver(String garbage) throws Exception {
    Raw server = Raw.start();
    server.send(garbage + INITIALIZE);
    assertThat(server.readUntil("\"serverInfo\"")).contains("\"id\":1");
    server.in.close();
    assertThat(server.exitCode.get(30, TimeUnit.SECONDS)).isZero();
  }

  /** The library has no message of its own for these; found by fuzzing. */
  @Test
  void parametersOfAnotherKindAreAnswered() throws Exception {
    Raw server = Raw.start();
    server.send(INITIALIZE);
    server.readUntil("\"serverInfo\"");
    server.send(message("{\"jsonrpc\":\"2.0\",\"id\":6,\"method\":\"textDocument/rangeFormatting\",\"params\":{\"textDocument\":{\"uri\":"
        + "\"file:///a.wattle\"},\"options\":{\"tabSize\":{},\"insertSpaces\":true}}}"));
    assertThat(server.readUntil("wrong parameters")).contains("\"id\":6", "-32602");
    server.send(message("{\"jsonrpc\":\"2.0\",\"id\":\"seven\",\"method\":\"textDocument/formatting\",\"params\":{\"textDocument\":"
        + "{\"uri\":\"file:///a.wattle\"},\"options\":{\"tabSize\":[],\"insertSpaces\":true}}}"));
    assertThat(server.readUntil("wrong parameters")).contains("\"id\":\"seven\"", "-32602");
    server.in.close();
    assertThat(server.exitCode.get(30, TimeUnit.SECONDS)).isZero();
  }

  @Test
  void aMessageTooLongIsPassedOver() throws Exception {
    Raw server = Raw.start();
    server.send("Content-Length: " + (65 << 20) + "\r\n\r\n");
    byte[] some = new byte[1 << 20];
    for (int i = 0; i < 65; i++) {
      server.in.write(some);
    }
    server.send(INITIALIZE);
    assertThat(server.readUntil("\"serverInfo\"")).contains("\"id\":1");
    server.in.close();
    assertThat(server.exitCode.get(30, TimeUnit.SECONDS)).isZero();
  }

  @Test
  void aMessageAsDeepAsTheSeaIsPassedOver() throws Exception {
    Raw server = Raw.start();
    server.send(message("[".repeat(200_000)) + message("{\"params\":" + "{\"a\":".repeat(50_000)) + INITIALIZE);
    assertThat(server.readUntil("\"serverInfo\"")).contains("\"id\":1");
    server.in.close();
    assertThat(server.exitCode.get(30, TimeUnit.SECONDS)).isZero();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Content-Le", "Content-Length: 500\r\n", "Content-Length: 2147483647\r\n\r\n{",
      "Content-Length: 500\r\n\r\n{\"jsonrpc\":\"2.0\",\"met"})
  void halfAMessageAndTheEndIsTheEnd(String half) throws Exception {
    Raw server = Raw.start();
    server.send(INITIALIZE + half);
    server.in.close();
    assertThat(server.exitCode.get(30, TimeUnit.SECONDS)).isZero();
  }

  @Test
  void anEditorThatNoLongerListensIsNoTrouble() throws Exception {
    Raw server = Raw.start();
    server.send(INITIALIZE);
    server.readUntil("\"serverInfo\"");
    server.out.close();
    String uri = folder.resolve("a.wattle").toUri().toString();
    for (int i = 0; i < 20; i++) {
      server.send(
          message(
              "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":{\"uri\":\"" + uri
                  + "\",\"languageId\":\"wattle\",\"version\":" + i + ",\"text\":\"plan " + i + "\"}}}"));
    }
    server.in.close();
    assertThat(server.exitCode.get(30, TimeUnit.SECONDS)).isZero();
  }

  @Test
  void aFileThatIsDeletedAndComesBack() throws Exception {
    Path plan = folder.resolve("plan.wattle");
    Path part = folder.resolve("part.wattle");
    Files.writeString(plan, "plan \"P\"\nuse \"part.wattle\"\ndwelling { floor-area (a) }\n");
    Files.writeString(part, "let a = 100 m2\n");
    String uri = plan.toUri().toString();
    try (ScriptedEditor editor = new ScriptedEditor()) {
      editor.start(new ClientCapabilities(), folder);
      editor.open(uri, Files.readString(plan));
      assertThat(editor.findings(uri)).isEmpty();

      Files.delete(part);
      tell(editor, part, FileChangeType.Deleted);
      assertThat(ScriptedEditor.rules(editor.await(uri, p -> !p.getDiagnostics().isEmpty()))).contains("use-unreadable");

      Files.writeString(part, "let a = 200 m2\n");
      tell(editor, part, FileChangeType.Created);
      assertThat(editor.await(uri, p -> p.getDiagnostics().isEmpty())).isEmpty();
      assertThat(editor.complaints()).isEmpty();
    }
  }

  @Test
  void thePlanIsDeletedUnderItsPart() throws Exception {
    Path plan = folder.resolve("plan.wattle");
    Path part = folder.resolve("part.wattle");
    Files.writeString(plan, "plan \"P\"\nlet a = 1 m\nuse \"part.wattle\"\n");
    Files.writeString(part, "let b = a\n");
    String uri = part.toUri().toString();
    try (ScriptedEditor editor = new ScriptedEditor()) {
      editor.start(new ClientCapabilities(), folder);
      editor.open(uri, Files.readString(part));
      assertThat(editor.findings(uri)).as("as part of the plan").isEmpty();
      Files.delete(plan);
      tell(editor, plan, FileChangeType.Deleted);
      assertThat(editor.await(uri, p -> !p.getDiagnostics().isEmpty())).as("by itself").hasSize(1);
      editor.close(uri);
      Files.delete(part);
      editor.await(uri, p -> p.getDiagnostics().isEmpty());
      assertThat(editor.complaints()).isEmpty();
    }
  }

  @Test
  void textsOfAnySortAreTyped() throws Exception {
    List<String> texts = List.of("", "\u0000", "\r\r\n\n", "{{{{{{", "}".repeat(50), "(".repeat(3000), "\uD800", "🏠".repeat(200),
        "let a = " + "-".repeat(5000) + "1");
    String uri = folder.resolve("any.wattle").toUri().toString();
    try (ScriptedEditor editor = new ScriptedEditor()) {
      editor.start(new ClientCapabilities(), folder);
      editor.open(uri, "");
      for (String text : texts) {
        editor.change(uri, new org.eclipse.lsp4j.Range(new org.eclipse.lsp4j.Position(0, 0), new org.eclipse.lsp4j.Position(0, 0)),
            text + "\n");
        editor.findings(uri);
      }
      assertThat(editor.complaints()).isEmpty();
    }
  }

  private static void tell(ScriptedEditor editor, Path file, FileChangeType change) {
    editor
        .server()
        .getWorkspaceService()
        .didChangeWatchedFiles(new DidChangeWatchedFilesParams(List.of(new FileEvent(file.toUri().toString(), change))));
  }

  @Test
  void wrongRequestsOfAnySizeAreAnsweredAsTheProtocolSays() throws Exception {
    Raw raw = Raw.start();
    raw.send(message("{\"jsonrpc\":\"2.0\",\"id\":70,\"method\":\"textDocument/hover\",\"params\":{}}"));
    assertThat(raw.readUntil("\"id\":70")).contains("-32002");
    raw.send(INITIALIZE);
    raw.readUntil("serverInfo");
    for (int size : List.of(10, 9_000, 50_000)) {
      raw.send(message("{\"jsonrpc\":\"2.0\",\"id\":71,\"method\":\"textDocument/hover\",\"params\":[\"" + "x".repeat(size) + "\"]}"));
      assertThat(raw.readUntil("wrong parameters")).contains("-32602");
    }
    raw.send(message("{\"jsonrpc\":\"2.0\",\"id\":72,\"method\":\"textDocument/hover\",\"params\":{\"textDocument\":null}}"));
    assertThat(raw.readUntil("\"id\":72")).contains("-32602");
    raw.send(
        message("{\"jsonrpc\":\"2.0\",\"id\":73,\"method\":\"textDocument/moniker\",\"params\":{\"textDocument\":{\"uri\":\"file:///x\"},"
            + "\"position\":{\"line\":0,\"character\":0}}}"));
    assertThat(raw.readUntil("does not offer")).contains("-32601");
    raw.send(message("{\"jsonrpc\":\"2.0\",\"id\":74,\"method\":\"shutdown\"}"));
    raw.readUntil("\"id\":74");
    raw.send(message("{\"jsonrpc\":\"2.0\",\"id\":75,\"method\":\"textDocument/hover\",\"params\":{}}"));
    assertThat(raw.readUntil("only exit is left")).contains("-32600");
    raw.send(message("{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}"));
    assertThat(raw.exitCode().get(20, TimeUnit.SECONDS)).isZero();
  }
}
