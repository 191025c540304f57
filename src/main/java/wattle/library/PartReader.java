package wattle.library;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.model.DeviceKind;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Metal;
import wattle.model.Protection;
import wattle.quantity.Dimension;
import wattle.syntax.Tree;

/** Reads parts and cable types. */
final class PartReader {
  private final Consumer<Finding> findings;

  PartReader(Consumer<Finding> findings) {
    this.findings = findings;
  }

  DeviceKind part(Tree.Part part) {
    String name = part.name().stream().map(Tree.Word::text).collect(Collectors.joining(" "));
    PropertyReader properties = new PropertyReader(part.properties(), findings);
    DeviceKind.Family family = DeviceKind.Family.valueOf(
        upper(properties.oneOf("family", words(DeviceKind.Family.values()), "appliance")));
    Set<DeviceKind.Need> needs = EnumSet.noneOf(DeviceKind.Need.class);
    for (String need : properties.words("needs")) {
      switch (need) {
        case "hot" -> needs.add(DeviceKind.Need.HOT);
        case "hots" -> needs.add(DeviceKind.Need.TWO_HOTS);
        case "three-hots" -> needs.addAll(Set.of(DeviceKind.Need.TWO_HOTS, DeviceKind.Need.THREE_HOTS));
        case "neutral" -> needs.add(DeviceKind.Need.NEUTRAL);
        case "ground" -> needs.add(DeviceKind.Need.GROUND);
        default ->
          findings.accept(
              Finding.error("property-value", "a device cannot need '" + need + "'")
                  .at(part.span(), "hot, hots, three-hots, neutral and ground are what a device can need")
                  .build());
      }
    }
    Optional<LoadClass> loadClass = properties.has("class")
        ? Optional.of(
            LoadClass.valueOf(upper(properties.oneOf("class", words(LoadClass.values()), "fixed-appliance"))))
        : Optional.empty();
    DeviceKind kind = new DeviceKind(
        name,
        family,
        needs,
        properties.words("halves"),
        loadClass,
        properties.flag("outlet"),
        properties.count("yokes", family == DeviceKind.Family.RECEPTACLE || family == DeviceKind.Family.SWITCH ? 1 : 0),
        properties.quantity("rating", Dimension.CURRENT),
        properties.quantity("on-legs", Dimension.NONE).map(q -> q.si()).orElse(0.0),
        properties.quantity("power-factor", Dimension.NONE).map(q -> q.si()).orElse(1.0),
        Load.Behavior.valueOf(
            upper(properties.oneOf("behavior", words(Load.Behavior.values()), "impedance"))),
        properties.count("ways", family == DeviceKind.Family.SWITCH ? 2 : 0),
        properties.words("protects").stream()
            .map(w -> Protection.valueOf(upper(w)))
            .collect(Collectors.toSet()),
        properties.flag("motor"),
        family == DeviceKind.Family.SOURCE
            ? Optional.of(DeviceKind.Grid.valueOf(upper(properties.oneOf("grid", words(DeviceKind.Grid.values()), "either"))))
            : Optional.empty());
    properties.finish();
    return kind;
  }

  CableKind cable(Tree.CableType cable) {
    PropertyReader properties = new PropertyReader(cable.properties(), findings);
    double insulation = celsius(properties, "insulation").orElse(60.0);
    Map<String, String> grounds = new LinkedHashMap<>();
    List<String> sizes = properties.figures("ground-sizes");
    for (int i = 0; i + 1 < sizes.size(); i += 2) {
      grounds.put(sizes.get(i), sizes.get(i + 1));
    }
    CableKind kind = new CableKind(
        cable.name().text(),
        cable.label().map(Tree.Text::value).orElse(cable.name().text()),
        properties.oneOf("metal", List.of("Cu", "Al"), "Cu").equals("Cu") ? Metal.COPPER : Metal.ALUMINUM,
        insulation,
        properties.oneOf("material", List.of("thermoplastic", "thermoset", "rubber"), "thermoplastic"),
        celsius(properties, "ampacity-at").orElse(insulation),
        properties.flag("single"),
        properties.oneOf("ground", List.of("bare", "insulated", "none"), "none"),
        properties.count("hots", 0),
        properties.flag("with-neutral"),
        properties.words("colors"),
        properties.word("neutral").orElse("white"),
        grounds,
        Set.copyOf(properties.words("places")));
    properties.finish();
    return kind;
  }

  private static Optional<Double> celsius(PropertyReader properties, String name) {
    return properties
        .quantity(name, Dimension.TEMPERATURE)
        .map(q -> q.in(wattle.quantity.Units.find("degC").orElseThrow()));
  }

  private static String upper(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }

  private static List<String> words(Enum<?>[] values) {
    return Arrays.stream(values).map(v -> v.name().toLowerCase(Locale.ROOT).replace('_', '-')).toList();
  }
}
