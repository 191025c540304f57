package wattle.cli;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import picocli.CommandLine.Option;
import wattle.begin.Answers;
import wattle.begin.Appliance;
import wattle.begin.Country;
import wattle.begin.ServiceSize;
import wattle.begin.Space;
import wattle.begin.SupplyChoice;
import wattle.begin.Work;
import wattle.finding.NearNames;
import wattle.library.StandardLibrary;

/** The house that a first plan is for, as flags; each is also the answer to a question. */
final class HouseOptions {
  @Option(names = "--title", paramLabel = "TEXT", defaultValue = "House", description = "Title of the plan.")
  String title = "House";

  @Option(names = "--system", paramLabel = "VOLTS", defaultValue = "120/240",
      description = "Supply: 120/240, 120/208 (two hots of three), 208Y/120 (three-phase) or 230 (default: ${DEFAULT-VALUE}).")
  String system = "120/240";

  @Option(names = "--country", paramLabel = "COUNTRY", defaultValue = "us",
      description = "us, ca or other: the code pack follows from it (default: ${DEFAULT-VALUE}).")
  String country = "us";

  /** Null where it is not given: what is usual follows from the country and the system. */
  @Option(names = "--code", paramLabel = "PACK", completionCandidates = KnownWords.Codes.class,
      description = "Code pack, or none (default: us-2023, in Canada ca-2021; on 230 V none).")
  String code;

  @Option(names = "--dwellings", paramLabel = "N", defaultValue = "1",
      description = "Identical dwellings on the service, 1 to 40. Every figure except the service is for one dwelling (default: "
          + "${DEFAULT-VALUE}).")
  String dwellings = "1";

  @Option(names = "--work", paramLabel = "WORK", defaultValue = "new",
      description = "new, or existing work with breakers or fuses (default: ${DEFAULT-VALUE}).")
  String work = "new";

  /** Null where it is not given: what is usual follows from the system and the number of dwellings. */
  @Option(names = "--service", paramLabel = "A",
      description = {
          "Service in amperes: 100, 125, 150, 200, 225 or 400; for existing work and on 230 V also 60; for several dwellings also",
          "600, 800, 1000, 1200, 1600, 2000, 3000 or 4000 (default: 200; on 230 V 100; for several dwellings the smallest for their load).",
      })
  String service;

  @Option(names = "--area", paramLabel = "AREA", defaultValue = "150 m2",
      description = "Floor area with its unit, such as '150 m2' or '1600 ft2' (default: ${DEFAULT-VALUE}).")
  String area = "150 m2";

  @Option(names = "--storeys", paramLabel = "N", defaultValue = "1", description = "Stories (default: ${DEFAULT-VALUE}).")
  String storeys = "1";

  @Option(names = "--bedrooms", paramLabel = "N", defaultValue = "3", description = "Bedrooms (default: ${DEFAULT-VALUE}).")
  String bedrooms = "3";

  @Option(names = "--bathrooms", paramLabel = "N", defaultValue = "2", description = "Bathrooms (default: ${DEFAULT-VALUE}).")
  String bathrooms = "2";

  @Option(
      names = "--rooms",
      paramLabel = "ROOMS",
      defaultValue = "living,dining,laundry",
      description = "Other rooms, or none: living, family, dining, office, laundry, garage, basement (default: ${DEFAULT-VALUE}).")
  String rooms = "living,dining,laundry";

  @Option(
      names = "--appliances",
      paramLabel = "LIST",
      defaultValue = "range,dishwasher,dryer,water-heater",
      description = {
          "Appliances on their own circuits, or none: range, cooktop, wall-oven, dishwasher, disposal, microwave,",
          "dryer, water-heater, furnace, heat-pump, air-conditioner, baseboard, vehicle-charger, garage-door, freezer,",
          "sump-pump, well-pump, hot-tub, pool-pump, sauna (default: ${DEFAULT-VALUE}).",
      })
  String appliances = "range,dishwasher,dryer,water-heater";

  /** The flags as answers; one that cannot be is a failure that says what can. */
  Answers answers() {
    SupplyChoice supply = systemOf(system);
    Work kind = workOf(work);
    int many = countOf("dwellings", dwellings, 1, Answers.MOST_DWELLINGS);
    return new Answers(
        title, codeOf(supply, code == null ? usualCode(supply, country) : code), supply, kind, many,
        serviceOf(supply, many, kind, service == null ? usualService(supply, many) : service), areaOf(area),
        countOf("storeys", storeys, 1, Answers.MOST_STOREYS), countOf("bedrooms", bedrooms, 0, Answers.MOST_BEDROOMS),
        countOf("bathrooms", bathrooms, 0, Answers.MOST_BATHROOMS), namesOf(rooms, Space.class, Space::word, "room"),
        namesOf(appliances, Appliance.class, Appliance::word, "appliance"));
  }

