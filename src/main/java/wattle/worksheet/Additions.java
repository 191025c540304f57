package wattle.worksheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.library.Library;
import wattle.model.Device;
import wattle.model.DeviceKind.Need;
import wattle.model.House;
import wattle.model.LoadClass;
import wattle.model.Panel;
import wattle.model.PanelSupply;

/**
 * "Can I add this?": the worksheets of a house before and after loads are added to a panel, for its feeder, for the
 * feeders above it and for the service, by every method whose conditions hold.
 */
public final class Additions {
  private final House house;
  private final HouseWorksheets worksheets;
  private final Territory territory;

  public Additions(House house, HouseWorksheets worksheets) {
    this.house = house;
    this.worksheets = worksheets;
    territory = new Territory(house);
  }

  /** A device that nothing feeds yet as a load; absent for one that adds nothing of its own, or is a source. */
  public static Optional<ConnectedLoad> asLoad(Device device, Library library) {
    double counted = new Nameplate(library).of(device);
    Optional<LoadClass> loadClass = device.kind().loadClass();
    if (loadClass.isEmpty() || loadClass.get() == LoadClass.SOURCE || UnitReader.isGeneral(loadClass.get())
        || !(counted > 0)) {
      return Optional.empty();
    }
    boolean two = device.kind().needs().contains(Need.TWO_HOTS);
    double share = !two ? 1 : device.kind().needs().contains(Need.NEUTRAL) ? device.kind().shareOnLegs() : 0;
    return Optional.of(
        new ConnectedLoad(
            device.title(), loadClass.get(), counted, share, Optional.empty(), device.kind().motor(), true, 1, true));
  }

  /**
   * Works it out.
   *
   * @param panel where they are added; absent for right at the service
   * @return for each feeder on the way and the service, what came of each method, most favorable first
   */
  public Map<String, List<Addition>> calculate(List<ConnectedLoad> loads, Optional<Panel> panel) {
    Map<String, List<Addition>> answers = new LinkedHashMap<>();
    Optional<String> dwelling = panel.flatMap(territory::dwellingOf).map(d -> d.name().orElse("dwelling"));
    for (HouseInputs.Read read : reads(panel)) {
      Inputs with = read.inputs();
      for (ConnectedLoad load : loads) {
        with = with.with(load, panel.isPresent() ? dwelling : firstOf(with));
      }
      answers.put(read.inputs().name(), compare(read, new HouseInputs.Read(with, read.objections())));
    }
    return answers;
  }

  private static Optional<String> firstOf(Inputs inputs) {
    return inputs.dwellings().stream().map(DwellingUnit::name).findFirst();
  }

  /** What the inputs of these feeders and services lack, by every method, each once. */
  public List<Objection> objections(Optional<Panel> panel) {
    List<Objection> all = new ArrayList<>();
    for (HouseInputs.Read read : reads(panel)) {
      for (Outcome outcome : worksheets.compare(read)) {
        all.addAll(outcome.objections());
      }
    }
    return all.stream().distinct().toList();
  }

  private List<HouseInputs.Read> reads(Optional<Panel> panel) {
    List<HouseInputs.Read> reads = new ArrayList<>();
    if (panel.isEmpty()) {
      return worksheets.services();
    }
    Panel at = panel.get();
    for (int steps = 0; steps <= house.panels().size(); steps++) {
      if (!(at.supply() instanceof PanelSupply.FromBreaker from)) {
        break;
      }
      worksheets.feeder(at.name()).ifPresent(reads::add);
      at = house.panels().getOrDefault(from.breaker().panel(), at);
    }
    Optional<String> service = house.serviceOf(panel.get()).map(s -> s.name());
    worksheets.services().stream().filter(r -> service.equals(Optional.of(r.inputs().name()))).forEach(reads::add);
    return reads;
  }

  private List<Addition> compare(HouseInputs.Read before, HouseInputs.Read after) {
    List<Addition> additions = new ArrayList<>();
    for (Worksheet with : worksheets.applicable(after)) {
      worksheets.calculate(with.method(), before).worksheet().ifPresent(without -> additions.add(new Addition(without, with)));
    }
    return additions;
  }
}
