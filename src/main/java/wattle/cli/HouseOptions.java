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
import wattle.begin.ServiceSize;
import wattle.begin.Space;
import wattle.finding.NearNames;
import wattle.library.StandardLibrary;

/** The house that a first plan is for, as flags; each is also the answer to a question. */
final class HouseOptions {
  @Option(names = "--title", paramLabel = "TEXT", defaultValue = "House", description = "Title of the plan.")
  String title = "House";

  @Option(names = "--code", paramLabel = "PACK", defaultValue = "us-2023", description = "Code pack, or none (default: ${DEFAULT-VALUE}).")
  String code = "us-2023";

  @Option(names = "--service", paramLabel = "A", defaultValue = "200",
      description = "Service in amperes: 100, 125, 150, 200, 225 or 400 (default: ${DEFAULT-VALUE}).")
  String service = "200";

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
          "Appliances with a circuit of their own, or none: range, cooktop, wall-oven, dishwasher, disposal, microwave,",
          "dryer, water-heater, furnace, heat-pump, air-conditioner, baseboard, vehicle-charger, garage-door, freezer,",
          "sump-pump, well-pump, hot-tub, pool-pump, sauna (default: ${DEFAULT-VALUE}).",
      })
  String appliances = "range,dishwasher,dryer,water-heater";

  /** The flags as answers; one that cannot be is a failure that says what can. */
  Answers answers() {
    return new Answers(
        title, codeOf(code), serviceOf(service), areaOf(area), countOf("storeys", storeys, 1, Answers.MOST_STOREYS),
        countOf("bedrooms", bedrooms, 0, Answers.MOST_BEDROOMS), countOf("bathrooms", bathrooms, 0, Answers.MOST_BATHROOMS),
        namesOf(rooms, Space.class, Space::word, "room"), namesOf(appliances, Appliance.class, Appliance::word, "appliance"));
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

  static ServiceSize serviceOf(String text) {
    String figure = text.strip().replaceFirst("\\s*A$", "");
    return figure.matches("\\d{1,4}")
        ? ServiceSize.of(Integer.parseInt(figure)).orElseThrow(() -> noService(text))
        : raise(noService(text));
  }

  private static Failure noService(String text) {
    return new Failure(
        "a service of '" + text + "' is not one of " + String.join(", ", ServiceSize.sizes().stream().map(String::valueOf).toList())
            + " amperes");
  }

  private static <T> T raise(Failure failure) {
    throw failure;
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
