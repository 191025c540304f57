package wattle.emit.media.text;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** JSON that is written as it comes, laid out like that of {@link Json}, for documents that are larger than what should be kept. */
public final class JsonStream {
  private final PrintWriter out;
  private final StringWriter pending = new StringWriter();
  private final JsonGenerator generator;

  public JsonStream(PrintWriter out) {
    this.out = out;
    generator = Json.generator(pending);
  }

  /** What is written into a stream. */
  @FunctionalInterface
  public interface Piece {
    /** Writes it. */
    void into(JsonGenerator generator) throws IOException;
  }

  /** Writes a piece and hands it on. */
  public void write(Piece piece) {
    try {
      piece.into(generator);
      generator.flush();
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    VisibleWriter.printWhole(out, Json.visible(pending.toString()));
    pending.getBuffer().setLength(0);
  }

  /** Writes one value. */
  public void value(JsonNode value) {
    write(g -> g.writeTree(value));
  }

  /** The end of the document, with its line end. */
  public void end() {
    write(JsonGenerator::close);
    VisibleWriter.printWhole(out, "\n");
  }
}
