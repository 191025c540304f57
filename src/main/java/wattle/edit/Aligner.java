package wattle.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import wattle.syntax.Lexeme;
import wattle.syntax.Lexeme.Construct;
import wattle.syntax.Lexeme.Kind;

/** Columns of neighboring lines under each other, and forks under the box they start from. */
final class Aligner {
  /** The parts of a slot line, in the order in which the trade reads them. */
  private static final List<Construct> SLOT_COLUMNS = List.of(Construct.AMOUNT, Construct.TRAIT, Construct.TARGET, Construct.LABEL);

  private static final Set<String> SUPPLY = Set.of("source", "run", "earth");

  /** A fork is not moved farther to the right than this. */
  private static final int FARTHEST_FORK = 48;

  /** A comment is not moved farther than this to stand under its neighbor. */
  private static final int FARTHEST_COMMENT = 40;

  private static final int CONTINUATION = 4;

  private final List<FormattedLine> lines;

  Aligner(List<FormattedLine> lines) {
    this.lines = lines;
  }

  void align() {
    for (int i = 0; i < lines.size(); i++) {
      indent(i);
    }
    group(Aligner::isSlotLine, this::alignSlots);
    group(Aligner::isDeviceLine, this::alignDevices);
    group(Aligner::isRow, this::alignCells);
    group(Aligner::isOneLineBlock, this::alignBlocks);
    group(Aligner::isSupplyLine, group -> alignColumn(group, line -> 1, 1));
    group(l -> l.comment() > 0, this::alignComments);
  }

  // ---- Where lines begin

  private void indent(int index) {
    FormattedLine line = lines.get(index);
    if (line.isEmpty() || line.isCommentOnly()) {
      return;
    }
    Lexeme first = line.tokens().get(0);
    if (!first.startsStatement() && !first.text().equals("}") && !first.text().equals("{")) {
      line.setIndent(line.indent() + CONTINUATION);
    } else if (first.construct() == Construct.PATH) {
      int column = columnOfFork(index, path(line, 0));
      if (column > 0 && column <= FARTHEST_FORK) {
        line.setIndent(column);
      }
    }
  }

  /** The column at which an earlier run of this block came to the box that a line starts from; -1 where none did. */
  private int columnOfFork(int index, String box) {
    int depth = lines.get(index).indent();
    for (int i = index - 1; i >= 0 && lines.get(i).indent() >= depth; i--) {
      FormattedLine line = lines.get(i);
      for (int t = 1; t < line.tokens().size(); t++) {
        boolean begins = line.tokens().get(t - 1).construct() != Construct.PATH;
        if (begins && line.tokens().get(t).construct() == Construct.PATH && path(line, t).equals(box)) {
          return line.column(t);
        }
      }
    }
    return -1;
  }

  private static String path(FormattedLine line, int from) {
    StringBuilder path = new StringBuilder();
    for (int t = from; t < line.tokens().size() && line.tokens().get(t).construct() == Construct.PATH; t++) {
      path.append(line.tokens().get(t).text());
    }
    return path.toString();
  }

  // ---- Groups of lines of one kind that follow each other

  private interface Alignment {
    void apply(List<FormattedLine> group);
  }

  private void group(Predicate<FormattedLine> belongs, Alignment alignment) {
    int start = -1; // of the group that is open; -1 where none is
    for (int i = 0; i <= lines.size(); i++) {
      boolean fits = i < lines.size() && !lines.get(i).isEmpty() && belongs.test(lines.get(i));
      if (start >= 0 && (!fits || lines.get(i).indent() != lines.get(start).indent())) {
        alignment.apply(lines.subList(start, i));
        start = -1;
      }
      if (fits && start < 0) {
        start = i;
      }
    }
  }

  private static boolean isSlotLine(FormattedLine line) {
    if (line.tokens().get(0).construct() != Construct.SLOT_SPAN) {
      return false;
    }
    int last = 0;
    for (Construct column : SLOT_COLUMNS) {
      int at = line.first(column);
      if (at >= 0 && at < last) {
        return false; // its parts stand in another order; columns would tear them apart
      }
      last = Math.max(last, at);
    }
    return true;
  }

  private void alignSlots(List<FormattedLine> group) {
    for (Construct column : SLOT_COLUMNS) {
      alignColumn(group, line -> line.first(column), 2);
    }
  }

