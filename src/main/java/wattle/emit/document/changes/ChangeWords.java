package wattle.emit.document.changes;

import java.util.List;
import wattle.compare.Alike;
import wattle.compare.Change;
import wattle.compare.Thing;

/** Changes in words. Added is {@code +}, removed {@code -}, changed {@code ~}, renamed {@code =}. */
final class ChangeWords {
  private static final int NAMED = 3;

  private ChangeWords() {}

  static char sign(Change change) {
    return change instanceof Change.Added ? '+' : change instanceof Change.Removed ? '-' : change instanceof Change.Renamed ? '=' : '~';
  }

  static String verb(Change change) {
    return change instanceof Change.Added
        ? "added"
        : change instanceof Change.Removed ? "removed" : change instanceof Change.Renamed ? "renamed" : "changed";
  }

  /** A change, and where else in the plan the same pattern changed so. */
  static String sentence(Alike alike) {
    int left = alike.others().size() - NAMED;
    return sentence(alike.first())
        + (alike.others().isEmpty()
            ? ""
            : "; the same in " + String.join(", ", alike.others().subList(0, Math.min(NAMED, alike.others().size()))))
        + (left > 0 ? " and " + left + " more" : "");
  }

  static String sentence(Change change) {
    if (change instanceof Change.Added added) {
      return added.thing() + facts(added.facts());
    }
    if (change instanceof Change.Removed removed) {
      return removed.thing() + facts(removed.facts());
    }
    if (change instanceof Change.Renamed renamed) {
      return renamed.thing() + ", formerly " + renamed.before();
    }
    if (change instanceof Change.Changed changed && isReplaced(change)) {
      return changed.property().equals("kind")
          ? changed.thing() + ": " + changed.before() + " replaced by " + changed.after()
          : changed.thing() + ": replaced by a new one";
    }
    if (change instanceof Change.Changed changed) {
      return changed.thing() + ": " + changed.property() + " " + value(changed.property(), changed.before()) + " -> "
          + value(changed.property(), changed.after());
    }
    throw new AssertionError(change);
  }

  /** Whether another device stands in the place of one: of another kind, or a new one of the same. */
  static boolean isReplaced(Change change) {
    return change instanceof Change.Changed changed && changed.thing().kind() == Thing.Kind.DEVICE
        && (changed.property().equals("kind")
            || changed.property().equals("status") && changed.before().equals("existing") && changed.after().isEmpty());
  }

  private static String facts(List<String> facts) {
    return facts.isEmpty() ? "" : " (" + String.join(", ", facts) + ")";
  }

  /** What states no status is new; of all else, what is not stated is not there. */
  private static String value(String property, String value) {
    return !value.isEmpty() ? value : property.equals("status") ? "new" : "none";
  }
}
