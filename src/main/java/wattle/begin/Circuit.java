package wattle.begin;

import java.util.List;

/**
 * A branch with its breaker.
 *
 * @param protections such as {@code arc-fault}
 * @param kind such as {@code small-appliance}; empty for none
 * @param chains boxes in the order reached, a list for each chain; a chain starts at the panel, or at a box reached before
 *     where its first name is one
 * @param voltAmperes about what it draws, to spread the circuits over the legs
 * @param isOfAppliances whether it feeds appliances alone, which are counted by their nameplates
 */
record Circuit(
    String name,
    String label,
    int amperes,
    int poles,
    List<String> protections,
    String cable,
    String kind,
    List<List<String>> chains,
    int voltAmperes,
    boolean isOfAppliances) {
  Circuit {
    protections = List.copyOf(protections);
    chains = chains.stream().map(List::copyOf).toList();
  }

  String traits() {
    return (poles == 2 && !protections.contains("fuse") ? "two-pole " : "") + String.join(" ", protections);
  }
}
