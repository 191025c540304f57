package wattle.rules;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * Everything that rules may say of the things of a house, by kind and name. This is the one place where the model is
 * opened to rules; the table of properties in {@code stdlib/README.md} is printed from it.
 */
public final class Vocabulary {
  private static final Map<Kind, Map<String, Property>> BY_KIND = gather();

  private Vocabulary() {}

  /** Properties of a kind, by name, in the order in which they are documented. */
  public static Map<String, Property> of(Kind kind) {
    return BY_KIND.get(kind);
  }

  private static Map<Kind, Map<String, Property>> gather() {
    Map<Kind, Map<String, Property>> all = new EnumMap<>(Kind.class);
    all.put(Kind.HOUSE, HouseProperties.house());
    all.put(Kind.DWELLING, HouseProperties.dwelling());
    all.put(Kind.ROOM, RoomProperties.room());
    all.put(Kind.BOX, RoomProperties.box());
    all.put(Kind.DEVICE, DeviceProperties.device());
    all.put(Kind.SERVICE, SupplyProperties.service());
    all.put(Kind.ELECTRODE, SupplyProperties.electrode());
    all.put(Kind.PANEL, SupplyProperties.panel());
    all.put(Kind.BREAKER, SupplyProperties.breaker());
    all.put(Kind.FEEDER, SupplyProperties.feeder());
    all.put(Kind.BRANCH, BranchProperties.branch());
    all.put(Kind.RUN, BranchProperties.run());
    all.put(Kind.RACEWAY, RacewayProperties.raceway());
    all.put(Kind.WIRING, BranchProperties.wiring());
    all.replaceAll((kind, properties) -> Collections.unmodifiableMap(properties));
    return Collections.unmodifiableMap(all);
  }
}
