package wattle.questions;

import java.util.List;
import java.util.Optional;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.finding.Checked;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.SupplySystem;
import wattle.model.Trial;
import wattle.trials.TrialResult;
import wattle.words.BreakerWords;
import wattle.words.HouseWords;

/** The house that is asked about: what several kinds of questions read of it. */
final class Asked {
  private static final String SOURCE = "questions";

  private final Compilation plan;
  private final HouseWords words;

  Asked(Compilation plan) {
    this.plan = plan;
    words = new HouseWords(plan.house());
  }

  Compilation plan() {
    return plan;
  }

  House house() {
    return plan.house();
  }

  /** A trial of events that the plan does not hold; absent where one of them cannot happen in this house. */
  Optional<TrialResult> run(List<String> events) {
    Checked<List<Trial>> read = Compiler.trials(plan, new Source(SOURCE, "trial asked {\n" + String.join("\n", events) + "\n}\n"));
    if (read.findings().stream().anyMatch(f -> f.severity() == Severity.ERROR) || read.value().size() != 1
        || read.value().get(0).events().size() != events.size()) {
      return Optional.empty();
    }
    Checked<TrialResult> result = plan.figures().trials().result("", read.value().get(0).events());
    return result.findings().isEmpty() ? Optional.of(result.value()) : Optional.empty();
  }

  /** As in {@code the receptacle bath.r}. */
  String the(Device device) {
    return "the " + device.kind().name() + " " + device.name() + device.label().map(l -> " (" + l + ")").orElse("");
  }

  /** The same of a part of it, such as the upper half of a receptacle. */
  String the(String outlet) {
    Device device = house().devices().get(outlet);
    if (device != null) {
      return the(device);
    }
    int dot = outlet.lastIndexOf('.');
    String part = outlet.substring(dot + 1);
    boolean half = part.equals("upper") || part.equals("lower");
    return "the " + part + (half ? " half of " : " part of ") + the(house().devices().get(outlet.substring(0, dot)));
  }

  String branch(Branch branch) {
    return "circuit " + words.branch(branch);
  }

  String panel(String name) {
    return "panel " + name + Optional.ofNullable(house().panels().get(name)).flatMap(p -> p.label()).map(l -> " (" + l + ")").orElse("");
  }

  /** As in {@code the 20 A breaker in slot 3 of panel P}. */
  String breaker(Breaker breaker) {
    List<String> slots = breaker.poles().stream().map(p -> p.slot().toString()).toList();
    return "the " + BreakerWords.named(breaker) + " in " + (slots.size() > 1 ? "slots " : "slot ") + String.join("+", slots) + " of "
        + panel(breaker.id().panel());
  }

  boolean isLight(String outlet) {
    Device device = house().devices().get(outlet);
    return device != null && device.kind().family() == DeviceKind.Family.LIGHT;
  }

  /** Amperes that an outlet of a branch may draw. */
  double load(Branch branch, String outlet) {
    return load(branch, isLight(outlet));
  }

  Optional<SupplySystem> system(Branch branch) {
    return branch.panel().map(house().panels()::get).map(p -> p.system());
  }

  /** Amperes that something on a branch may draw: a share of its rating, or of a usual one where that is not known; a light draws 1 A. */
  double load(Branch branch, boolean light) {
    if (light) {
      return 1;
    }
    double rating = branch.hots().stream().findFirst().flatMap(h -> house().breaker(h.breaker())).flatMap(Breaker::amperes).orElse(15.0);
    return rating >= 15 ? 10 : rating >= 10 ? 5 : 2;
  }

  /** A figure as it is read out: to the digits that a meter shows. */
  static String shown(Derivation figure) {
    double value = figure.quantity().orElseThrow().value();
    String unit = figure.quantity().orElseThrow().unit().symbol();
    double size = Math.abs(value);
    int decimals = size < 1e-6 || size >= 100 && !unit.equals("V") ? 0 : size >= 10 ? 1 : 2;
    if (size < 0.05 && !unit.equals("kA")) {
      decimals = size < 0.005 ? 0 : 3;
    }
    return java.math.BigDecimal.valueOf(value).setScale(decimals, java.math.RoundingMode.HALF_UP).toPlainString()
        .replaceFirst("^-(0(\\.0+)?)$", "$1")
        + " " + unit;
  }

  static String plain(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }
}
