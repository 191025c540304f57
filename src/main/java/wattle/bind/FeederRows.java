package wattle.bind;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** How many panels feed one another in a row, and where a row that goes on too long is cut. */
final class FeederRows {
  /** No house has a tenth of it, and what is figured of a feeder goes through all before it. */
  static final int MOST = 50;

  private FeederRows() {}

  /**
   * Panels that nothing feeds any more, so that no row is longer than {@link #MOST}.
   *
   * @param above the panel that feeds each; circles are left as they are
   */
  static Set<String> cut(Map<String, String> above) {
    Map<String, Integer> before = new HashMap<>();
    Set<String> cut = new HashSet<>();
    for (String panel : above.keySet()) {
      Deque<String> way = new ArrayDeque<>();
      Set<String> met = new HashSet<>();
      String at = panel;
      while (at != null && !before.containsKey(at) && met.add(at)) {
        way.push(at);
        at = above.get(at);
      }
      int row = at == null ? -1 : before.getOrDefault(at, -1);
      while (!way.isEmpty()) {
        String next = way.pop();
        row++;
        if (row == MOST) {
          cut.add(next);
          row = 0;
        }
        before.put(next, row);
      }
    }
    return cut;
  }
}
