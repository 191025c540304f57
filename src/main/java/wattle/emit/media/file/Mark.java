package wattle.emit.media.file;

import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/**
 * What tells a file that Wattle made from one that somebody else made. Each format has a place for it where readers do
 * not show it: a comment in mark-up and DOT, the producer of a PDF, a text note of a PNG, the {@code format} of JSON,
 * the tool of SARIF. CSV and plain text have no such place; see {@link OutputFiles}.
 */
public final class Mark {
  private static final String WORDS = "made by Wattle";
  private static final int HEAD = 8 << 10;

  private static final Pattern IN_HEAD = Pattern.compile(
      "<!-- " + WORDS + " -->"
          + "|\\A// " + WORDS
          + "|<meta name=[\"']generator[\"'] content=[\"']Wattle"
          + "|\"format\"\\s*:\\s*\"wattle-"
          + "|\"driver\"\\s*:\\s*\\{\\s*\"name\"\\s*:\\s*\"Wattle\""
          + "|\\A\u0089PNG.*tEXtSoftware\0Wattle",
      Pattern.DOTALL);
  private static final String PDF_START = "%PDF-";

  /** Stands in the metadata of a PDF, which are not compressed. */
  public static final String PDF_METADATA = "<pdf:Producer>Wattle</pdf:Producer>";

  /** An SVG picture or an HTML page with a mark before its first element. */
  public static String markUp(String text) {
    int root = Math.max(text.indexOf("<svg"), 0);
    if (!text.startsWith("<svg", root)) {
      root = Math.max(text.indexOf("<html"), 0);
    }
    return text.substring(0, root) + "<!-- " + WORDS + " -->\n" + text.substring(root);
  }

  /** A Markdown text with a mark in its first line. */
  public static String markdown(String text) {
    return "<!-- " + WORDS + " -->\n" + text;
  }

  /** A graph in the DOT language with a mark in its first line. */
  public static String dot(String text) {
    return "// " + WORDS + "\n" + text;
  }

  /** Whether a file with this content was made by Wattle. */
  static boolean isIn(byte[] content) {
    String head = new String(content, 0, Math.min(content.length, HEAD), StandardCharsets.ISO_8859_1);
    if (head.startsWith(PDF_START)) {
      return new String(content, StandardCharsets.ISO_8859_1).contains(PDF_METADATA);
    }
    return IN_HEAD.matcher(head).find();
  }

  private Mark() {}
}
