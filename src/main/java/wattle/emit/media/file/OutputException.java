package wattle.emit.media.file;

import java.io.IOException;

/** A file that cannot be written; its message is one line that names the file and says why. */
public final class OutputException extends IOException {
  private static final long serialVersionUID = 1;

  OutputException(String message) {
    super(message);
  }

  OutputException(String message, Throwable cause) {
    super(message, cause);
  }
}
