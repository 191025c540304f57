package wattle.emit.view.branchwiring;

import java.util.List;

/**
 * A thing with terminals in a box: a device, a breaker, a bar, the wall of a metal box.
 *
 * @param lines what is said of it below its title
 * @param tab what the tab between its two brass screws is
 */
record Fixture(String title, List<String> lines, List<Terminal> terminals, Tab tab, boolean dashed) {
  Fixture {
    lines = List.copyOf(lines);
    terminals = List.copyOf(terminals);
  }

  /** The metal that joins two screws of a receptacle until it is broken off. */
  enum Tab {
    NONE, KEPT, BROKEN
  }

  List<Terminal> above() {
    return terminals.stream().filter(t -> !t.below()).toList();
  }

  List<Terminal> below() {
    return terminals.stream().filter(Terminal::below).toList();
  }
}
