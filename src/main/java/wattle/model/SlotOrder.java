package wattle.model;

import java.util.List;

/** How the slots of a panel are numbered, and so which leg each stands on. */
public enum SlotOrder {
  /** Two columns, odd numbers left and even right; rows change legs from the top. */
  ODD_LEFT("odd-left"),
  /** Two columns numbered downwards, first the left, then the right; rows change legs from the top. */
  DOWN_COLUMNS("down-columns"),
  /** One column; each slot stands on the next leg. */
  ONE_COLUMN("one-column");

  private final String word;

  SlotOrder(String word) {
    this.word = word;
  }

  /** The word of the notation. */
  public String word() {
    return word;
  }

  /** The 1-based row of a slot in a panel with so many slots. */
  public int rowOf(int slot, int slotCount) {
    int rows = (slotCount + 1) / 2;
    return switch (this) {
      case ODD_LEFT -> (slot + 1) / 2;
      case DOWN_COLUMNS -> slot <= rows ? slot : slot - rows;
      case ONE_COLUMN -> slot;
    };
  }

  /** Whether a slot stands in the left column. */
  public boolean isLeft(int slot, int slotCount) {
    return switch (this) {
      case ODD_LEFT -> slot % 2 == 1;
      case DOWN_COLUMNS -> slot <= (slotCount + 1) / 2;
      case ONE_COLUMN -> true;
    };
  }

  /** The leg of a slot: row 1 is on the first of the bus's legs, and the rows take them in turn. */
  public Leg legOf(int slot, int slotCount, List<Leg> legs) {
    return legs.get((rowOf(slot, slotCount) - 1) % legs.size());
  }
}
