package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Point;
import wattle.model.Section;
import wattle.model.Stretch;
import wattle.quantity.Quantity;

/**
 * Panels of a house that are alike with all that they feed, as the flats of a block are: the same breakers, branches, boxes and devices
 * but for names, for the legs and slots that feed them and for the length of their feeder. A document shows the one with the longest
 * feeder, whose voltages are the lowest, and names the others with what differs.
 */
public final class Alike {
  private final House house;
  /** By the name of the one that is shown, the others. */
  private final Map<String, List<Panel>> others = new LinkedHashMap<>();
  private final Set<String> repeated = new HashSet<>();
  private final Map<String, String> signatures = new HashMap<>();

  public Alike(House house) {
    this.house = house;
    Map<String, List<Panel>> groups = new LinkedHashMap<>();
    for (Panel panel : house.panels().values()) {
      if (panel.supply() instanceof PanelSupply.FromBreaker && ownsWhatItFeeds(panel)) {
        groups.computeIfAbsent(signature(panel), s -> new ArrayList<>()).add(panel);
      }
    }
    groups.values().removeIf(g -> g.size() < 2);
    groups.values().forEach(this::choose);
  }

  private void choose(List<Panel> group) {
    Panel shown = group.get(0);
    for (Panel panel : group) {
      shown = way(panel) > way(shown) ? panel : shown;
    }
    List<Panel> rest = new ArrayList<>(group);
    rest.remove(shown);
    others.put(shown.name(), rest);
    rest.forEach(p -> repeated.add(p.name()));
  }

  /** Meters of feeders from the service to a panel. */
  private double way(Panel panel) {
    double meters = 0;
    Optional<Panel> at = Optional.of(panel);
    for (int depth = 0; at.isPresent() && depth < house.panels().size(); depth++) {
      meters += at.get().feeder().flatMap(Stretch::length).map(Quantity::si).orElse(0.0);
      at = at.get().supply() instanceof PanelSupply.FromBreaker from
          ? Optional.ofNullable(house.panels().get(from.breaker().panel()))
          : Optional.empty();
    }
    return meters;
  }

  public boolean isEmpty() {
    return others.isEmpty();
  }

  /** Whether a thing belongs to one that is not shown. */
  public boolean isRepeated(String name) {
    if (repeated.isEmpty()) {
      return false;
    }
    for (int end = name.length(); end > 0; end = name.lastIndexOf('.', end - 1)) {
      String owner = name.substring(0, end);
      int slot = owner.indexOf('/');
      if (repeated.contains(slot < 0 ? owner : owner.substring(0, slot))) {
        return true;
      }
    }
    return false;
  }

  /** The house with the panels that are shown; its branches are all there. */
  public House shown() {
    Map<String, Panel> panels = new LinkedHashMap<>(house.panels());
    panels.keySet().removeIf(this::isRepeated);
    return new House(house.source(), house.title(), house.revision(), house.codes(), house.dwellings(), house.services(), panels,
        house.branches(), house.raceways(), house.rooms(), house.boxes(), house.devices(), house.trials(), house.expectations(),
        house.silences(), house.placements(), house.overridden(), house.written(), house.taken(), house.doubts());
  }

  /** A table without the rows of what is not shown. A row belongs to what its first words name. */
  public Sheet shown(Sheet sheet) {
    if (isEmpty()) {
      return sheet;
    }
    List<Row> rows = sheet.rows().stream().filter(r -> r.sum() || r.cells().stream().limit(NAMING).noneMatch(this::isRepeated)).toList();
    return new Sheet(sheet.name(), sheet.title(), sheet.columns(), rows, shown(sheet.notes()));
  }

  /** Lines of words without those about what is not shown; their count is added at the end. */
  public List<String> shown(List<String> lines) {
    List<String> shown = lines.stream().filter(l -> !names(l)).toList();
    if (shown.size() == lines.size()) {
      return lines;
    }
    List<String> all = new ArrayList<>(shown);
    all.add("The same " + (lines.size() - shown.size()) + " more times for identical parts that are not shown.");
    return all;
  }

  /** Whether a line of words names a thing that is not shown. */
  public boolean names(String line) {
    if (repeated.isEmpty()) {
      return false;
    }
    for (String word : BETWEEN_NAMES.split(line)) {
      if (isRepeated(word)) {
        return true;
      }
    }
    return false;
  }

  /** Of sheets of which there is one for each panel, in the order of the house, those of the panels that are shown. */
  public List<Sheet> ofShownPanels(List<Sheet> sheets) {
    List<Sheet> shown = new ArrayList<>();
    int at = 0;
    for (String panel : house.panels().keySet()) {
      if (!isRepeated(panel)) {
        shown.add(sheets.get(at));
      }
      at++;
    }
    return shown;
  }

  private static final Pattern BETWEEN_NAMES = Pattern.compile("[ ,;:()']+");

  /** Cells at the beginning of a row that name what it is about. */
  private static final int NAMING = 3;

  private boolean isRepeated(Cell cell) {
    return cell instanceof Cell.Words words && isRepeated(words.text());
  }

