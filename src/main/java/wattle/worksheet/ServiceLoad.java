package wattle.worksheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Span;
import wattle.model.Breaker;
import wattle.model.Doubt;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Origin;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.quantity.Quantity;

/**
 * Services and feeders that are smaller than the load calculated for them. A code allows any method whose conditions hold,
 * so that the smallest of their results is the one to compare with. Where the plan lacks what every method needs, such as
 * a floor area, that is a finding, and what the plan does state is compared instead: the load is no less.
 */
public final class ServiceLoad {
  /** Amperes below which a difference is one of rounding; codes drop fractions of an ampere below a half. */
  static final double TOLERANCE = 0.5;

  /** Names of what is found here and may be silenced. */
  public static final Set<String> NAMES = Set.of("service-below-load", "feeder-below-load", UnknownLoad.NAME, UnknownLoad.RATING,
      UnevenSpread.NAME);

  /** Of what is missing, how much is named. */
  private static final int REASONS = 3;

  private final House house;
  private final HouseWorksheets worksheets;
  private final UnknownLoad unknown;

  private ServiceLoad(House house, HouseWorksheets worksheets) {
    this.house = house;
    this.worksheets = worksheets;
    unknown = new UnknownLoad(worksheets, house.doubts());
  }

  /** The findings, services first. */
  public static List<Finding> check(House house, HouseWorksheets worksheets) {
    return new ServiceLoad(house, worksheets).findings();
  }

  private List<Finding> findings() {
    if (worksheets.methods().isEmpty()) {
      // A plan that names no code is held against none.
      return house.codes().isEmpty() ? List.of() : house.services().values().stream().map(this::withoutMethod).toList();
    }
    List<Finding> findings = new ArrayList<>();
    for (HouseInputs.Read read : worksheets.services()) {
      tooSmall(read).ifPresent(w -> findings.add(finding("service-below-load", "service", w, others(read), ofService(w.name()))));
      unknown("service-below-load", "service", read, ofService(read.inputs().name())).ifPresent(findings::add);
      unrated("the service", read, ofService(read.inputs().name())).ifPresent(findings::add);
      UnevenSpread.finding(read, worksheets, ofService(read.inputs().name())).ifPresent(findings::add);
    }
    for (HouseInputs.Read read : worksheets.feeders()) {
      tooSmall(read)
          .ifPresent(w -> findings.add(finding("feeder-below-load", "the feeder of", w, others(certain(read)), ofFeeder(w.name()))));
      unknown("feeder-below-load", "the feeder of", read, ofFeeder(read.inputs().name())).ifPresent(findings::add);
      unrated("the feeder of", read, ofFeeder(read.inputs().name())).ifPresent(findings::add);
      UnevenSpread.finding(read, worksheets, ofFeeder(read.inputs().name())).ifPresent(findings::add);
    }
    return findings;
  }

  /** The codes of the plan have tables and rules, and no load calculation. */
  private Finding withoutMethod(Service service) {
    String codes = String.join(", ", house.codes());
    return Finding.advice(UnknownLoad.NAME, "the calculated load of the service '" + service.name() + "' is not known")
        .at(ofService(service.name()), "no load calculation in " + codes)
        .because("Not checked: whether it and its feeders are large enough. Code pack " + codes
            + " has no method of load calculation.")
        .fix("name a code that has one, such as use code us-2023, or put a table worksheet-methods into a file that the plan uses")
        .about(service.name())
        .build();
  }

  /** A load that is known, and nothing to hold it against. */
  private Optional<Finding> unrated(String what, HouseInputs.Read read, Span place) {
    String name = read.inputs().name();
    Optional<Worksheet> load = read.inputs().rating().isPresent() || isRatingInDoubt(name) ? Optional.empty() : worksheets.least(read);
    return load.map(w -> Finding.advice(UnknownLoad.RATING, "the rating of " + what + " '" + name + "' is not known")
        .at(place, "no rating is stated")
        .because("By the " + lower(w.method().title()) + " its load is " + terms(w) + ", " + amperes(w.sized().si())
            + ". Not checked: whether its rating is as much.")
        .fix(what.equals("the service") ? "state it in its line, such as service main 120/240 V 200 A" : "state the rating of its breaker")
        .figure("calculated load", power(w.total().si(), w))
        .figure("current", amperes(w.sized().si()))
        .source(w.method().source())
        .about(name)
        .build());
  }

  /** Whether a mistake in the plan may be why a service, or the breaker of a feeder, has no rating. */
  private boolean isRatingInDoubt(String name) {
    Panel panel = house.panels().get(name);
    return house.doubts().has(Doubt.SERVICE, name) || house.doubts().has(Doubt.PANELS) || house.doubts().has(Doubt.SUPPLY, name)
        || panel != null && panel.supply() instanceof PanelSupply.FromBreaker from
            && house.doubts().has(Doubt.RATING, from.breaker().toString());
  }

  private Optional<Worksheet> tooSmall(HouseInputs.Read read) {
    if (read.inputs().rating().isEmpty() || read.objections().stream().anyMatch(o -> o.severity() == Severity.ERROR)) {
      return Optional.empty();
    }
    return worksheets.least(certain(read)).filter(w -> w.spare().map(s -> s.si() < -TOLERANCE).orElse(false));
  }

  /** What of it is certain: an area that may belong elsewhere makes no fault. */
  private static HouseInputs.Read certain(HouseInputs.Read read) {
    return read.atLeast().map(i -> new HouseInputs.Read(i, read.objections())).orElse(read);
  }

