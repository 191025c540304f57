package wattle.worksheet;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.model.Box;
import wattle.model.Device;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Origin;
import wattle.model.Panel;
import wattle.model.Room;
import wattle.model.Service;

/** Objections as findings about the plan: each at the element that it is about. */
public final class ObjectionFindings {
  private final House house;

  public ObjectionFindings(House house) {
    this.house = house;
  }

  /** Each once, in the order given. */
  public List<Finding> of(List<Objection> objections) {
    return objections.stream().distinct().map(this::finding).toList();
  }

  private Finding finding(Objection objection) {
    return Finding.of(objection.rule(), objection.severity(), objection.headline())
        .at(place(objection.element()), "")
        .because(objection.reason())
        .fix(objection.cure())
        .build();
  }

  private Span place(String element) {
    return Stream.of(
        Optional.ofNullable(house.devices().get(element)).map(Device::origin),
        Optional.ofNullable(house.boxes().get(element)).map(Box::origin),
        Optional.ofNullable(house.panels().get(element)).map(Panel::origin),
        Optional.ofNullable(house.rooms().get(element)).map(Room::origin),
        dwelling(element),
        Optional.ofNullable(house.services().get(element)).map(Service::origin),
        house.services().values().stream().findFirst().map(Service::origin),
        house.panels().values().stream().findFirst().map(Panel::origin))
        .flatMap(Optional::stream)
        .map(Origin::name)
        .findFirst()
        .orElse(new Span(house.source(), 0, 0));
  }

  private Optional<Origin> dwelling(String element) {
    return Optional.ofNullable(house.dwellings().get(element.equals("dwelling") ? "" : element)).map(Dwelling::origin);
  }
}