  private static boolean isDeviceLine(FormattedLine line) {
    return line.tokens().get(0).construct() == Construct.DEVICE_NAME
        && line.tokens().size() > 2
        && line.tokens().stream().filter(t -> t.construct() == Construct.DEVICE_NAME).count() == 1;
  }

  private void alignDevices(List<FormattedLine> group) {
    alignColumn(group, line -> 2, 1);
  }

  /** A block that opens and closes on its line, such as a short branch. */
  private static boolean isOneLineBlock(FormattedLine line) {
    return line.tokens().get(0).kind() == Kind.KEYWORD && line.tokens().size() > 3 && brace(line) > 2
        && line.tokens().stream().anyMatch(t -> t.text().equals("}"));
  }

  private void alignBlocks(List<FormattedLine> group) {
    String keyword = group.get(0).tokens().get(0).text();
    if (group.stream().allMatch(l -> l.tokens().get(0).text().equals(keyword))) {
      alignColumn(group, line -> 2, 1);
      alignColumn(group, Aligner::brace, 1);
    }
  }

  private static int brace(FormattedLine line) {
    for (int t = 0; t < line.tokens().size(); t++) {
      if (line.tokens().get(t).text().equals("{")) {
        return t;
      }
    }
    return -1;
  }

  private static boolean isSupplyLine(FormattedLine line) {
    Lexeme first = line.tokens().get(0);
    return first.kind() == Kind.KEYWORD && first.startsStatement() && line.tokens().size() > 1 && SUPPLY.contains(first.text());
  }

  /** A row of a table, or the line that names its columns, under whose names the cells stand. */
  private static boolean isRow(FormattedLine line) {
    return line.tokens().get(0).construct() == Construct.CELL || isHead(line);
  }

  private static boolean isHead(FormattedLine line) {
    Lexeme first = line.tokens().get(0);
    return first.kind() == Kind.KEYWORD && first.text().equals("columns") && line.tokens().size() > 1;
  }

  private void alignCells(List<FormattedLine> group) {
    group.stream().filter(Aligner::isHead).forEach(head -> head.setSpaces(1, 1));
    int most = group.stream().mapToInt(l -> cells(l).size()).max().orElse(0);
    for (int cell = 1; cell < most; cell++) {
      int at = cell;
      alignColumn(group, line -> at < cells(line).size() ? cells(line).get(at) : -1, 2);
    }
    alignColumn(group, Aligner::provenance, 2);
  }

  private static List<Integer> cells(FormattedLine line) {
    List<Integer> cells = new ArrayList<>();
    for (int t = isHead(line) ? 1 : 0; t < line.tokens().size(); t++) {
      Lexeme token = line.tokens().get(t);
      if (token.startsStatement() && token.kind() != Kind.COMMENT) {
        cells.add(t);
      }
    }
    return cells;
  }

  /** Where a row says {@code from memory}, or -1. */
  private static int provenance(FormattedLine line) {
    for (int t = 1; t + 1 < line.tokens().size(); t++) {
      if (line.tokens().get(t).kind() == Kind.KEYWORD && line.tokens().get(t).text().equals("from")) {
        return t;
      }
    }
    return -1;
  }

  private void alignComments(List<FormattedLine> group) {
    int nearest = group.stream().mapToInt(l -> l.end(l.comment() - 1)).min().orElse(0);
    List<FormattedLine> near = group.stream().filter(l -> l.end(l.comment() - 1) - nearest <= FARTHEST_COMMENT).toList();
    alignColumn(near, FormattedLine::comment, 2);
  }

  /** Puts the token that each line names, or -1 for none, in one column, at least {@code gap} after what is before it. */
  private static void alignColumn(List<FormattedLine> group, ToIntFunction<FormattedLine> token, int gap) {
    int[] at = new int[group.size()];
    int[] end = new int[group.size()];
    int column = 0;
    for (int i = 0; i < at.length; i++) {
      at[i] = token.applyAsInt(group.get(i));
      if (at[i] > 0) {
        end[i] = group.get(i).end(at[i] - 1);
        column = Math.max(column, end[i] + gap);
      }
    }
    for (int i = 0; i < at.length; i++) {
      if (at[i] > 0) {
        group.get(i).setSpaces(at[i], column - end[i]);
      }
    }
  }
}
