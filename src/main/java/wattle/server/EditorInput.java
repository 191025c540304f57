package wattle.server;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/**
 * What an editor sends, message by message, without those that the library that reads them cannot bear: it loses its place
 * after text that nests very deep, and ceases to read. Lines that are no header are passed over until one is.
 */
final class EditorInput extends InputStream {
  /** Largest message that is read; a text of 100,000 lines is a tenth of it. */
  private static final long MOST_BYTES = 64L << 20;

  /** No message of the protocol nests nearly as deep. */
  private static final int DEEPEST = 100;

  private static final int LONGEST_LINE = 4096;

  private final InputStream in;
  private byte[] message = {};
  private int at;

  EditorInput(InputStream in) {
    this.in = new BufferedInputStream(in);
  }

  @Override
  public int read() throws IOException {
    return next() ? message[at++] & 0xFF : -1;
  }

  @Override
  public int read(byte[] into, int offset, int count) throws IOException {
    if (count == 0) {
      return 0;
    }
    if (!next()) {
      return -1;
    }
    int given = Math.min(count, message.length - at);
    System.arraycopy(message, at, into, offset, given);
    at += given;
    return given;
  }

  /** Sees to it that something of a message is there; false at the end of the input. */
  private boolean next() throws IOException {
    while (at == message.length) {
      Optional<byte[]> body;
      try {
        body = body();
      } catch (EOFException e) {
        return false;
      }
      if (body.isPresent() && isShallow(body.get())) {
        byte[] header = ("Content-Length: " + body.get().length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
        message = new byte[header.length + body.get().length];
        System.arraycopy(header, 0, message, 0, header.length);
        System.arraycopy(body.get(), 0, message, header.length, body.get().length);
        at = 0;
      }
    }
    return true;
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

  @Override
  public void close() throws IOException {
    in.close();
  }
}
