package wattle.conductors;

import wattle.library.Library;
import wattle.model.House;

/**
 * All that can be asked about the conductors of a house, made once for a compilation; threads may share it.
 *
 * @param runs how each run is laid
 * @param impedances resistance and reactance
 * @param ampacities what a conductor may carry
 * @param terminations what the terminals at its ends are marked for
 * @param breakers what guards it
 * @param sizes the thinnest that will do
 * @param grounds sizes of grounds and of services
 * @param raceways how full they are
 * @param shortCircuit what a fault does to it
 */
public record Conductors(
    RunConditions runs,
    Impedances impedances,
    Ampacities ampacities,
    Terminations terminations,
    BreakerSizes breakers,
    ConductorSizes sizes,
    GroundSizes grounds,
    Raceways raceways,
    ShortCircuit shortCircuit) {
  public static Conductors of(House house, Library library) {
    Ampacities ampacities = new Ampacities(library);
    BreakerSizes breakers = new BreakerSizes(library);
    return new Conductors(
        new RunConditions(house, library), new Impedances(library), ampacities,
        new Terminations(house, ampacities), breakers,
        new ConductorSizes(ampacities, breakers), new GroundSizes(library), new Raceways(house, library), new ShortCircuit(library));
  }
}
