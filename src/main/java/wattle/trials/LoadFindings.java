package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import wattle.finding.Finding;
import wattle.model.Trial;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Loads that cannot have what they ask for. */
final class LoadFindings {
  private final TrialResult result;

  LoadFindings(TrialResult result) {
    this.result = result;
  }

  List<Finding> list() {
    List<Finding> findings = new ArrayList<>();
    for (HouseNetwork.Drawing load : result.network().loads()) {
      double volts = result.solution().elementVolts(load.element()).magnitude();
      Quantity got = Quantity.of(Math.rint(volts * 10) / 10, Units.VOLT);
      if (result.solution().unsettled().contains(load.element())) {
        findings.add(finding(load, "no steady voltage was found at '" + load.outlet().name() + "'", "last " + got));
      } else if (result.solution().isStarved(load.element())) {
        findings.add(
            finding(load, "'" + load.outlet().name() + "' gets " + got + " and cannot draw what it needs",
                "less than half of " + Quantity.of(load.outlet().nominalVolts(), Units.VOLT)));
      }
    }
    for (HouseNetwork.Feeding feeding : result.network().feedings()) {
      if (!feeding.holds() && result.solution().unsettled().contains(feeding.index())) {
        double volts = result.solution().elementVolts(feeding.index()).magnitude();
        findings.add(unsteady(feeding, Quantity.of(Math.rint(volts * 10) / 10, Units.VOLT)));
      }
    }
    return findings;
  }

  private Finding unsteady(HouseNetwork.Feeding feeding, Quantity last) {
    Trial trial = result.house().trials().get(result.name());
    return Finding
        .warning("load-not-served",
            "no steady voltage was found at '" + feeding.device() + "'" + (trial == null ? "" : " in " + trial.name()))
        .at(trial == null ? result.house().devices().get(feeding.device()).origin().name() : trial.origin().name(), "last " + last)
        .because("The source gives more than the wires carry away at any voltage.")
        .fix("let it give less, or use thicker wires")
        .build();
  }

  private Finding finding(HouseNetwork.Drawing load, String headline, String words) {
    Trial trial = result.house().trials().get(result.name());
    Finding.Builder finding = Finding.warning("load-not-served", headline + (trial == null ? "" : " in " + trial.name()))
        .because(
            "A load that holds its current or power takes more than the wires let through here; it was taken as a"
                + " resistance below half of its voltage.")
        .fix("use a smaller load, or thicker or shorter wire; a plain heater is written as impedance");
    return trial == null
        ? finding.at(result.house().devices().get(load.outlet().device()).origin().name(), words).build()
        : finding.at(trial.origin().name(), words).build();
  }
}
