package wattle.bind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.model.DeviceKind;
import wattle.model.Origin;
import wattle.model.Status;
import wattle.model.Words;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/**
 * One line of a room: which of its words are the kind, which are traits, and what each figure means. The kind is the
 * longest run of words that the parts library knows.
 */
final class DeviceBinder {
  /** Most kinds that one word is answered with. */
  private static final int MOST_KINDS = 5;

  /** Figures that a device may state by name. */
  static final Map<String, Dimension> NAMED = Map.ofEntries(
      Map.entry("minimum-circuit", Dimension.CURRENT),
      Map.entry("maximum-breaker", Dimension.CURRENT),
      Map.entry("rated", Dimension.CURRENT),
      Map.entry("effective", Dimension.CURRENT),
      Map.entry("duty-cycle", Dimension.NONE),
      Map.entry("locked-rotor", Dimension.CURRENT),
      Map.entry("overload", Dimension.CURRENT),
      Map.entry("service-factor", Dimension.NONE),
      Map.entry("temperature-rise", Dimension.TEMPERATURE),
      Map.entry("power-factor", Dimension.NONE),
      Map.entry("height", Dimension.LENGTH),
      Map.entry("from-sink", Dimension.LENGTH),
      Map.entry("from-basin", Dimension.LENGTH),
      Map.entry("from-equipment", Dimension.LENGTH),
      Map.entry("from-tub", Dimension.LENGTH),
      Map.entry("from-pool", Dimension.LENGTH),
      Map.entry("from-storage", Dimension.LENGTH),
      Map.entry("from-disconnect", Dimension.LENGTH),
      Map.entry("count", Dimension.NONE),
      Map.entry("fixture-wires", Dimension.NONE),
      Map.entry("neutral-load", Dimension.POWER),
      Map.entry("reactance", Dimension.NONE),
      Map.entry("fault-factor", Dimension.NONE));

  /** Traits that may be said not to be so, as in {@code no disconnect}. */
  private static final Set<String> DENIABLE = Set.of("disconnect", "fan-rated", "readily-accessible", "thermally-protected");

  private final Scope scope;
  private final BoxSizes sizes;

  DeviceBinder(Scope scope) {
    this.scope = scope;
    this.sizes = new BoxSizes(scope);
  }

  Optional<UnwiredDevice> bind(Tree.Device device, String room, String boxName, Status ofWhole) {
    Optional<Kind> kind = kind(device);
    if (kind.isEmpty()) {
      scope.spoil(room + "." + device.name());
      return Optional.empty();
    }
    List<String> halves = kind.get().kind.halves();
    Set<String> traits = new LinkedHashSet<>();
    Set<String> boxTraits = new LinkedHashSet<>();
    Set<Span> namesOfFigures = device.amounts().stream()
        .filter(a -> a.before().isPresent() && isFigureName(a.before().get().text(), halves))
        .map(a -> a.before().get().span())
        .collect(Collectors.toSet());
    Optional<Tree.Word> lacking = Optional.empty();
    boolean denied = false;
    for (Tree.Word word : kind.get().others) {
      if (denied && DENIABLE.contains(word.text())) {
        traits.add("no " + word.text());
        denied = false;
        continue;
      }
      denied = word.text().equals("no");
      if (denied) {
        continue;
      }
      if (lacking.isPresent() && scope.constants().containsKey(word.text())) {
        bare(lacking.get(), Optional.of(word));
        lacking = Optional.empty();
        continue;
      }
      lacking.ifPresent(l -> bare(l, Optional.empty()));
      lacking = Optional.empty();
      if (Words.DEVICE_TRAITS.known().contains(word.text())) {
        once(traits, word);
      } else if (Words.BOX_TRAITS.known().contains(word.text())) {
        once(boxTraits, word);
      } else if (NAMED.containsKey(word.text()) && !namesOfFigures.contains(word.span())) {
        lacking = Optional.of(word);
      } else if (!namesOfFigures.contains(word.span())) {
        unknown(word, halves);
      }
    }
    lacking.ifPresent(l -> bare(l, Optional.empty()));
    if (traits.remove("protects") | traits.remove("onward")) {
      traits.add("protects-onward");
    }
    Map<String, Quantity> loads = new LinkedHashMap<>();
    Map<String, Quantity> facts = new LinkedHashMap<>();
    for (Tree.DeviceAmount amount : device.amounts()) {
      figure(amount, kind.get().kind, loads, facts);
    }
    MotorWords.check(scope, device, kind.get().kind, traits, loads, facts);
    WelderFigures.check(scope, device, loads, facts);
    sizes.volume(sizesOf(device, halves), boxTraits, 1, device.name().span()).ifPresent(volume -> facts.put("box-volume", volume));
    return Optional.of(
        new UnwiredDevice(
            room + "." + device.name(),
            Scope.label(device.label()),
            kind.get().kind,
            room,
            boxName,
            traits,
            boxTraits,
            loads,
            device.controls(),
            device.at().flatMap(at -> scope.word(Words.DEVICE_PLACES, at)),
            device.hot(),
            facts,
            TerminalBinder.bind(device.terminals(), scope),
            Scope.status(device.status(), ofWhole),
            new Origin(device.name().span(), device.span())));
  }

