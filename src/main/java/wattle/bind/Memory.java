package wattle.bind;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wattle.library.Library;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/**
 * What a binder made the last time of the parts of a plan, for when most of them are there again: rooms, which rest on
 * constants and the library alone; panels; branches as traced, which rest on where names lead; what hangs on them; and
 * circuits, which rest on all of that. Binding with a memory gives what binding without gives. For one thread.
 */
public final class Memory {
  final Recall<Tree.Panel, PanelBinder.Draft> panelDrafts = new Recall<>();
  final Recall<Tree.Panel, PanelBinder.Finished> panels = new Recall<>();
  final Recall<Tree.Room, RoomBinder.Part> rooms = new Recall<>();
  final Recall<Tree.Branch, BranchDraft> drafts = new Recall<>();
  final Recall<Tree.Branch, Circuit> circuits = new Recall<>();
  final Kept<CircuitBinder.Bound> bound = new Kept<>();

  private Library boundWith = Library.EMPTY;
  private Map<String, Quantity> constants = Map.of();
  private RoomBinder.Bound inRooms = RoomBinder.Bound.of(List.of());
  private Landmarks landmarks = Landmarks.NONE;
  private Connected connected = Connected.NOTHING;
  private final Kept<ControlGroups> groups = new Kept<>();

  /** A plan is about to be bound, with these. */
  void begin(Library with, Map<String, Quantity> given) {
    List<Recall<?, ?>> all = List.of(panelDrafts, panels, rooms, drafts, circuits);
    all.forEach(Recall::turn);
    if (with != boundWith || !given.equals(constants)) {
      all.forEach(Recall::forget);
      List.of(groups, bound).forEach(Kept::forget);
      connected = Connected.NOTHING;
    }
    boundWith = with;
    constants = Map.copyOf(given);
  }

  /** The same object as the last time where the rooms are the same. */
  RoomBinder.Bound rooms(List<RoomBinder.Part> now) {
    inRooms = inRooms.with(now);
    return inRooms;
  }

  /** Whether every name leads where it led the last time, so that what was traced then still holds. */
  boolean leadsAsBefore(Landmarks now) {
    boolean same = now.areAs(landmarks);
    landmarks = now;
    return same;
  }

  /** Branches as traced, with the devices that hang on them. */
  List<BranchDraft> connected(List<BranchDraft> traced, RoomBinder.Bound rooms, Scope scope) {
    Scope.Moment then = scope.now();
    Connected now = connected.with(traced, rooms).orElseGet(() -> DeviceWiring.connect(traced, rooms, scope));
    connected = scope.quietSince(then).isPresent() ? now : Connected.NOTHING;
    return now.drafts();
  }

  /** Switches and what they control. */
  ControlGroups groups(RoomBinder.Bound rooms, Scope scope) {
    return groups.of(List.of(rooms.places(), rooms.controls()), scope, () -> new ControlGroups(scope, rooms.devices()));
  }

  /** Whether the same switches control the same devices as the last time. */
  boolean isControlledAsBefore() {
    return groups.isAsBefore();
  }

  /** A list that also holds further things. */
  static List<Object> listOf(List<?> list, Object... more) {
    List<Object> all = new ArrayList<>(list.size() + more.length);
    all.addAll(list);
    all.addAll(List.of(more));
    return all;
  }
}
