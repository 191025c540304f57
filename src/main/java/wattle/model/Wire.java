package wattle.model;

import wattle.quantity.WireSize;

/**
 * One conductor of a cable or raceway, before anything is connected to it.
 *
 * @param purpose whether it is made to be a current-carrying wire, a neutral or a ground
 * @param color its color by the code's convention, {@code bare} for one without insulation
 */
public record Wire(Purpose purpose, WireSize size, Metal metal, String color) {
  /** What a conductor is made for; what it does on a run is its {@link Role}. */
  public enum Purpose {
    HOT, NEUTRAL, GROUND
  }
}
