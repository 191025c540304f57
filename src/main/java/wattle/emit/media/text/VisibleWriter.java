package wattle.emit.media.text;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.OptionalInt;
import java.util.Set;

/**
 * The gate through which all text for people passes: characters of a stranger's plan that would move the cursor, hide text or
 * turn its direction come out as signs. Line ends and tabs pass, and so do the colors that we set ourselves.
 */
public final class VisibleWriter extends PrintWriter {
  /** What {@code TextFindings} colors with; nothing else that begins with an escape passes. */
  public static final Set<String> COLORS = Set.of("\u001b[1;31m", "\u001b[1;33m", "\u001b[1;36m", "\u001b[34m", "\u001b[0m");

  private static final int LONGEST_COLOR = COLORS.stream().mapToInt(String::length).max().orElseThrow();

  private final PrintWriter unchanged;
  private final Folding folding;

  /** @param lineByLine whether each line is passed on as soon as it ends */
  public VisibleWriter(PrintWriter out, boolean lineByLine) {
    this(out, lineByLine, OptionalInt.empty());
  }

  /**
   * @param lineByLine whether each line is passed on as soon as it ends
   * @param columns of the terminal that shows it, at which lines are broken; absent where none does
   */
  public VisibleWriter(PrintWriter out, boolean lineByLine, OptionalInt columns) {
    this(out, lineByLine, new Folding(out, columns));
  }

  private VisibleWriter(PrintWriter out, boolean lineByLine, Folding folding) {
    super(new Gate(folding), lineByLine);
    unchanged = out;
    this.folding = folding;
  }

  /** Columns of the terminal that a text written there is laid out for; absent where none shows it, or lines are to stay whole. */
  public static OptionalInt columns(PrintWriter out) {
    return out instanceof VisibleWriter shown ? shown.folding.columns : OptionalInt.empty();
  }

  /** Prints what programs read or what is copied, such as JSON or a plan: its lines stay whole on a terminal too. */
  public static void printWhole(PrintWriter out, String text) {
    if (out instanceof VisibleWriter shown) {
      shown.flush();
      PrintWriter whole = new VisibleWriter(shown.unchanged, false);
      whole.print(text);
      whole.flush();
    } else {
      out.print(text);
    }
  }

  /** From now on lines stay as long as they are. */
  public void leaveLinesWhole() {
    flush();
    folding.columns = OptionalInt.empty();
  }

  /** Where a file's own text goes when it is handed on and not shown. */
  public PrintWriter unchanged() {
    flush();
    return unchanged;
  }

  /** Also true where what it writes to has failed. */
  @Override
  public boolean checkError() {
    return super.checkError() | unchanged.checkError();
  }

  private static final class Gate extends Writer {
    private final Writer out;

    Gate(Writer out) {
      this.out = out;
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
      int end = from + length;
      int plain = from;
      for (int i = from; i < end; i++) {
        char c = text[i];
        if (c >= ' ' && c < 0x7F || c == '\n' || c == '\t') {
          continue;
        }
        boolean pair = Character.isHighSurrogate(c) && i + 1 < end && Character.isLowSurrogate(text[i + 1]);
        int codePoint = pair ? Character.toCodePoint(c, text[i + 1]) : c;
        int color = c == 0x1B ? color(text, i, end) : 0;
        if (color > 0) {
          i += color - 1;
        } else if (VisibleText.isHidden(codePoint) && !(c == '\r' && i + 1 < end && text[i + 1] == '\n')) {
          out.write(text, plain, i - plain);
          out.write(VisibleText.sign(codePoint));
          plain = i + (pair ? 2 : 1);
          i = plain - 1;
        } else if (pair) {
          i++;
        }
      }
      out.write(text, plain, end - plain);
    }

    /** How long the color is that begins there; 0 where none of ours does. */
    private static int color(char[] text, int from, int end) {
      for (int length = 3; length <= LONGEST_COLOR && from + length <= end; length++) {
        if (COLORS.contains(new String(text, from, length))) {
          return length;
        }
      }
      return 0;
    }

    @Override
    public void flush() throws IOException {
      out.flush();
    }

    @Override
    public void close() throws IOException {
      out.close();
    }
  }

  /** Breaks lines at the width of the terminal; one that has not ended when all is flushed, such as a question, is passed on. */
  private static final class Folding extends Writer {
    private final PrintWriter out;
    private final StringBuilder line = new StringBuilder();
    private OptionalInt columns;

    Folding(PrintWriter out, OptionalInt columns) {
      this.out = out;
      this.columns = columns;
    }

    @Override
    public void write(char[] text, int from, int length) {
      if (columns.isEmpty()) {
        out.write(text, from, length);
        return;
      }
      for (int i = from; i < from + length; i++) {
        if (text[i] == '\n') {
          passOn();
          out.write('\n');
        } else {
          line.append(text[i]);
        }
      }
    }

    private void passOn() {
      if (line.length() > 0) {
        out.write(columns.isPresent() ? String.join("\n", new FoldedLines(columns.getAsInt()).of(line.toString())) : line.toString());
        line.setLength(0);
      }
    }

    @Override
    public void flush() {
      passOn();
      out.flush();
    }

    @Override
    public void close() {
      passOn();
      out.close();
    }
  }
}
