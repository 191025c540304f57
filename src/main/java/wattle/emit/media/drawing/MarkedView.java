package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;

/** A view with {@link Marked marks} in its pieces, and behind them what the marks stand for. */
final class MarkedView implements View {
  /** Of the words beside a picture; wider lines are hard to read. */
  private static final double WIDEST_LIST = 640;

  /** Room that a mark over an edge takes at most, where a thing has few; more is asked for where that does not do. */
  private static final double[] ROOM_FOR_MARKS = {0, 24, 60, 132};

  /** Room for all that is said in words, where it does not matter how it is torn. */
  private static final double ANY = 2000;

  private final View view;
  private final String heading;
  private final Marked.Side side;
  private final List<Marked.Note> notes;

  MarkedView(View view, String heading, Marked.Side side, List<Marked.Note> notes) {
    this.view = view;
    this.heading = heading;
    this.side = side;
    this.notes = List.copyOf(notes);
  }

  @Override
  public String title() {
    return view.title();
  }

  @Override
  public String description() {
    Marked marked = Marked.of(view.pieces(ANY, ANY), heading, side, notes);
    return marked.isEmpty() ? view.description() : view.description() + " " + marked.inWords();
  }

  @Override
  public Legend legend() {
    return view.legend();
  }

  @Override
  public String scale() {
    return view.scale();
  }

  /** The marks stand over the edges of pieces; the view is asked for smaller ones until there is room for them. */
  @Override
  public List<Piece> pieces(double width, double height) {
    List<Piece> pieces = List.of();
    for (double room : ROOM_FOR_MARKS) {
      pieces = pieces(width, height, room);
      if (pieces.stream().map(Piece::bounds).allMatch(b -> b.width() <= width && b.height() <= height)) {
        return pieces;
      }
    }
    return pieces;
  }

  private List<Piece> pieces(double width, double height, double room) {
    List<Piece> plain = view.pieces(width - room, height - Math.min(room, ROOM_FOR_MARKS[1]));
    Marked marked = Marked.of(plain, heading, side, notes);
    if (marked.isEmpty()) {
      return plain;
    }
    List<Sketch> sketches = plain.stream().map(p -> marked.marked(p.shapes())).toList();
    // Pieces beneath each other keep their left edges in one line, with marks or without.
    double over = 0;
    for (int i = 0; i < plain.size(); i++) {
      over = Math.max(over, plain.get(i).bounds().left() - sketches.get(i).bounds().left());
    }
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < plain.size(); i++) {
      Bounds bounds = plain.get(i).bounds();
      sketches.get(i).add(new Shape.Spot(bounds.left() - over, bounds.top(), 0, 0, ""));
      pieces.add(new Piece(plain.get(i).name(), sketches.get(i).shapes()));
    }
    List<Sketch> lists = marked.lists(Math.min(width, WIDEST_LIST), height);
    for (int i = 0; i < lists.size(); i++) {
      pieces.add(new Piece("what the marks stand for " + i, lists.get(i).shapes()));
    }
    return pieces;
  }
}
