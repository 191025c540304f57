package wattle.lockout;

import java.util.List;
import wattle.model.BreakerId;

/**
 * Something to be opened and locked.
 *
 * @param part what is opened
 * @param where the panel or room that it is in, as a reader finds it
 * @param what what it is, such as {@code two-pole 20 A breaker}
 * @param reasons why it must be open, one for each thing that it would keep live
 */
public record Handle(Part part, String where, String what, List<String> reasons) {
  public Handle {
    reasons = List.copyOf(reasons);
  }

  /** What a handle opens. */
  public sealed interface Part {
    /** A name that is short enough for the lock's tag. */
    String tag();

    /** A breaker with all of its poles, or the fuses of one way. */
    record OfBreaker(BreakerId breaker) implements Part {
      @Override
      public String tag() {
        return breaker.toString();
      }
    }

    /** The main of a panel. */
    record OfMain(String panel) implements Part {
      @Override
      public String tag() {
        return panel + "/main";
      }
    }

    /** The disconnect of a source that the plan states as a device: an inverter, a battery, a generator inlet. */
    record OfSource(String device) implements Part {
      @Override
      public String tag() {
        return device;
      }
    }
  }
}
