package wattle.emit.media.file;

import java.nio.ByteBuffer;

/** Whether a file may be replaced by another without being asked. */
final class Ownership {

  /** Whether what lies there is an earlier result of the kind that is to replace it, or nothing. */
  static boolean isOurs(byte[] before, byte[] after) {
    if (before.length == 0 || Mark.isIn(before)) {
      return true;
    }
    ByteBuffer head = firstLine(after);
    return !Mark.isIn(after) && head.hasRemaining() && head.equals(firstLine(before));
  }

  private static ByteBuffer firstLine(byte[] content) {
    int end = 0;
    while (end < content.length && content[end] != '\n' && content[end] != '\r') {
      end++;
    }
    return ByteBuffer.wrap(content, 0, end);
  }

  private Ownership() {}
}
