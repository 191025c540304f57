package wattle.compare;

import java.util.List;

/** One difference between two revisions of a plan. */
public sealed interface Change {
  /** The thing as the later revision names it; of a removed one, as the earlier did. */
  Thing thing();

  /** Which property changed; empty where the thing itself came, went or was renamed. */
  default String property() {
    return "";
  }

  /** The same difference read from the later revision to the earlier. */
  Change mirrored();

  /** @param facts what it is, for a reader who does not have the plan at hand */
  record Added(Thing thing, List<String> facts) implements Change {
    public Added {
      facts = List.copyOf(facts);
    }

    @Override
    public Change mirrored() {
      return new Removed(thing, facts);
    }
  }

  record Removed(Thing thing, List<String> facts) implements Change {
    public Removed {
      facts = List.copyOf(facts);
    }

    @Override
    public Change mirrored() {
      return new Added(thing, facts);
    }
  }

  /** The same thing under another name. */
  record Renamed(Thing thing, String before) implements Change {
    @Override
    public Change mirrored() {
      return new Renamed(new Thing(thing.kind(), before), thing.name());
    }
  }

  /**
   * A property of a thing that is in both revisions, each side in the words of its own plan.
   *
   * @param formerly the thing as the earlier revision names it
   * @param before what it was; empty where it was not stated
   * @param after what it is; empty where it no longer is
   */
  record Changed(Thing thing, Thing formerly, String property, String before, String after) implements Change {
    @Override
    public Change mirrored() {
      return new Changed(formerly, thing, property, after, before);
    }
  }
}
