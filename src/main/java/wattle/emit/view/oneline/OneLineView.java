package wattle.emit.view.oneline;

import java.util.List;
import java.util.Map;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.View;
import wattle.model.House;

/** The one-line diagram for sheets: as a whole where it fits, else in {@link OneLinePieces}. */
public final class OneLineView implements View {
  private final House house;
  private final Plate whole;
  private final Map<String, Block> services;
  private final Map<String, PanelBlock> panels;

  OneLineView(House house, Plate whole, Map<String, Block> services, Map<String, PanelBlock> panels) {
    this.house = house;
    this.whole = whole;
    this.services = services;
    this.panels = panels;
  }

  /** All of it as one drawing of its own size, with its legend. */
  public Drawing drawing() {
    return whole.drawing();
  }

  @Override
  public String title() {
    return whole.title();
  }

  @Override
  public String description() {
    return whole.description();
  }

  @Override
  public Legend legend() {
    return whole.legend();
  }

  @Override
  public String scale() {
    return whole.scale();
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    List<Piece> one = whole.pieces(width, height);
    if (one.stream().map(Piece::bounds).allMatch(b -> b.width() <= width && b.height() <= height)) {
      return one;
    }
    return new OneLinePieces(house, services, panels, width, height).pieces();
  }
}
