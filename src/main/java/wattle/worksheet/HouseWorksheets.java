package wattle.worksheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import wattle.finding.Severity;
import wattle.library.Library;
import wattle.memo.Once;
import wattle.memo.OnceEach;
import wattle.model.House;
import wattle.model.Panel;

/**
 * Worksheets of a house, by the methods of its code packs. Those of a service, which is large, are calculated once by each
 * method; threads may share it.
 */
public final class HouseWorksheets {
  /** The last part of the name of a dwelling that is no single dwelling. */
  private static final Pattern SUITE = Pattern.compile("(?i)(^|\\.)(suite|apartment|apt|flat)[^.]*$");

  /** Dwellings of a quadruplex, whose units the Canadian code counts as single dwellings. */
  private static final int MOST_SINGLE = 4;

  private final House house;
  private final Worksheets worksheets;
  private final HouseInputs inputs;
  private final Once<List<HouseInputs.Read>> services;
  private final OnceEach<OfService, Outcome> outcomes = new OnceEach<>(this::calculated);

  /** @param service its place among the services */
  private record OfService(Method method, int service) {}

  public HouseWorksheets(House house, Library library) {
    this.house = house;
    worksheets = new Worksheets(library);
    inputs = new HouseInputs(house, library);
    services = new Once<>(inputs::services);
  }

  public List<Method> methods() {
    return worksheets.methods();
  }

  public Optional<Method> method(String name) {
    return worksheets.method(name);
  }

  public List<HouseInputs.Read> services() {
    return services.get();
  }

  public List<HouseInputs.Read> feeders() {
    return inputs.feeders();
  }

  /** Of a panel's feeder; absent where the plan has no such panel. */
  public Optional<HouseInputs.Read> feeder(String panel) {
    return Optional.ofNullable(house.panels().get(panel)).map((Panel p) -> inputs.feeder(p));
  }

  /** By one method, with what was wrong with the inputs among the objections. */
  public Outcome calculate(Method method, HouseInputs.Read read) {
    for (int service = 0; service < services().size(); service++) {
      if (services().get(service) == read) {
        return outcomes.get(new OfService(method, service));
      }
    }
    return calculated(method, read);
  }

  private Outcome calculated(OfService of) {
    return calculated(of.method, services().get(of.service));
  }

  private Outcome calculated(Method method, HouseInputs.Read read) {
    List<Objection> objections = new ArrayList<>(read.objections());
    if (objections.stream().anyMatch(o -> o.severity() == Severity.ERROR)) {
      return new Outcome(method, Optional.empty(), objections);
    }
    Outcome outcome = worksheets.calculate(method, read.inputs());
    objections.addAll(outcome.objections());
    return new Outcome(method, outcome.worksheet(), objections);
  }

  /** By every method. */
  public List<Outcome> compare(HouseInputs.Read read) {
    return methods().stream().map(m -> calculate(m, read)).toList();
  }

  /** The method that is usual for what hangs on a service or feeder: the first whose number of dwellings fits. */
  public Optional<Method> usual(Inputs read) {
    boolean farm = isFarm(read);
    return methods().stream().filter(m -> m.mechanism().isForFarms() == farm && m.mechanism().isForSeveral() == read.dwellingCount() > 1)
        .findFirst();
  }

  /**
   * The method that a service or feeder is judged by, and that all commands speak of: of those whose conditions hold the one with the
   * smallest load; where none has a result the usual one, whose objections tell what is missing.
   */
  public Optional<Method> deciding(HouseInputs.Read read) {
    return least(read).map(Worksheet::method).or(() -> usual(read.inputs()));
  }

  /** The smallest load of those methods whose conditions hold, which is what a code asks for at least. */
  public Optional<Worksheet> least(HouseInputs.Read read) {
    return applicable(read).stream().findFirst();
  }

  /** The least number of circuits of the dwelling; absent where the code has none, or not one whole dwelling is served. */
  public Optional<LeastCircuits> leastCircuits(HouseInputs.Read read) {
    return worksheets.leastCircuits(read.inputs(), inputs.general(read.inputs().name()));
  }

  /** By each method whose conditions hold, the smallest load first. */
  public List<Worksheet> applicable(HouseInputs.Read read) {
    return methods().stream()
        .filter(m -> applies(m, read.inputs()) && isForDwellings(m.mechanism(), read.inputs()))
        .map(m -> calculate(m, read))
        .flatMap(o -> o.worksheet().stream())
        .sorted(Comparator.comparingDouble(w -> w.sized().si()))
        .toList();
  }

  private static boolean isFarm(Inputs inputs) {
    return !inputs.farm().isEmpty() && inputs.dwellings().isEmpty();
  }

  /** The methods for existing dwellings are for a service or feeder that stays, and gets more load. */
  private static boolean applies(Method method, Inputs inputs) {
    Mechanism mechanism = method.mechanism();
    if (mechanism.isForFarms() || isFarm(inputs)) {
      return mechanism.isForFarms() && isFarm(inputs);
    }
    if (mechanism.isForExisting()) {
      return inputs.grows() && (mechanism != Mechanism.DWELLING_EXISTING || inputs.dwellingCount() == 1);
    }
    return mechanism.isForSeveral() == inputs.dwellingCount() > 1;
  }

  /**
   * Whether a Canadian method is for these dwellings. A suite or an apartment is calculated by 8-202 1); a house, a row house
   * and a unit of a building of up to four are single dwellings, by 8-200 1). Which it is goes by its name; where a building has more
   * dwellings and the name does not say, each method is shown. What feeds two to four of which none is called a suite is calculated as
   * they are, by 8-200 2), and not by 8-202 3), which would come to less.
   */
  private boolean isForDwellings(Mechanism mechanism, Inputs inputs) {
    int count = inputs.dwellingCount();
    if (mechanism == Mechanism.CANADIAN_APARTMENTS && count > 1 && count <= MOST_SINGLE) {
      return inputs.dwellings().stream().anyMatch(d -> SUITE.matcher(d.name()).find());
    }
    if (mechanism != Mechanism.CANADIAN_SUITE && mechanism != Mechanism.CANADIAN_SINGLE || inputs.dwellingCount() != 1) {
      return true;
    }
    boolean feeder = inputs.scope() == Inputs.Scope.FEEDER;
    boolean named = feeder && inputs.dwellings().stream().map(DwellingUnit::name).anyMatch(n -> SUITE.matcher(n).find());
    boolean many = feeder && services().stream().mapToInt(s -> s.inputs().dwellingCount()).sum() > MOST_SINGLE;
    return mechanism == Mechanism.CANADIAN_SUITE ? named || many : !named;
  }
}
