package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.compare.Change;
import wattle.compare.Comparison;
import wattle.compare.Numbered;
import wattle.compare.Thing;
import wattle.figures.HouseFigures;
import wattle.loads.ConnectedLoads;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Service;
import wattle.quantity.UnitSystem;

/** Two revisions of a house, part by part of a one-line diagram. Parts go by the later revision's names. */
final class Revisions {
  private final House before;
  private final House after;
  private final ConnectedLoads loadsBefore;
  private final ConnectedLoads loadsAfter;
  private final Map<Thing, String> later = new HashMap<>();
  private final Map<Thing, List<Change>> changes = new HashMap<>();

  Revisions(HouseFigures before, HouseFigures after, Comparison comparison) {
    this.before = before.house();
    this.after = after.house();
    loadsBefore = before.loads();
    loadsAfter = after.loads();
    for (Change change : comparison.changes()) {
      changes.computeIfAbsent(change.thing(), t -> new ArrayList<>()).add(change);
      if (change instanceof Change.Renamed renamed) {
        later.put(new Thing(renamed.thing().kind(), renamed.before()), renamed.thing().name());
      }
    }
  }

  private String later(Thing.Kind kind, String name) {
    return later.getOrDefault(new Thing(kind, name), name);
  }

  private Map<String, Panel> panelsBefore() {
    Map<String, Panel> panels = new LinkedHashMap<>();
    before.panels().values().forEach(p -> panels.put(later(Thing.Kind.PANEL, p.name()), p));
    return panels;
  }

  private Map<String, Service> servicesBefore() {
    Map<String, Service> services = new LinkedHashMap<>();
    before.services().values().forEach(s -> services.put(later(Thing.Kind.SERVICE, s.name()), s));
    return services;
  }

  /** Keys of the panels of both, the later revision's first. */
  List<String> panels() {
    return both(after.panels().keySet(), panelsBefore().keySet());
  }

  /** Keys of the services of both. */
  List<String> services() {
    return both(after.services().keySet(), servicesBefore().keySet());
  }

  private static List<String> both(Set<String> one, Set<String> other) {
    Set<String> both = new LinkedHashSet<>(one);
    both.addAll(other);
    return List.copyOf(both);
  }

  /** The panel as the later revision has it, else as the earlier had it. */
  Panel panel(String key) {
    return Optional.ofNullable(after.panels().get(key)).orElseGet(() -> panelsBefore().get(key));
  }

  Service service(String key) {
    return Optional.ofNullable(after.services().get(key)).orElseGet(() -> servicesBefore().get(key));
  }

  /** Whether the meter is at a service. */
  boolean isMetered(String service) {
    return PanelRow.isMetered(after.services().containsKey(service) ? after : before, service(service));
  }

  /** Key of the service that feeds a panel; absent where a breaker does. */
  Optional<String> serviceOf(String panel) {
    boolean old = !after.panels().containsKey(panel);
    return panel(panel).supply() instanceof wattle.model.PanelSupply.FromService from
        ? Optional.of(old ? later(Thing.Kind.SERVICE, from.service()) : from.service())
        : Optional.empty();
  }

  /** Keys of the panels that a service feeds. */
  List<String> fedBy(String service) {
    return panels().stream().filter(p -> serviceOf(p).filter(service::equals).isPresent()).toList();
  }

  /** Those of the later revision. */
  UnitSystem units() {
    return after.units();
  }

  Difference ofPanel(String key) {
    return difference(new Thing(Thing.Kind.PANEL, key), after.panels().containsKey(key), panelsBefore().containsKey(key));
  }

  Difference ofService(String key) {
    return difference(new Thing(Thing.Kind.SERVICE, key), after.services().containsKey(key), servicesBefore().containsKey(key));
  }

  private Difference difference(Thing thing, boolean is, boolean was) {
    return !was ? Difference.ADDED : !is ? Difference.REMOVED : changes.containsKey(thing) ? Difference.CHANGED : Difference.SAME;
  }

  /** What a panel was, in words; empty where it was the same or not there. */
  String was(Thing.Kind kind, String key) {
    List<String> words = new ArrayList<>();
    for (Change change : changes.getOrDefault(new Thing(kind, key), List.of())) {
      if (change instanceof Change.Changed changed) {
        words.add(changed.property() + " " + (changed.before().isEmpty() ? "none" : changed.before()));
      } else if (change instanceof Change.Renamed renamed) {
        words.add("called " + renamed.before());
      }
    }
    return words.isEmpty() ? "" : "was " + String.join(", ", words);
  }

