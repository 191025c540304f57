package wattle.emit.media.picture;

import java.io.IOException;

/** A picture or a page that cannot be turned into pixels or print: not well formed, or too large. */
public final class UnreadablePictureException extends IOException {
  private static final long serialVersionUID = 1;

  UnreadablePictureException(String message) {
    super(message);
  }

  UnreadablePictureException(String message, Throwable cause) {
    super(message, cause);
  }
}
