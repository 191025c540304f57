package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import wattle.emit.media.text.Json;

/**
 * Objects of a document that come while something else is written and stand behind it. They are packed meanwhile: those of plans are
 * much alike, so that one takes some hundred bytes.
 */
final class PackedNodes {
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final Writer lines;
  private boolean empty = true;

  PackedNodes() {
    try {
      lines = new OutputStreamWriter(new GZIPOutputStream(bytes), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw inMemory(e);
    }
  }

  void add(ObjectNode node) {
    try {
      lines.write(Json.line(node) + "\n");
      empty = false;
    } catch (IOException e) {
      throw inMemory(e);
    }
  }

  boolean isEmpty() {
    return empty;
  }

  /** Each of them, in the order in which they came; none may be added after. */
  void each(Consumer<JsonNode> then) {
    try {
      lines.close();
      try (BufferedReader reader = new BufferedReader(
          new InputStreamReader(new GZIPInputStream(new ByteArrayInputStream(bytes.toByteArray())), StandardCharsets.UTF_8))) {
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
          then.accept(Json.read(line));
        }
      }
    } catch (IOException e) {
      throw inMemory(e);
    }
  }

  private static UncheckedIOException inMemory(IOException problem) {
    return new UncheckedIOException("bytes in memory could not be read or written", problem);
  }
}
