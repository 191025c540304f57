package wattle.emit.media.drawing;

import java.util.List;

/** What can be put on sheets of any size: it is asked for pieces that fit, and they are set on as many sheets as it takes. */
public interface View {
  /** What it shows, without the name of the plan. */
  String title();

  /** A sentence or more that says in words what a reader would see. */
  String description();

  /** The signs that it uses, and what must be said with it; it stands on every sheet. */
  Legend legend();

  /** To what scale it is drawn, in the words of a title block. */
  String scale();

  /**
   * The view in pieces, in reading order.
   *
   * @param width of the room on a sheet, in pixels of the view
   * @param height of the room
   * @return pieces that fit into the room, except those that cannot be made smaller
   */
  List<Piece> pieces(double width, double height);
}
