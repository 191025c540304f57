package wattle.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** A standard stream of the process that remembers why writing failed, which writers of characters swallow. */
final class StandardStream extends OutputStream {
  private final FileOutputStream to;
  private Optional<String> failure = Optional.empty();

  StandardStream(FileDescriptor descriptor) {
    to = new FileOutputStream(descriptor);
  }

  @Override
  public void write(int one) throws IOException {
    write(new byte[]{(byte) one}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    try {
      to.write(bytes, from, length);
    } catch (IOException e) {
      failure = failure.or(() -> Optional.of(String.valueOf(e.getMessage())));
      throw e;
    }
  }

  /** Why the first write that failed did; absent where all went through. */
  Optional<String> failure() {
    return failure;
  }
}
