package wattle.worksheet;

import java.util.List;

/** The mechanism of a method. */
interface Calculation {
  /** What the method lacks, and which of its conditions do not hold; with an error among them nothing is calculated. */
  List<Objection> objections(Inputs inputs, Figures figures);

  /**
   * The worksheet of inputs to which there is no grave objection.
   *
   * @throws Figures.Missing where the pack lacks a figure
   */
  Worksheet calculate(Method method, Inputs inputs, Figures figures);
}
