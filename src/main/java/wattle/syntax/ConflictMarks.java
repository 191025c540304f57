package wattle.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Finding;
import wattle.finding.Span;

/**
 * The marks that git leaves where two revisions of a text could not be merged. Both versions between them would be read as one
 * plan, and each mark as several mistakes; so a conflict is one finding, and of the two versions the first is read.
 */
final class ConflictMarks {
  private static final String OURS = "<<<<<<<";
  private static final String BASE = "|||||||";
  private static final String THEIRS = "=======";
  private static final String END = ">>>>>>>";

  private ConflictMarks() {}

  /** Whether a conflict begins with the line that starts at a place. */
  static boolean begin(String text, int line) {
    return isMark(OURS, text, line);
  }

  /** Where the last line of a conflict ends that begins at a place, before its line end; one that is not closed takes all that follows. */
  static int end(String text, int from) {
    for (int line = nextLine(text, from); line < text.length(); line = nextLine(text, line)) {
      if (isMark(END, text, line)) {
        return endOfLine(text, line);
      }
    }
    return text.length();
  }

  /** A text as it is read: marks and all but the first version are blanks, so that all else keeps its place. */
  record Read(String text, List<Finding> findings) {}

  static Read in(Span portion) {
    String text = portion.text();
    if (!text.contains(OURS)) {
      return new Read(text, List.of());
    }
    StringBuilder read = new StringBuilder(text);
    List<Finding> findings = new ArrayList<>();
    for (int line = 0; line < text.length(); line = nextLine(text, line)) {
      if (begin(text, line)) {
        int end = end(text, line);
        findings.add(finding(portion, line, end));
        blank(read, text, line, end);
        line = end == text.length() ? end - 1 : end;
      }
    }
    return new Read(read.toString(), findings);
  }

  private static Finding finding(Span portion, int from, int end) {
    String text = portion.text();
    int last = lastLine(text, end);
    boolean closed = isMark(END, text, last);
    Span begins = portion.source().span(portion.start() + from, portion.start() + endOfLine(text, from));
    Optional<Span> ends = closed
        ? Optional.of(portion.source().span(portion.start() + last, portion.start() + end))
        : Optional.empty();
    // A number of lines and not their numbers: the text may be a part of a file that is read again where it stands now.
    long lines = text.substring(from, end).lines().count();
    Finding.Builder finding = Finding
        .error("git-conflict", "git conflict over " + lines + " lines" + (closed ? "" : ", with no mark at its end"))
        .at(begins, "the first version begins here");
    ends.ifPresent(e -> finding.with(e, "the second version ends here"));
    return finding.because("The file has both versions; only the first was read.").fix("keep one version and delete the marks").build();
  }

  /** Blanks the marks, and every line behind the first version. */
  private static void blank(StringBuilder read, String text, int from, int end) {
    boolean first = true;
    for (int line = from; line < end; line = nextLine(text, line)) {
      boolean mark = line == from || isMark(BASE, text, line) || isMark(THEIRS, text, line) || isMark(END, text, line);
      first &= line == from || !mark;
      if (mark || !first) {
        for (int at = line; at < endOfLine(text, line); at++) {
          read.setCharAt(at, ' ');
        }
      }
    }
  }

  private static boolean isMark(String mark, String text, int line) {
    int behind = line + mark.length();
    return text.startsWith(mark, line) && (behind >= text.length() || text.charAt(behind) <= ' ');
  }

  private static int lastLine(String text, int end) {
    int at = end;
    while (at > 0 && text.charAt(at - 1) != '\n' && text.charAt(at - 1) != '\r') {
      at--;
    }
    return at;
  }

  private static int endOfLine(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
      at++;
    }
    return at;
  }

  private static int nextLine(String text, int from) {
    int end = endOfLine(text, from);
    boolean both = end + 1 < text.length() && text.charAt(end) == '\r' && text.charAt(end + 1) == '\n';
    return Math.min(text.length(), end + (both ? 2 : 1));
  }
}
