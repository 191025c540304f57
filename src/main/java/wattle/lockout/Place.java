package wattle.lockout;

import java.util.List;

/** Where somebody is going to work. */
public sealed interface Place {
  /** The kind of place and its name, as on a sheet: {@code box kitchen.c1}. */
  String text();

  /** The boxes that are opened there, by name, in the order of the plan. */
  List<String> boxes();

  /** One box. */
  record AtBox(String box) implements Place {
    @Override
    public String text() {
      return "box " + box;
    }

    @Override
    public List<String> boxes() {
      return List.of(box);
    }
  }

  /**
   * A device; whoever works on it opens its box, and so meets everything in that box.
   *
   * @param box the box that it is in
   */
  record AtDevice(String device, String box) implements Place {
    @Override
    public String text() {
      return "device " + device;
    }

    @Override
    public List<String> boxes() {
      return List.of(box);
    }
  }

  /** Every box of a room. */
  record InRoom(String room, List<String> boxes) implements Place {
    public InRoom {
      boxes = List.copyOf(boxes);
    }

    @Override
    public String text() {
      return "room " + room;
    }
  }

  /** Every box that a branch comes to. */
  record OnBranch(String branch, List<String> boxes) implements Place {
    public OnBranch {
      boxes = List.copyOf(boxes);
    }

    @Override
    public String text() {
      return "branch " + branch;
    }
  }

  /** The inside of a panel. */
  record InPanel(String panel) implements Place {
    @Override
    public String text() {
      return "panel " + panel;
    }

    @Override
    public List<String> boxes() {
      return List.of();
    }
  }
}