  /** Whether the service is for us to choose: of several dwellings none is usual. On 230 V no code says what their load is. */
  boolean leavesTheServiceOpen() {
    return service == null && !dwellings.strip().equals("1") && systemOf(system) != SupplyChoice.SINGLE_230;
  }

  static String usualCode(SupplyChoice system, String country) {
    return system == SupplyChoice.SINGLE_230 ? "none" : countryOf(country).code();
  }

  static Country countryOf(String text) {
    return Country.of(text).orElseThrow(() -> new Failure("a country of '" + text + "' is none of "
        + String.join(", ", Arrays.stream(Country.values()).map(Country::word).toList())));
  }

  static String usualService(SupplyChoice system, int dwellings) {
    return system == SupplyChoice.SINGLE_230 ? dwellings > 4 ? "400" : dwellings > 1 ? "200" : "100" : dwellings > 1 ? "400" : "200";
  }

  static SupplyChoice systemOf(String text) {
    return SupplyChoice.of(text)
        .orElseThrow(
            () -> new Failure(
                "a system of '" + text + "' is none of "
                    + String.join(", ", Arrays.stream(SupplyChoice.values()).map(SupplyChoice::word).toList())));
  }

  static Work workOf(String text) {
    return Work.of(text)
        .orElseThrow(
            () -> new Failure(
                "work of '" + text + "' is none of " + String.join(", ", Arrays.stream(Work.values()).map(Work::word).toList())
                    + "; breakers and fuses are those of existing work"));
  }

  /** No pack of the library covers 230 V. */
  static String codeOf(SupplyChoice system, String text) {
    String pack = codeOf(text);
    if (system == SupplyChoice.SINGLE_230 && !pack.isEmpty()) {
      throw new Failure("code pack '" + pack + "' does not cover 230 V, and no other of the library does; use --code none");
    }
    return pack;
  }

  static String codeOf(String text) {
    List<String> known = StandardLibrary.packNames().stream().filter(p -> !p.equals("common")).toList();
    if (text.equals("none")) {
      return "";
    }
    if (!known.contains(text)) {
      throw new Failure("no code pack is called '" + text + "'; there are " + String.join(", ", known) + ", or none");
    }
    return text;
  }

  static ServiceSize serviceOf(SupplyChoice system, int dwellings, Work work, String text) {
    List<ServiceSize> sizes = ServiceSize.of(system, dwellings, work);
    String figure = text.strip().replaceFirst("\\s*A$", "");
    return sizes.stream().filter(s -> figure.equals(String.valueOf(s.amperes()))).findFirst()
        .orElseThrow(
            () -> new Failure(
                "a service of '" + text + "' is not one of "
                    + String.join(", ", sizes.stream().map(s -> String.valueOf(s.amperes())).toList())
                    + " amperes"
                    + (figure.equals("60") && work == Work.NEW ? "; 60 A is of existing work: --work breakers or fuses" : "")));
  }

  static String areaOf(String text) {
    String area = text.strip();
    if (!area.matches("\\d{1,6}(\\.\\d{1,3})? ?(m2|m²|ft2|ft²)")) {
      throw new Failure("an area of '" + text + "' cannot be read; write it with its unit, such as 150 m2 or 1600 ft2");
    }
    return area;
  }

  static int countOf(String what, String text, int least, int most) {
    String count = text.strip();
    if (!count.matches("\\d{1,3}") || Integer.parseInt(count) < least || Integer.parseInt(count) > most) {
      throw new Failure("'" + text + "' " + what + ": a number from " + least + " to " + most + " is expected");
    }
    return Integer.parseInt(count);
  }

  static <E extends Enum<E>> Set<E> namesOf(String text, Class<E> kind, Function<E, String> word, String what) {
    Set<E> named = EnumSet.noneOf(kind);
    List<E> all = Arrays.asList(kind.getEnumConstants());
    for (String part : text.split(",")) {
      String name = part.strip().toLowerCase(Locale.ROOT).replace(' ', '-');
      if (name.isEmpty() || name.equals("none")) {
        continue;
      }
      List<String> words = all.stream().map(word).toList();
      if (!words.contains(name)) {
        List<String> near = NearNames.of(name, words);
        throw new Failure(
            "no " + what + " is called '" + name + "'; "
                + (near.isEmpty() ? "there are " + String.join(", ", words) : "did you mean " + String.join(" or ", near) + "?"));
      }
      named.add(all.get(words.indexOf(name)));
    }
    return named;
  }
}
