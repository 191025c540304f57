package wattle.trials;

import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * The bus bar of a panel that several sources feed.
 *
 * @param leg of the bar that carries most
 * @param sum of all currents that flow into that bar, from wherever
 * @param most in any one cross-section of it, the main standing before the first row
 * @param at which cross-section that is
 * @param rating absent where the plan states none
 * @param share of the rating
 */
public record BusReading(
    String panel, String leg, Derivation sum, Derivation most, String at, Optional<Derivation> rating, Optional<Derivation> share) {}
