package wattle.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.begin.Answers;
import wattle.begin.Appliance;
import wattle.begin.Country;
import wattle.begin.ServiceSize;
import wattle.begin.Space;
import wattle.begin.SupplyChoice;
import wattle.begin.Work;

/** Asks for the house of a first plan; an empty answer takes what stands in brackets, a wrong one is asked again. */
final class Questions {
  /** After so many wrong answers to one question nobody is answering. */
  private static final int MOST_TRIES = 5;

  private final BufferedReader in;
  private final PrintWriter out;

  /** @param out where questions go; not where the plan may go */
  Questions(InputStream in, PrintWriter out) {
    this.in = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    this.out = out;
  }

  /** @param usual what is taken where an answer is empty */
  HouseOptions ask(HouseOptions usual) {
    String systems = Stream.of(SupplyChoice.values()).map(SupplyChoice::word).collect(Collectors.joining(", "));
    String spaces = Stream.of(Space.values()).map(Space::word).collect(Collectors.joining(", "));
    String appliances = Stream.of(Appliance.values()).map(Appliance::word).collect(Collectors.joining(", "));
    HouseOptions given = new HouseOptions();
    given.title = question("Title of the plan", usual.title, text -> {});
    given.system = question("System in volts (" + systems + ")", usual.system, HouseOptions::systemOf);
    SupplyChoice system = HouseOptions.systemOf(given.system);
    given.country = system == SupplyChoice.SINGLE_230
        ? usual.country
        : question("Country, for the code (" + Stream.of(Country.values()).map(Country::word).collect(Collectors.joining(", ")) + ")",
            usual.country, HouseOptions::countryOf);
    given.code = question("Code pack, or none", usual.code == null ? HouseOptions.usualCode(system, given.country) : usual.code,
        text -> HouseOptions.codeOf(system, text));
    given.work = question("New work, or existing work with breakers or fuses (new, breakers, fuses)", usual.work, HouseOptions::workOf);
    Work work = HouseOptions.workOf(given.work);
    given.dwellings = count("dwellings", "Identical dwellings", usual.dwellings, 1, Answers.MOST_DWELLINGS);
    int dwellings = HouseOptions.countOf("dwellings", given.dwellings, 1, Answers.MOST_DWELLINGS);
    given.service = service(usual, system, dwellings, work);
    String each = dwellings > 1 ? " of each" : "";
    given.area = question("Floor area with its unit" + each, usual.area, HouseOptions::areaOf);
    given.storeys = count("storeys", "Stories", usual.storeys, 1, Answers.MOST_STOREYS);
    given.bedrooms = count("bedrooms", "Bedrooms", usual.bedrooms, 0, Answers.MOST_BEDROOMS);
    given.bathrooms = count("bathrooms", "Bathrooms", usual.bathrooms, 0, Answers.MOST_BATHROOMS);
    given.rooms = question("Other rooms, or none (" + spaces + ")", usual.rooms,
        text -> HouseOptions.namesOf(text, Space.class, Space::word, "room"));
    given.appliances = question("Appliances, or none (" + appliances + ")", usual.appliances,
        text -> HouseOptions.namesOf(text, Appliance.class, Appliance::word, "appliance"));
    return given;
  }

  /** Of several dwellings an empty answer leaves the service open. */
  private String service(HouseOptions usual, SupplyChoice system, int dwellings, Work work) {
    String sizes = ServiceSize.of(system, dwellings, work).stream().map(s -> String.valueOf(s.amperes()))
        .collect(Collectors.joining(", "));
    String open = "least for the load";
    String preset = usual.service != null ? usual.service : dwellings > 1 ? open : HouseOptions.usualService(system, dwellings);
    String answer = question("Service in amperes (" + sizes + ")", preset, text -> {
      if (!text.equals(open) || dwellings == 1) {
        HouseOptions.serviceOf(system, dwellings, work, text);
      }
    });
    return answer.equals(open) ? null : answer;
  }

  private String count(String what, String question, String usual, int least, int most) {
    return question(question, usual, text -> HouseOptions.countOf(what, text, least, most));
  }

  private String question(String question, String usual, Consumer<String> check) {
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      out.print(question + " [" + usual + "]: ");
      out.flush();
      String line = line();
      String answer = line.isBlank() ? usual : line.strip();
      try {
        check.accept(answer);
        return answer;
      } catch (Failure e) {
        out.println(e.getMessage());
      }
    }
    throw new Failure("no usable answer to: " + question);
  }

  private String line() {
    try {
      String line = in.readLine();
      if (line == null) {
        throw new Failure("the answers ended before the questions did; nothing written");
      }
      return line;
    } catch (IOException e) {
      throw new Failure("the answers cannot be read: " + e.getMessage());
    }
  }
}
