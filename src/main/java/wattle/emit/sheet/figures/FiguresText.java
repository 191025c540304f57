package wattle.emit.sheet.figures;

import java.util.List;
import java.util.Locale;
import wattle.emit.media.table.SheetFigure;
import wattle.emit.media.text.DisplayWidth;
import wattle.emit.media.text.VisibleText;
import wattle.emit.media.unfolded.DerivationText;

/** Figures for people: unfolded one under the other, or as a list of names and values. */
public final class FiguresText {
  private static final int WIDEST_NAME = 64;

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

  /** Names and values, table by table. */
  public static String list(List<SheetFigure> figures) {
    StringBuilder out = new StringBuilder();
    String sheet = "";
    for (SheetFigure figure : figures) {
      if (!figure.sheet().equals(sheet)) {
        sheet = figure.sheet();
        out.append(out.length() > 0 ? "\n" : "").append(sheet.toUpperCase(Locale.ROOT).charAt(0))
            .append(sheet.substring(1).replace('-', ' ')).append('\n');
      }
      String name = VisibleText.of(figure.name());
      out.append("  ").append(name).append(" ".repeat(Math.max(1, WIDEST_NAME - DisplayWidth.of(name)))).append(figure.shown())
          .append('\n');
    }
    return out.toString();
  }
}
