package wattle.balance;

import java.util.ArrayList;
import java.util.List;
import wattle.finding.Finding;
import wattle.model.Breaker;
import wattle.model.Doubt;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Pole;
import wattle.model.Status;

/** Whether the breakers of a panel go into it at all. */
public final class PanelSpace {
  private PanelSpace() {}

  /** A finding for each panel whose breakers need more slots than it has, however they are placed. */
  public static List<Finding> check(House house) {
    List<Finding> findings = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      long whole = poles(panel, false);
      long halves = poles(panel, true);
      long needed = whole + (halves + 1) / 2;
      if (panel.slotCount().isPresent() && !house.doubts().has(Doubt.PANEL, panel.name()) && needed > panel.slotCount().get()) {
        int count = panel.slotCount().get();
        String sum = whole + " full-size" + (halves == 0 ? "" : " and " + halves + " half-size");
        findings.add(
            Finding.error("panel-overfull", "the breakers of panel '" + panel.name() + "' take " + needed + " slots and it has " + count)
                .at(panel.origin().name(), sum + " poles")
                .because("In any arrangement, " + (needed - count) + (needed - count == 1 ? " slot is" : " slots are") + " missing.")
                .figure("slots needed", Long.toString(needed))
                .figure("slots", Integer.toString(count))
                .fix("move circuits to a subpanel, or use a panel of at least " + needed + " slots")
                .build());
      }
    }
    return findings;
  }

  private static long poles(Panel panel, boolean half) {
    return panel.breakers().stream()
        .filter(b -> b.status() != Status.TO_REMOVE)
        .map(Breaker::poles)
        .flatMap(List::stream)
        .map(Pole::slot)
        .filter(s -> s.half().isPresent() == half)
        .count();
  }
}
