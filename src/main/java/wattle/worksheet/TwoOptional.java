package wattle.worksheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Two dwellings on one service or feeder by NFPA 70 220.85: as three alike by 220.84. Where the two differ, three of the heavier one are
 * taken, which is no less than three of any that the article could mean.
 */
final class TwoOptional implements Calculation {
  private static final int DWELLINGS = 2;
  private static final int TAKEN = 3;

  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    List<Objection> objections = new ArrayList<>(Conditions.areas(inputs));
    objections.addAll(SeveralOptional.unfit(inputs));
    if (inputs.dwellingCount() != DWELLINGS) {
      objections.add(
          Objection.error(
              "method-for-two-dwellings", inputs.name(),
              Conditions.count(inputs.dwellingCount()) + " on '" + inputs.name() + "', and this method is for two",
              "It figures two dwellings as three identical ones.",
              "use the method for " + (inputs.dwellingCount() < DWELLINGS ? "a single dwelling" : "several dwellings")));
    }
    return objections;
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    DwellingUnit heavier = inputs.dwellings().stream()
        .max(Comparator.comparingDouble(u -> SeveralOptional.connected(inputs.of(List.of(u.alone())).withoutCommon(), figures)))
        .orElseThrow();
    Tally load = new Tally();
    SeveralOptional.add(inputs.of(List.of(heavier.alike(TAKEN))).withoutCommon(), figures, load);
    SeveralOptional.addCommon(inputs, figures, load);
    return Capacity.of(method, inputs, figures, load, StandardMethod.neutral(inputs, figures), Optional.empty());
  }
}
