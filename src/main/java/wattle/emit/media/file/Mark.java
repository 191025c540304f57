package wattle.emit.media.file;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What tells a file that Wattle made from one that somebody else made, or wrote into. Each format has a place for it where
 * readers do not show it: a comment in markup and DOT, the producer of a PDF, a text note of a PNG, the {@code format} of
 * JSON, the tool of SARIF. A format that people edit as text has the digest of the rest in its mark, so that a note added by
 * hand is seen. CSV and plain text have no such place; see {@link Digest}.
 */
public final class Mark {
  private static final String WORDS = "made by Wattle";
  private static final int HEAD = 8 << 10;

  private static final Pattern IN_TEXT = Pattern.compile(
      "<!-- " + WORDS + " ([0-9a-f]{16}) -->\n|\\A// " + WORDS + " ([0-9a-f]{16})\n");
  private static final Pattern IN_DATA = Pattern.compile(
      "\"format\"\\s*:\\s*\"wattle-"
          + "|\"driver\"\\s*:\\s*\\{\\s*\"name\"\\s*:\\s*\"Wattle\""
          + "|\\A\u0089PNG.*tEXtSoftware\0Wattle",
      Pattern.DOTALL);
  private static final String PDF_START = "%PDF-";
  private static final String PDF_END = "%%EOF";

  /** Stands in the metadata of a PDF, which are not compressed. */
  public static final String PDF_METADATA = "<pdf:Producer>Wattle</pdf:Producer>";

  /** An SVG picture or an HTML page with a mark before its first element. */
  public static String markUp(String text) {
    int root = Math.max(text.indexOf("<svg"), 0);
    if (!text.startsWith("<svg", root)) {
      root = Math.max(text.indexOf("<html"), 0);
    }
    return text.substring(0, root) + comment(text) + text.substring(root);
  }

  /** A Markdown text with a mark in its first line. */
  public static String markdown(String text) {
    return comment(text) + text;
  }

  /** A graph in the DOT language with a mark in its first line. */
  public static String dot(String text) {
    return "// " + WORDS + " " + Digest.of(text) + "\n" + text;
  }

  private static String comment(String text) {
    return "<!-- " + WORDS + " " + Digest.of(text) + " -->\n";
  }

  /** Whether a file with this content was made by Wattle, and nobody wrote into it since. */
  static boolean isIn(byte[] content) {
    String head = new String(content, 0, Math.min(content.length, HEAD), StandardCharsets.ISO_8859_1);
    if (head.startsWith(PDF_START)) {
      // A note or a filled field is put behind the end of the PDF that was, with an end of its own.
      String whole = new String(content, StandardCharsets.ISO_8859_1);
      return whole.contains(PDF_METADATA) && whole.indexOf(PDF_END) == whole.lastIndexOf(PDF_END);
    }
    Matcher text = IN_TEXT.matcher(head);
    if (text.find()) {
      String digest = text.group(1) != null ? text.group(1) : text.group(2);
      return Digest.of(without(content, text.start(), text.end())).equals(digest);
    }
    return IN_DATA.matcher(head).find();
  }

  private static byte[] without(byte[] content, int start, int end) {
    byte[] rest = new byte[content.length - (end - start)];
    System.arraycopy(content, 0, rest, 0, start);
    System.arraycopy(content, end, rest, start, content.length - end);
    return rest;
  }

  private Mark() {}
}
