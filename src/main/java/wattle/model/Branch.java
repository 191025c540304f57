package wattle.model;

import java.util.List;
import java.util.Optional;

/**
 * A branch circuit: a tree of runs from one panel.
 *
 * @param panel the panel it starts at; absent where the plan does not say
 * @param hots one for each pole that feeds it, in the order of the panel's lines; empty where nothing feeds it
 * @param points the panel first, then every box in the order reached
 * @param sections in the order written; the section that ends at a point comes before those that start there
 * @param legsNamed whether a device of it is stated to be on a leg, rather than on a color, so that its wires follow the legs
 * @param kind what it is for, such as {@code small-appliance}; absent where not said
 */
public record Branch(
    String name,
    Optional<String> label,
    Optional<String> panel,
    List<BranchHot> hots,
    Wiring wiring,
    List<Point> points,
    List<Section> sections,
    boolean legsNamed,
    Optional<String> kind,
    Status status,
    Origin origin) {
  public Branch {
    hots = List.copyOf(hots);
    points = List.copyOf(points);
    sections = List.copyOf(sections);
  }

  /** Whether any of its runs has a conductor that serves as neutral. */
  public boolean hasNeutral() {
    return sections.stream().flatMap(s -> s.conductors().stream()).anyMatch(c -> c.role() instanceof Role.Neutral);
  }

  /** Whether two or more hots return on one neutral. */
  public boolean sharesNeutral() {
    return hots.size() > 1 && hasNeutral();
  }

  /** Label where there is one, else name. */
  public String title() {
    return label.orElse(name);
  }
}
