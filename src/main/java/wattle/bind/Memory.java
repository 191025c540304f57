package wattle.bind;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import wattle.finding.Checked;
import wattle.library.Library;
import wattle.pattern.Expander;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/**
 * What a binder made the last time of the parts of a plan, for when most of them are there again: rooms, which rest on
 * constants and the library alone; branches as traced, which rest on where names lead; and circuits, which rest on all that
 * hangs on them. Binding with a memory gives what binding without gives. For one thread.
 */
public final class Memory {
  final Expander patterns = new Expander();
  final Recall<Tree.Room, RoomBinder.Part> rooms = new Recall<>();
  final Recall<Tree.Branch, BranchDraft> drafts = new Recall<>();
  final Recall<Tree.Branch, Circuit> circuits = new Recall<>();

  private Library base = Library.EMPTY;
  private List<Tree.Item> ownItems = List.of();
  private Checked<Library> own = new Checked<>(Library.EMPTY, List.of());
  private Library library = Library.EMPTY;
  private Library boundWith = Library.EMPTY;
  private Map<String, Quantity> constants = Map.of();
  private List<RoomBinder.Part> parts = List.of();
  private RoomBinder.Bound bound = RoomBinder.Bound.of(List.of());

  /** What the plan's own files add to a library, loaded only where they have changed. */
  Checked<Library> own(List<Tree.Item> items, Supplier<Checked<Library>> load) {
    if (!same(items, ownItems)) {
      own = load.get();
      ownItems = items;
      library = Library.EMPTY;
    }
    return own;
  }

  /** A library with what the plan's own files add. */
  Library with(Library standard) {
    if (ownItems.isEmpty()) {
      return standard;
    }
    if (standard != base || library == Library.EMPTY) {
      base = standard;
      library = standard.with(own.value());
    }
    return library;
  }

  /** A plan is about to be bound, with these. */
  void begin(Library with, Map<String, Quantity> given) {
    List.of(rooms, drafts, circuits).forEach(Recall::turn);
    if (with != boundWith || !given.equals(constants)) {
      List.of(rooms, drafts, circuits).forEach(Recall::forget);
    }
    boundWith = with;
    constants = Map.copyOf(given);
  }

  /** The same object as the last time where the rooms are the same. */
  RoomBinder.Bound rooms(List<RoomBinder.Part> now) {
    if (!same(now, parts)) {
      parts = new ArrayList<>(now);
      bound = RoomBinder.Bound.of(now);
    }
    return bound;
  }

  private static boolean same(List<?> some, List<?> others) {
    if (some.size() != others.size()) {
      return false;
    }
    for (int i = 0; i < some.size(); i++) {
      if (some.get(i) != others.get(i)) {
        return false;
      }
    }
    return true;
  }
}
