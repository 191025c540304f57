package wattle.rules;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Doubt;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.quantity.Dimension;

/** What rules may say of the plan as a whole and of the building. */
final class HouseProperties {
  private static final Set<String> FUELS = Set.of("gas-heated", "gas-cooking", "gas-water-heating", "oil-heated", "fireplace");

  private HouseProperties() {}

  static Map<String, Property> house() {
    return new Properties<>(House.class)
        .words("title", "its title", (f, h) -> h.title())
        .things("services", Kind.SERVICE, "all of them", (f, h) -> h.services().values()).rests(Doubt.SERVICES)
        .things("panels", Kind.PANEL, "all of them", (f, h) -> h.panels().values()).rests(Doubt.PANELS)
        .things("branches", Kind.BRANCH, "all of them", (f, h) -> h.branches().values()).rests(Doubt.BRANCHES)
        .things("rooms", Kind.ROOM, "all of them", (f, h) -> h.rooms().values()).rests(Doubt.ROOMS)
        .things("devices", Kind.DEVICE, "all of them", (f, h) -> h.devices().values()).rests(Doubt.DEVICES)
        .things("dwellings", Kind.DWELLING, "all of them", (f, h) -> h.dwellings().values()).rests(Doubt.DWELLING)
        .made();
  }

  static Map<String, Property> dwelling() {
    return new Properties<>(Dwelling.class, Doubt.DWELLING)
        .words("name", "its name", (f, d) -> d.name().or(() -> Optional.of("the dwelling"))).sure()
        .figure("floor-area", Dimension.AREA, "living area", (f, d) -> Optional.ofNullable(d.facts().get("floor-area")))
        .stated("floor-area 186 m2 in the dwelling", "floor-area 2000 ft2 in the dwelling")
        .figure("storeys", Dimension.NONE, "number of stories", (f, d) -> Optional.ofNullable(d.facts().get("storeys")))
        .stated("storeys 2 in the dwelling")
        .figure("dwellings", Dimension.NONE, "how many dwellings are identical to this one, including itself",
            (f, d) -> Optional.ofNullable(d.facts().get("dwellings")))
        .truth("lighting-planned", "whether the plan shows the lighting: a light in more than three quarters of the rooms that need one",
            (f, d) -> f.lightingPlanned())
        .truth("burns-fuel", "whether the plan says that gas, oil or wood is burnt in it",
            (f, d) -> d.flags().stream().anyMatch(FUELS::contains))
        .wordSet("flags", "facts without a figure, such as gas-heated", (f, d) -> d.flags())
        .things("services", Kind.SERVICE, "services of the plan", (f, d) -> f.house().services().values()).rests(Doubt.SERVICES)
        .things("rooms", Kind.ROOM, "rooms with something that its panels feed; all of the plan where it names no panels",
            (f, d) -> f.roomsOf(d))
        .rests(Doubt.ROOMS, Doubt.PANELS, Doubt.FED).kept()
        .things("branches", Kind.BRANCH, "branches from its panels and from what those feed; all of the plan where it names no panels",
            (f, d) -> f.branchesOf(d))
        .rests(Doubt.BRANCHES, Doubt.PANELS, Doubt.FED).kept()
        .things("devices", Kind.DEVICE, "devices of its rooms", (f, d) -> f.devicesOf(d))
        .rests(Doubt.DEVICES, Doubt.PANELS, Doubt.FED).kept()
        .made();
  }
}
