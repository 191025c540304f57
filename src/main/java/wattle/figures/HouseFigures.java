package wattle.figures;

import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Supplier;
import wattle.acceptance.Measurement;
import wattle.acceptance.Measurements;
import wattle.balance.Balance;
import wattle.balance.PanelBalance;
import wattle.boxes.BoxFill;
import wattle.conductors.Conductors;
import wattle.faults.FaultChecks;
import wattle.faults.Faults;
import wattle.faults.TimeCurrent;
import wattle.finding.Finding;
import wattle.library.Library;
import wattle.loads.ConnectedLoads;
import wattle.lockout.Lockout;
import wattle.lockout.Place;
import wattle.materials.Materials;
import wattle.memo.Once;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;
import wattle.trials.SolvedTrials;
import wattle.trials.VoltageProfile;
import wattle.trials.WorstCases;
import wattle.worksheet.Additions;
import wattle.worksheet.HouseWorksheets;

/**
 * All figures of one house, each worked out when it is first asked for and once for all who ask; threads may share it. What
 * nobody asks for is neither worked out nor held.
 */
public final class HouseFigures {
  private final House house;
  private final Library library;
  private final Queue<String> worked = new ConcurrentLinkedQueue<>();
  private final Once<Conductors> conductors;
  private final Once<ConnectedLoads> loads;
  private final Once<BoxFill> boxFill;
  private final Once<Faults> faults;
  private final Once<List<Finding>> faultFindings;
  private final Once<HouseWorksheets> worksheets;
  private final Once<Materials> materials;
  private final Once<List<Measurement>> measurements;
  private final SolvedTrials trials;
  private final WorstCases worst;

  /** @param library what the house was bound with */
  public HouseFigures(House house, Library library) {
    this.house = house;
    this.library = library;
    conductors = once("conductors", () -> Conductors.of(house, library));
    loads = once("connected loads", () -> ConnectedLoads.of(house));
    boxFill = once("box fill", () -> new BoxFill(house, library));
    faults = once("faults", () -> Faults.of(house, library, conductors()));
    faultFindings = once("fault findings", () -> FaultChecks.of(house, library, faults()));
    worksheets = once("worksheets", () -> new HouseWorksheets(house, library));
    materials = once("materials", () -> Materials.of(house, library));
    trials = new SolvedTrials(house, library, worked::add);
    measurements = once("measurements", () -> Measurements.of(house, library, trials));
    worst = new WorstCases(house, library, trials, conductors);
  }

  private <T> Once<T> once(String name, Supplier<T> maker) {
    return new Once<>(() -> {
      worked.add(name);
      return maker.get();
    });
  }

  public House house() {
    return house;
  }

  /** Tables, limits and rules that the house was bound with. */
  public Library library() {
    return library;
  }

  /** What can be asked about its conductors. */
  public Conductors conductors() {
    return conductors.get();
  }

  /** What everything that is connected would draw at once. */
  public ConnectedLoads loads() {
    return loads.get();
  }

  /** The room that the contents of its boxes take. */
  public BoxFill boxFill() {
    return boxFill.get();
  }

  /** Fault currents at every panel and box. */
  public Faults faults() {
    return faults.get();
  }

  /** What is wrong with its breakers and runs on a fault. */
  public List<Finding> faultFindings() {
    return faultFindings.get();
  }

  /** Load worksheets by the methods of its code packs. */
  public HouseWorksheets worksheets() {
    return worksheets.get();
  }

  /** What has to be bought. */
  public Materials materials() {
    return materials.get();
  }

  /** What to measure after the work. */
  public List<Measurement> measurements() {
    return measurements.get();
  }

  /** Its trials and the house as stated. */
  public SolvedTrials trials() {
    return trials;
  }

  /** The worst that it can come to without anything being wrong in it. */
  public WorstCases worst() {
    return worst;
  }

  // ---- Of one thing, worked out anew at each call

  /** Whether no fault brings a finding that the house does not have as it is, with a panel in place of the one of that name. */
  public boolean standsWith(Panel instead) {
    HouseFigures other = new HouseFigures(house.with(instead), library);
    return other.faultFindings().stream().allMatch(f -> faultFindings().stream().anyMatch(f::isOfSameFault));
  }

  /** When the protection of a branch opens, beside what faults on it drive; absent where its curve is not known. */
  public Optional<TimeCurrent> timeCurrent(Branch branch) {
    return TimeCurrent.of(branch, house, library, faults());
  }

  /** Voltage along a branch; absent where its rating is not known or nothing on it is connected. */
  public Optional<VoltageProfile> voltageProfile(Branch branch) {
    return VoltageProfile.of(branch, house, trials);
  }

  /** What has to be known before a place is worked on. */
  public Lockout lockout(Place place) {
    return Lockout.of(house, place).inTermsOf(library);
  }

  /**
   * Slots that bring the legs of panels nearer to each other.
   *
   * @param panels by name
   * @param mostMoves in each panel
   */
  public List<PanelBalance> balance(List<String> panels, int mostMoves) {
    return Balance.of(house, loads(), panels, mostMoves, Balance.USUAL_MOST_STEPS);
  }

  /** What its services and feeders say to further loads. */
  public Additions additions() {
    return new Additions(house, worksheets());
  }

  /**
   * What has been worked out so far, in order, one entry each time that it was: {@code conductors}, {@code stated house},
   * {@code trial NAME}. A name that stands here twice cost its work twice.
   */
  public List<String> worked() {
    return List.copyOf(worked);
  }
}
