package wattle.server;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/** The bodies of the messages that an editor sends. Lines that are no header are passed over until one is. */
final class EditorInput {
  /** Largest message that is read: the largest plan, in letters of which each takes three bytes as an editor writes them. */
  private static final long MOST_BYTES = 24L << 20;

  /** No message of the protocol nests nearly as deep. */
  private static final int DEEPEST = 100;

  private static final int LONGEST_LINE = 4096;

  private final InputStream in;

  EditorInput(InputStream in) {
    this.in = new BufferedInputStream(in);
  }

  /** The next body that can be read as one; absent at the end of the input. */
  Optional<byte[]> next() throws IOException {
    try {
      while (true) {
        Optional<byte[]> body = body();
        if (body.isPresent() && isShallow(body.get())) {
          return body;
        }
      }
    } catch (EOFException e) {
      return Optional.empty();
    }
  }

  /** The next body; absent where its header names no length, or one that is too great. */
  private Optional<byte[]> body() throws IOException {
    Optional<Long> length = Optional.empty();
    for (String line = line(); !line.isEmpty(); line = line()) {
      Optional<Long> before = length;
      length = length(line).or(() -> before);
    }
    if (length.isEmpty() || length.get() < 0) {
      return Optional.empty();
    }
    if (length.get() > MOST_BYTES) {
      in.skipNBytes(length.get());
      return Optional.empty();
    }
    byte[] body = in.readNBytes(length.get().intValue());
    if (body.length < length.get()) {
      throw new EOFException();
    }
    return Optional.of(body);
  }

  private static Optional<Long> length(String line) {
    int colon = line.indexOf(':');
    if (colon < 0 || !line.substring(0, colon).strip().toLowerCase(Locale.ROOT).equals("content-length")) {
      return Optional.empty();
    }
    try {
      return Optional.of(Long.parseLong(line.substring(colon + 1).strip()));
    } catch (NumberFormatException e) {
      return Optional.empty(); // a header that says nothing is as good as none
    }
  }

  /** A line without its end; what is longer than any header is cut. */
  private String line() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    for (int b = in.read(); b != '\n'; b = in.read()) {
      if (b < 0) {
        throw new EOFException();
      }
      if (line.size() < LONGEST_LINE) {
        line.write(b);
      }
    }
    return line.toString(StandardCharsets.US_ASCII).strip();
  }

  /** Whether brackets nest within reason; those in quotes do not count. */
  private static boolean isShallow(byte[] json) {
    int depth = 0;
    boolean quoted = false;
    for (int i = 0; i < json.length; i++) {
      byte b = json[i];
      if (quoted) {
        i += b == '\\' ? 1 : 0;
        quoted = b != '"';
      } else if (b == '"') {
        quoted = true;
      } else if (b == '{' || b == '[') {
        if (++depth > DEEPEST) {
          return false;
        }
      } else if (b == '}' || b == ']') {
        depth--;
      }
    }
    return true;
  }
}
