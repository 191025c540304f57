package wattle.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.util.Optional;

/** A standard stream of the process that remembers why writing failed, which writers of characters swallow. */
final class StandardStream extends OutputStream {
  /** What systems say of a pipe whose reader is gone, such as {@code head} that has the lines it wanted. */
  private static final String READER_GONE = "Broken pipe";

  private final OutputStream to;
  private final String name;
  private volatile Optional<String> failure = Optional.empty();

  /** @param name for messages, such as {@code standard output} */
  StandardStream(OutputStream to, String name) {
    this.to = to;
    this.name = name;
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

  @Override
  public void flush() throws IOException {
    to.flush();
  }

  /**
   * The exit code of a command that has written here: that of a file that cannot be written, where something was lost. A reader that
   * went away has what it wanted, so nothing is said; but who asks for the code learns that the rest was not written.
   *
   * @param code of the command itself
   * @param err gets the reason
   */
  int codeAfter(int code, PrintWriter err) {
    if (failure.isEmpty()) {
      return code;
    }
    if (!failure.get().contains(READER_GONE)) {
      err.println("wattle: cannot write all of the result to " + name + ": " + failure.get());
    }
    return Math.max(code, ExitCode.USAGE);
  }
}
