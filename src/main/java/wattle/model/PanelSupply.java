package wattle.model;

/** What a panel is fed from. */
public sealed interface PanelSupply {
  /** Straight from a service. */
  record FromService(String service) implements PanelSupply {}

  /** From a breaker in another panel. */
  record FromBreaker(BreakerId breaker) implements PanelSupply {}

  /** The plan does not say; a finding has been made. */
  record Unknown() implements PanelSupply {}
}
