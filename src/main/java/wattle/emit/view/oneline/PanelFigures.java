package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.figures.HouseFigures;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.quantity.Quantity;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.Worksheet;

/** What an inspector asks of each panel: its calculated load, and the fault current that is available there. */
final class PanelFigures {
  private static final double KILO = 1000;

  private final HouseFigures figures;

  PanelFigures(HouseFigures figures) {
    this.figures = figures;
  }

  /** As in {@code calculated load 97.8 A, available fault current 6.9 kA}; a figure that cannot be had is said to be unknown. */
  String of(Panel panel) {
    List<String> words = new ArrayList<>();
    if (!figures.worksheets().methods().isEmpty()) {
      words.add(
          load(panel).map(w -> "calculated load " + oneDecimal(w.current().si()) + " A")
              .orElse("calculated load not known"));
    }
    double most = figures.faults().panel(panel.name()).mostAmperes();
    words.add(
        most > 0
            ? "available fault current " + (most < KILO ? Math.round(most) + " A" : oneDecimal(most / KILO) + " kA")
            : "available fault current not known");
    return String.join(", ", words);
  }

  private static String oneDecimal(double figure) {
    return Quantity.plain(Math.round(figure * 10) / 10.0, 6);
  }

  /** That of the service where the panel takes all of it, else that of its feeder. */
  private Optional<Worksheet> load(Panel panel) {
    return whole(panel).or(() -> figures.worksheets().feeder(panel.name())).flatMap(figures.worksheets()::least);
  }

  private Optional<HouseInputs.Read> whole(Panel panel) {
    long beside = figures.house().panels().values().stream().filter(p -> p.supply().equals(panel.supply())).count();
    return panel.supply() instanceof PanelSupply.FromService from && beside == 1
        ? figures.worksheets().services().stream().filter(r -> r.inputs().name().equals(from.service())).findFirst()
        : Optional.empty();
  }
}
