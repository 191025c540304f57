package wattle.library;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import wattle.finding.Finding;
import wattle.syntax.Tree;

/**
 * Between which figures a limit has a meaning, for those that computations divide by or take a root with. The bounds of windings follow
 * from two alike halves in series that give no power (own derivation); that of a start is common practice.
 */
final class LimitBounds {
  private static final String WINDING = "Half of a center-tapped winding has as much as the whole where its halves "
      + "are wholly coupled, and twice as much where they are not.";

  /**
   * @param least inclusive, as {@code most}; just above the figure that has no solution
   * @param why what the bounds follow from
   */
  private record Bounds(double least, double most, String why) {}

  private static final Map<String, Bounds> BOUNDS = Map.of(
      "half-winding-resistance", new Bounds(1.01, 2, WINDING),
      "half-winding-reactance", new Bounds(1.01, 2, WINDING),
      "start-power-factor", new Bounds(0.01, 1, "A power factor is above 0 and at most 1."),
      "usual-locked-rotor", new Bounds(1, 20, "A motor that starts takes some six times what it takes running."));

  private LimitBounds() {}

  /** Whether computations can work with the figure of a limit; otherwise it is reported. */
  static boolean check(Limit limit, Tree.Limit written, Consumer<Finding> findings) {
    Optional<Bounds> beyond = Optional.ofNullable(BOUNDS.get(limit.name()))
        .filter(bounds -> limit.value().si() < bounds.least || limit.value().si() > bounds.most);
    beyond.ifPresent(
        bounds -> findings.accept(
            Finding.error("limit-out-of-range", "the limit '" + limit.name() + "' cannot be " + limit.value())
                .at(written.value().span(),
                    "a figure from " + shown(bounds.least, limit) + " to " + shown(bounds.most, limit) + " is expected here")
                .because(bounds.why).build()));
    return beyond.isEmpty();
  }

  private static String shown(double figure, Limit limit) {
    boolean percent = limit.value().unit().symbol().equals("%");
    return new BigDecimal(String.valueOf(percent ? 100 * figure : figure)).stripTrailingZeros().toPlainString() + (percent ? " %" : "");
  }
}
