package wattle.emit.sheet.figures;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import wattle.emit.media.table.SheetFigure;
import wattle.emit.media.text.DisplayWidth;
import wattle.emit.media.text.VisibleText;
import wattle.emit.media.unfolded.DerivationText;

/** Figures for people: unfolded one under the other, or as a list of names and values. */
public final class FiguresText {
  private static final int WIDEST_NAME = 64;
  private static final int ROOM_FOR_FIGURE = 14;

  private FiguresText() {}

  /** Each under its name, inputs indented beneath it. */
  public static String unfolded(List<SheetFigure> figures) {
    StringBuilder out = new StringBuilder();
    for (SheetFigure figure : figures) {
      out.append(out.length() > 0 ? "\n" : "").append(VisibleText.of(figure.name())).append(": ").append(figure.shown()).append('\n');
      figure.derivation()
          .ifPresent(d -> DerivationText.text(d).lines().forEach(l -> out.append("  ").append(VisibleText.of(l)).append('\n')));
    }
    return out.toString();
  }

  /** Names and values of figures that a reader may have meant as well. */
  public static String others(List<SheetFigure> figures) {
    StringBuilder out = new StringBuilder("\nThese match too:\n");
    int widest = figures.stream().mapToInt(f -> DisplayWidth.of(VisibleText.of(f.name()))).max().orElse(0);
    for (SheetFigure figure : figures) {
      String name = VisibleText.of(figure.name());
      out.append("  ").append(name).append(" ".repeat(widest - DisplayWidth.of(name) + 2)).append(figure.shown()).append('\n');
    }
    return out.toString();
  }

  /**
   * Names and values, table by table.
   *
   * @param columns of the terminal that shows it; absent where none does
   */
  public static String list(List<SheetFigure> figures, OptionalInt columns) {
    int widest = columns.isPresent() ? Math.min(WIDEST_NAME, columns.getAsInt() - ROOM_FOR_FIGURE) : WIDEST_NAME;
    StringBuilder out = new StringBuilder();
    String sheet = "";
    for (SheetFigure figure : figures) {
      if (!figure.sheet().equals(sheet)) {
        sheet = figure.sheet();
        out.append(out.length() > 0 ? "\n" : "").append(sheet.toUpperCase(Locale.ROOT).charAt(0))
            .append(sheet.substring(1).replace('-', ' ')).append('\n');
      }
      String name = VisibleText.of(figure.name());
      out.append("  ").append(name).append(" ".repeat(Math.max(2, widest - DisplayWidth.of(name)))).append(figure.shown())
          .append('\n');
    }
    return out.toString();
  }
}