  private void once(Set<String> traits, Tree.Word word) {
    if (!traits.add(word.text())) {
      scope.report(
          Finding.error("said-twice", "'" + word + "' is stated twice").at(word.span(), "stated before")
              .fix(Fix.takenOut("take it out here", word.span())));
    }
  }

  /** Figures that speak of the box which the device has to itself. */
  private List<Tree.Expression> sizesOf(Tree.Device device, List<String> halves) {
    return device.amounts().stream()
        .filter(a -> a.before().filter(b -> isFigureName(b.text(), halves)).isEmpty())
        .map(Tree.DeviceAmount::value)
        .filter(a -> scope.quietly(a).filter(q -> isSize(q.dimension())).isPresent())
        .toList();
  }

  private static boolean isSize(Dimension dimension) {
    return dimension.equals(Dimension.VOLUME) || dimension.equals(Dimension.LENGTH);
  }

  private static boolean isFigureName(String word, List<String> halves) {
    return NAMED.containsKey(word) || halves.contains(word);
  }

  private record Kind(DeviceKind kind, List<Tree.Word> others) {}

  private Optional<Kind> kind(Tree.Device device) {
    List<Tree.Word> words = device.words();
    for (int length = words.size(); length > 0; length--) {
      for (int from = 0; from + length <= words.size(); from++) {
        Optional<DeviceKind> found = scope.library().part(joined(words, from, length));
        if (found.isPresent()) {
          List<Tree.Word> others = new ArrayList<>(words.subList(0, from));
          others.addAll(words.subList(from + length, words.size()));
          return Optional.of(new Kind(found.get(), others));
        }
      }
    }
    reportUnknownKind(device);
    return Optional.empty();
  }

  private static String joined(List<Tree.Word> words, int from, int length) {
    if (length == 1) {
      return words.get(from).text();
    }
    StringBuilder name = new StringBuilder(words.get(from).text());
    for (int i = from + 1; i < from + length; i++) {
      name.append(' ').append(words.get(i).text());
    }
    return name.toString();
  }

  private void reportUnknownKind(Tree.Device device) {
    // What a pattern was given for the kind stands elsewhere than the device, and is what is wrong.
    List<Tree.Word> given = device.words().stream().filter(w -> w.span().source() != device.span().source()).toList();
    List<Tree.Word> words = given.isEmpty() ? device.words() : given;
    Span span = words.isEmpty() ? device.span() : words.get(0).span().to(words.get(words.size() - 1).span());
    List<Tree.Word> named = words.stream().filter(w -> !Words.DEVICE_TRAITS.known().contains(w.text())).toList();
    Finding.Builder finding = Finding
        .error("kind-unknown", words.isEmpty()
            ? "'" + device.name() + "' has no kind"
            : "no part is called '" + (named.isEmpty() ? joined(words, 0, words.size()) : joined(named, 0, named.size())) + "'")
        .at(span, "a kind such as receptacle, switch or light is expected here")
        .because("What is fed from " + device.name() + " was not checked.");
    Set<String> known = scope.library().parts().keySet();
    List<String> near = NearNames.of(span.text(), known);
    near.forEach(n -> finding.fix(Fix.safe("write " + n, span, n)));
    if (near.isEmpty()) {
      for (Tree.Word word : words) {
        List<String> meant = NearNames.of(word.text(), known);
        for (String n : meant.isEmpty() ? partsWith(word.text(), known) : meant) {
          finding.fix(Fix.safe("write " + n, word.span(), n));
        }
      }
    }
    scope.report(finding);
  }

  /** Kinds that a word is part of the name of: a pump is a well pump, a sump pump or another. */
  private static List<String> partsWith(String word, Set<String> known) {
    return known.stream().filter(n -> List.of(n.split(" ")).contains(word)).sorted().limit(MOST_KINDS).toList();
  }