  /** What is shown once, and for which others it stands; one line for each. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    others.forEach((name, rest) -> {
      if (!isRepeated(name)) {
        Panel shown = house.panels().get(name);
        String many = rest.stream().filter(p -> !insideRepeated(p)).map(p -> differs(p, shown)).collect(Collectors.joining("; "));
        lines.add(
            shown.title() + " (" + name + ", " + feeder(shown) + legs(shown) + ") is shown once for all identical ones: " + many + ".");
      }
    });
    house.overridden().forEach((name, changes) -> {
      if (!others.isEmpty() && house.panels().containsKey(name) && !isRepeated(name)) {
        lines.add(title(house.panels().get(name)) + " differs from its pattern: " + String.join(", ", changes) + ".");
      }
    });
    return lines;
  }

  /** Whether what holds it is not shown itself. */
  private boolean insideRepeated(Panel panel) {
    int dot = panel.name().lastIndexOf('.');
    return dot > 0 && isRepeated(panel.name().substring(0, dot));
  }

  private String differs(Panel panel, Panel shown) {
    String title = title(panel);
    List<String> words = new ArrayList<>();
    if (!feeder(panel).equals(feeder(shown))) {
      words.add(feeder(panel));
    }
    if (!panel.legs().equals(shown.legs())) {
      words.add(legs(panel).strip());
    }
    return title + (words.isEmpty() ? "" : ", " + String.join(" ", words));
  }

  private static String title(Panel panel) {
    return panel.title().equals(panel.name()) ? panel.name() : panel.title() + " (" + panel.name() + ")";
  }

  private static String feeder(Panel panel) {
    return panel.feeder().flatMap(Stretch::length).map(l -> "feeder " + l).orElse("feeder without a length");
  }

  private static String legs(Panel panel) {
    return panel.legs().size() == 3 ? "" : " on legs " + panel.legs().stream().map(Leg::name).collect(Collectors.joining(" and "));
  }

  // ---- What makes two alike

  /** Only what a placement of a pattern made can be alike: its things have its name before theirs. */
  private boolean ownsWhatItFeeds(Panel panel) {
    List<String> fed = panel.breakers().stream().map(Alike::target).filter(t -> !t.isEmpty()).toList();
    return !fed.isEmpty() && fed.stream().allMatch(t -> t.startsWith(panel.name() + "."));
  }

  private static String target(Breaker breaker) {
    return breaker.target() instanceof Breaker.Target.ToBranch to
        ? to.branch()
        : breaker.target() instanceof Breaker.Target.ToPanel to ? to.panel() : "";
  }

  private String signature(Panel panel) {
    String known = signatures.get(panel.name());
    if (known == null) {
      signatures.put(panel.name(), ""); // of feeders in a circle, which is a finding
      known = describe(panel);
      signatures.put(panel.name(), known);
    }
    return known;
  }

  private String describe(Panel panel) {
    String owner = panel.name();
    StringBuilder out = new StringBuilder();
    out.append(panel.feeder().map(f -> f.wiring().text() + f.surroundings()).orElse("")).append(panel.busRating()).append(panel.slotCount())
        .append(panel.bonded()).append(panel.legs().size()).append(panel.status());
    panel.main().ifPresent(m -> out.append(m.kind()).append(m.rating()).append(m.interrupting()));
    for (Breaker breaker : panel.breakers()) {
      out.append("\n").append(breaker.id().slotText()).append(breaker.rating()).append(breaker.interrupting()).append(breaker.handle())
          .append(new TreeSet<>(breaker.protections())).append(breaker.device()).append(breaker.status());
      String target = target(breaker);
      out.append(local(target, owner));
      if (breaker.target() instanceof Breaker.Target.ToBranch) {
        Optional.ofNullable(house.branches().get(target)).ifPresent(b -> branch(b, owner, out));
      } else if (breaker.target() instanceof Breaker.Target.ToPanel) {
        Optional.ofNullable(house.panels().get(target))
            .ifPresent(p -> out.append(p.feeder().flatMap(Stretch::length)).append('{').append(signature(p)).append('}'));
      }
    }
    return out.toString();
  }

  private void branch(Branch branch, String owner, StringBuilder out) {
    out.append(branch.kind()).append(branch.status());
    for (Point point : branch.points()) {
      out.append("\n ").append(point.box().map(b -> local(b, owner))).append(point.hot())
          .append(point.devices().stream().map(point::hotOf).toList());
      for (String name : point.devices()) {
        Optional.ofNullable(house.devices().get(name)).ifPresent(d -> device(d, owner, out));
      }
    }
    for (Section section : branch.sections()) {
      out.append("\n ").append(section.from()).append('-').append(section.to()).append(section.length()).append(section.wiring().text())
          .append(section.surroundings()).append(section.status());
    }
  }

  private static void device(Device device, String owner, StringBuilder out) {
    out.append(local(device.name(), owner)).append(device.kind().name()).append(new TreeSet<>(device.traits()))
        .append(new TreeMap<>(device.facts())).append(device.location()).append(device.status());
    for (Load load : device.loads()) {
      out.append(load.part()).append(load.rated()).append(load.connection()).append(load.voltAmperes());
    }
    device.controls().forEach(c -> out.append(local(c, owner)));
  }

  private static String local(String name, String owner) {
    return name.startsWith(owner + ".") ? name.substring(owner.length()) : name;
  }
}
