package wattle.worksheet;

import java.util.List;
import java.util.Optional;

/** Farm buildings without a dwelling on the same service or feeder: NFPA 70 Article 220 Part V alone. */
final class FarmMethod implements Calculation {
  @Override
  public List<Objection> objections(Inputs inputs, Figures figures) {
    return inputs.farm().isEmpty() || !inputs.dwellings().isEmpty()
        ? List.of(
            Objection.error("method-for-farm-buildings", inputs.name(),
                "'" + inputs.name() + "' feeds " + (inputs.farm().isEmpty() ? "no farm building" : "a dwelling too")
                    + ", and this method is for farm buildings alone",
                "Its factors are for farm loads; a dwelling on the same service is added by the standard or the optional method.",
                "use the standard method"))
        : List.of();
  }

  @Override
  public Worksheet calculate(Method method, Inputs inputs, Figures figures) {
    Tally load = new Tally();
    Tally neutral = new Tally();
    new FarmLoads(inputs, figures).add(load, neutral);
    CommonOutlets.add(inputs, figures, load, neutral);
    return Capacity.of(method, inputs, figures, load, neutral, Optional.empty());
  }
}
