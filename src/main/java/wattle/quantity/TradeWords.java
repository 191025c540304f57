package wattle.quantity;

import java.util.Map;

/** What a tradesperson calls each dimension. Apart from {@link Dimension}, whose constants must be there first. */
final class TradeWords {
  private static final Map<Dimension, String> WORDS = Map.ofEntries(
      Map.entry(Dimension.NONE, "a plain number"),
      Map.entry(Dimension.LENGTH, "a length such as 3 m or 10 ft"),
      Map.entry(Dimension.AREA, "an area such as 186 m2 or 2000 ft2"),
      Map.entry(Dimension.VOLUME, "a volume such as 21 in3 or 344 cm3"),
      Map.entry(Dimension.TIME, "a time such as 0.1 s"),
      Map.entry(Dimension.FREQUENCY, "a frequency such as 60 Hz"),
      Map.entry(Dimension.CURRENT, "a current such as 15 A"),
      Map.entry(Dimension.VOLTAGE, "a voltage such as 120 V"),
      Map.entry(Dimension.POWER, "a power such as 1500 W or 12 kW"),
      Map.entry(Dimension.ENERGY, "an energy such as 10 kWh"),
      Map.entry(Dimension.RESISTANCE, "a resistance such as 0.5 ohm"),
      Map.entry(Dimension.TEMPERATURE, "a temperature such as 30 degC"),
      Map.entry(Dimension.LET_THROUGH, "a let-through such as 57000 A2s"),
      Map.entry(Dimension.RESISTANCE_PER_LENGTH, "a resistance per length such as 10 ohm/km"),
      Map.entry(Dimension.POWER_PER_LENGTH, "a power per length such as 5 W/m"),
      Map.entry(Dimension.POWER_PER_AREA, "a load per area such as 33 VA/m2"));

  private TradeWords() {}

  static String of(Dimension dimension) {
    String words = WORDS.get(dimension);
    return words == null ? "a quantity in " + dimension.symbol() : words;
  }
}
