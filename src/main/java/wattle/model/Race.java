package wattle.model;

import wattle.quantity.Quantity;

/**
 * Kind and trade size of a raceway.
 *
 * @param text as the plan wrote it, such as {@code 3/4 in EMT}
 * @param kind such as {@code EMT}
 * @param size a trade size in inches, or its designator in millimeters; neither is measured anywhere on the raceway
 */
public record Race(String text, String kind, Quantity size) {}
