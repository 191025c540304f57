package wattle.server;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;

/** Where answers go; one that cannot be written ends the session, since the editor would wait for it for good. */
final class EditorOutput extends FilterOutputStream {
  private final Runnable whenBroken;

  /** @param whenBroken run each time that writing fails */
  EditorOutput(OutputStream out, Runnable whenBroken) {
    super(out);
    this.whenBroken = whenBroken;
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    try {
      out.write(bytes, from, length);
    } catch (IOException e) {
      whenBroken.run();
      throw e;
    }
  }

  @Override
  public void flush() throws IOException {
    try {
      out.flush();
    } catch (IOException e) {
      whenBroken.run();
      throw e;
    }
  }
}