  // ---- The lines of a panel

  /** Those of both revisions by slot, what is gone above what came into its place. */
  List<DifferenceRow> rows(String panel) {
    Map<String, Breaker> old = breakers(Optional.ofNullable(panelsBefore().get(panel)), true);
    Map<String, Breaker> now = breakers(Optional.ofNullable(after.panels().get(panel)), false);
    List<DifferenceRow> rows = new ArrayList<>();
    old.forEach(
        (key, breaker) -> {
          if (!now.containsKey(key)) {
            rows.add(new DifferenceRow(Difference.REMOVED, PanelRow.of(before, loadsBefore, breaker), "", fed(breaker, true)));
          }
        });
    now.forEach(
        (key, breaker) -> {
          PanelRow row = PanelRow.of(after, loadsAfter, breaker);
          if (!old.containsKey(key)) {
            rows.add(new DifferenceRow(Difference.ADDED, row, "", fed(breaker, false)));
          } else {
            String was = was(PanelRow.of(before, loadsBefore, old.get(key)), row, breaker);
            rows.add(new DifferenceRow(was.isEmpty() ? Difference.SAME : Difference.CHANGED, row, was, fed(breaker, false)));
          }
        });
    rows.sort(
        Comparator.comparingInt((DifferenceRow r) -> slot(r.row().breaker())).thenComparing(r -> r.difference() != Difference.REMOVED));
    return rows;
  }

  private static int slot(Breaker breaker) {
    return breaker.poles().stream().mapToInt(p -> p.slot().number()).min().orElse(0);
  }

  /** By what they feed, so that a breaker that moved is still the same; those that feed nothing by their slots. */
  private Map<String, Breaker> breakers(Optional<Panel> panel, boolean old) {
    Map<String, Breaker> breakers = new LinkedHashMap<>();
    for (Breaker breaker : panel.map(Panel::breakers).orElse(List.of())) {
      String key = "slot " + breaker.id().slotText();
      if (breaker.target() instanceof Breaker.Target.ToBranch to) {
        key = "branch " + (old ? later(Thing.Kind.BRANCH, to.branch()) : to.branch());
      } else if (breaker.target() instanceof Breaker.Target.ToPanel) {
        key = "panel " + fed(breaker, old);
      }
      breakers.put(Numbered.among(key, breakers::containsKey), breaker);
    }
    return breakers;
  }

  private String fed(Breaker breaker, boolean old) {
    return breaker.target() instanceof Breaker.Target.ToPanel to ? (old ? later(Thing.Kind.PANEL, to.panel()) : to.panel()) : "";
  }

  private String was(PanelRow old, PanelRow now, Breaker breaker) {
    List<String> words = new ArrayList<>();
    add(words, "slot ", old.slots(), now.slots());
    add(words, "leg ", old.legs(), now.legs());
    add(words, "", old.rating(), now.rating());
    add(words, "", old.wiring(), now.wiring());
    add(words, "", old.what(), now.what());
    add(words, "", old.load(), now.load());
    String within = within(breaker);
    String was = words.isEmpty() ? "" : "was " + String.join(", ", words);
    return was.isEmpty() || within.isEmpty() ? was + within : was + "; " + within;
  }

  private static void add(List<String> words, String lead, String old, String now) {
    if (!old.equals(now)) {
      words.add(old.isEmpty() ? "nothing" : lead + old);
    }
  }

  /** How much changed that the line itself does not show. */
  private String within(Breaker breaker) {
    Optional<Branch> fed = after.branchOf(breaker);
    if (fed.isEmpty()) {
      return "";
    }
    Branch branch = fed.get();
    Set<String> devices = new LinkedHashSet<>();
    branch.points().forEach(p -> devices.addAll(p.devices()));
    long runs = changes.keySet().stream().filter(t -> t.kind() == Thing.Kind.RUN && t.name().startsWith(branch.name() + " to ")).count();
    long changed = devices.stream().filter(d -> changes.containsKey(new Thing(Thing.Kind.DEVICE, d))).count();
    List<String> words = new ArrayList<>();
    if (runs > 0) {
      words.add(runs + (runs == 1 ? " run" : " runs"));
    }
    if (changed > 0) {
      words.add(changed + (changed == 1 ? " device" : " devices"));
    }
    return words.isEmpty() ? "" : "changed within: " + String.join(", ", words);
  }
}