  private void figure(
      Tree.DeviceAmount amount, DeviceKind kind, Map<String, Quantity> loads, Map<String, Quantity> facts) {
    String name = amount.before().map(Tree.Word::text).orElse("");
    if (kind.halves().contains(name)) {
      load(amount.value()).ifPresent(value -> put(loads, name, value, amount));
      return;
    }
    if (NAMED.containsKey(name)) {
      scope
          .evaluator()
          .statedOf(amount.value(), NAMED.get(name), "'" + name + "'")
          .ifPresent(value -> put(facts, name, value, amount));
      return;
    }
    Optional<Quantity> value = scope.evaluator().valueOf(amount.value());
    if (value.isEmpty()) {
      return;
    }
    Dimension dimension = value.get().dimension();
    if (!dimension.equals(Dimension.POWER) && !dimension.equals(Dimension.CURRENT) && !isSize(dimension)
        && !scope.evaluator().isStatable(value.get(), amount.value(), "a figure of '" + kind.name() + "'")) {
      return;
    }
    if (dimension.equals(Dimension.CURRENT) && kind.family() != DeviceKind.Family.APPLIANCE
        && kind.family() != DeviceKind.Family.LIGHT && kind.family() != DeviceKind.Family.SOURCE) {
      put(facts, "rated", value.get(), amount); // what is stamped on a receptacle or switch, not what it draws
    } else if (dimension.equals(Dimension.POWER) || dimension.equals(Dimension.CURRENT)) {
      load(amount.value()).ifPresent(load -> put(loads, "", load, amount));
    } else if (dimension.equals(Dimension.VOLTAGE)) {
      put(facts, "voltage", value.get(), amount);
    } else if (isSize(dimension)) {
      return; // of its box
    } else {
      scope.evaluator().valueOf(amount.value(), Dimension.POWER, "the load of a device");
    }
  }

  /** Keeps a figure; of two of one kind the first, and the second is reported. */
  private void put(Map<String, Quantity> figures, String name, Quantity value, Tree.DeviceAmount written) {
    Quantity first = figures.putIfAbsent(name, value);
    if (first != null) {
      scope.reportSecond(written.value(), name.isEmpty() ? "the load of a device" : "'" + name + "'", first);
    }
  }

  private Optional<Quantity> load(Tree.Expression written) {
    Optional<Quantity> value = scope.evaluator().valueOf(written);
    if (value.isEmpty()) {
      return value;
    }
    Dimension dimension = value.get().dimension();
    if (!dimension.equals(Dimension.POWER) && !dimension.equals(Dimension.CURRENT)) {
      return scope.evaluator().valueOf(written, Dimension.POWER, "the load of a device");
    }
    if (value.get().si() < 0) {
      scope.report(
          Finding.error("load-negative", "a device cannot draw " + value.get())
              .at(written.span(), "a load of 0 or more is expected here"));
      return Optional.empty();
    }
    return value;
  }

  /** The name of a figure without one, be it that a constant was meant and stands there bare. */
  private void bare(Tree.Word name, Optional<Tree.Word> constant) {
    Finding.Builder finding = Finding.error(Mistake.FACT_WITHOUT_FIGURE, "'" + name + "' has no figure")
        .at(constant.map(Tree.Word::span).orElseGet(() -> name.span().after()), NAMED.get(name.text()).trade() + " is expected here");
    constant.ifPresentOrElse(
        c -> finding.because("A name among the words of a device is its kind or a trait; a constant is written in parentheses.")
            .fix(Fix.safe("write (" + c + ")", c.span(), "(" + c + ")")),
        () -> finding.fix("write its figure after it").fix(Fix.takenOut("take it out", name.span())));
    scope.report(finding);
  }

  private void unknown(Tree.Word word, List<String> halves) {
    Set<String> known = new java.util.TreeSet<>(Words.DEVICE_TRAITS.known());
    known.addAll(NAMED.keySet());
    known.addAll(halves);
    known.addAll(scope.library().parts().keySet());
    Finding.Builder finding = Finding.error(Mistake.WORD_UNKNOWN, "'" + word + "' is not a word for a device")
        .at(word.span(), "a trait such as weather-resistant, or the name of a figure, can be written here");
    NearNames.of(word.text(), known).forEach(n -> finding.fix(Fix.safe("write " + n, word.span(), n)));
    scope.report(finding);
  }
}