  /** What cannot be calculated, with why; too much already by what is stated, or of a size that nobody knows. */
  private Optional<Finding> unknown(String rule, String what, HouseInputs.Read read, Span place) {
    List<Objection> reasons = unknown.reasons(read);
    if (reasons.isEmpty()) {
      return Optional.empty();
    }
    String name = what + " '" + read.inputs().name() + "'";
    Optional<Quantity> rating = read.inputs().rating();
    Optional<Worksheet> least = unknown.least(read);
    boolean above = least.flatMap(Worksheet::spare).filter(s -> s.si() < -TOLERANCE).isPresent();
    String why = String.join("; ", reasons.stream().limit(REASONS).map(Objection::headline).toList())
        + (reasons.size() > REASONS ? " and " + (reasons.size() - REASONS) + " more" : "");
    String rest = least.map(w -> "By the " + lower(w.method().title()) + ", without what the missing figure adds, it is "
        + terms(w) + ", " + amperes(w.sized().si()) + rating.map(r -> " of " + r).orElse("") + ".").orElse("");
    Finding.Builder finding = above
        ? Finding.error(
            rule, name + " is rated " + rating.orElseThrow() + " and its calculated load is at least " + amperes(least.get().sized().si()))
        : Finding.advice(UnknownLoad.NAME, "the calculated load of " + (rule.startsWith("service") ? "the " : "") + name + " is not known");
    finding.at(place, rating.map(Quantity::toString).orElse("")).because(capital(why) + "." + (rest.isEmpty() ? "" : " " + rest))
        .about(read.inputs().name());
    least.ifPresent(w -> finding.figure("least load", power(w.total().si(), w)).figure("least current", amperes(w.sized().si()))
        .source(w.method().source()));
    reasons.stream().map(Objection::cure).distinct().limit(REASONS).forEach(finding::fix);
    return Optional.of(finding.build());
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** What the other methods that apply give. */
  private String others(HouseInputs.Read read) {
    List<String> others = worksheets.applicable(read).stream().skip(1)
        .map(w -> amperes(w.sized().si()) + " by the " + lower(w.method().title()))
        .toList();
    return others.isEmpty() ? "" : " It is " + String.join(", ", others) + ".";
  }

  private Span ofService(String name) {
    Service service = house.services().get(name);
    boolean stated = service.rating().isPresent();
    return (stated ? service.origin() : main(name).orElse(service.origin())).name();
  }

  private Optional<Origin> main(String service) {
    return house.panels().values().stream()
        .filter(p -> p.supply().equals(new PanelSupply.FromService(service)))
        .flatMap(p -> p.main().stream())
        .map(MainDevice::origin)
        .findFirst();
  }

  private Span ofFeeder(String name) {
    Panel panel = house.panels().get(name);
    return panel.supply() instanceof PanelSupply.FromBreaker from
        ? house.breaker(from.breaker()).map(Breaker::origin).orElse(panel.origin()).name()
        : panel.origin().name();
  }

  private static Finding finding(String rule, String what, Worksheet sheet, String others, Span place) {
    String rating = sheet.rating().orElseThrow().value().text();
    String current = amperes(sheet.current().si());
    Finding.Builder finding = Finding
        .error(rule, what + " '" + sheet.name() + "' is rated " + rating + " and its calculated load is " + current + sized(sheet))
        .at(place, rating)
        .because(
            "By the " + lower(sheet.method().title())
                + (others.isEmpty() ? ", the only one that applies" : ", the smallest of those that apply")
                + ", it is " + terms(sheet) + onLegs(sheet) + ending(sheet) + others)
        .figure("calculated load", power(sheet.total().si(), sheet))
        .figure("current", current)
        .figure("rating", rating)
        .source(sheet.method().source())
        .about(sheet.name());
    sheet.nextRating().ifPresent(n -> finding.fix("make it " + n.value().text() + ", with conductors to match, or take load off it"));
    return finding.build();
  }

  /** What each leg carries, where that is not the whole over the volts between them: the rating has to hold the heaviest. */
  private static String onLegs(Worksheet sheet) {
    double most = sheet.legs().values().stream().mapToDouble(Derivation::si).max().orElse(0);
    double least = sheet.legs().values().stream().mapToDouble(Derivation::si).min().orElse(0);
    return most - least < 0.05
        ? ""
        : ", which is not even: " + String.join(", ",
            sheet.legs().entrySet().stream().map(l -> amperes(l.getValue().si()) + " on leg " + l.getKey()).toList())
            + ", and the heaviest counts";
  }

  /** What happens; where only the continuous part is too much, the breaker need not trip, and the rating is still too small. */
  private static String ending(Worksheet sheet) {
    boolean trips = sheet.rating().map(r -> sheet.current().si() > r.si()).orElse(true);
    return trips
        ? "; its overcurrent device will trip when that much is on."
        : "; its rating has to carry the continuous part at 125 %, and does not.";
  }

  private static String sized(Worksheet sheet) {
    return sheet.sized().si() > sheet.current().si() + 0.05
        ? ", " + amperes(sheet.sized().si()) + " with its continuous part at 125 %"
        : "";
  }

  /** The sum, with the steps of one demand as one term. */
  private static String terms(Worksheet sheet) {
    Map<String, Double> terms = new LinkedHashMap<>();
    sheet.lines().forEach(l -> l.result().ifPresent(r -> terms.merge(l.name().split(",")[0], r.si(), Double::sum)));
    String total = power(sheet.total().si(), sheet);
    return terms.size() == 1
        ? total
        : String.join(" + ", terms.entrySet().stream().map(t -> power(t.getValue(), sheet) + " " + t.getKey()).toList()) + " = " + total;
  }

  private static String lower(String title) {
    return title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
  }

  private static String power(double value, Worksheet sheet) {
    return Math.round(value) + (sheet.method().mechanism().countsWatts() ? " W" : " VA");
  }

  private static String amperes(double value) {
    return Quantity.plain(Math.round(value * 10) / 10.0, 4) + " A";
  }
}
