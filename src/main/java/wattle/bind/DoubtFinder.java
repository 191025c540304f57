package wattle.bind;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.Placed;
import wattle.finding.Placement;
import wattle.finding.Severity;
import wattle.finding.Span;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Doubt;
import wattle.model.Doubts;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * What the findings of reading and binding a plan put in doubt. Where a mistake stands tells what it spoils: the statement
 * around it, and what is known of a thing by that statement and by no other.
 */
final class DoubtFinder {
  /** Errors that leave nothing out: all of it is in the house, wired so that it must not be built. */
  static final Set<Mistake> LEAVE_NOTHING_OUT = Set.of(Mistake.SHARED_NEUTRAL_SAME_LEG, Mistake.SHARED_NEUTRAL_TWO_BREAKERS,
      Mistake.TWO_POLE_ON_ONE_LEG,
      Mistake.THREE_WAY_ALONE, Mistake.TRANSFER_WITHOUT_SOURCE, Mistake.DEVICE_FED_TWICE);

  /** A device on conductors that do not suit it: what it draws from them is not what it is made to draw. */
  private static final Set<Mistake> UNSUITED = Set.of(Mistake.LOAD_240_ON_ONE_POLE, Mistake.LOAD_120_WITHOUT_NEUTRAL,
      Mistake.NEUTRAL_MISSING);

  private static final Set<Mistake> OF_RATING = Set.of(Mistake.RATING_MISSING, Mistake.RATING_NOT_POSITIVE, Mistake.UNIT_MISSING,
      Mistake.UNIT_UNKNOWN,
      Mistake.DIMENSION_MISMATCH, Mistake.FIGURE_NOT_POSITIVE, Mistake.DIVISION_BY_ZERO);
  /** Words that statements of what is in the house begin with. */
  private static final Set<String> OF_HOUSE = Set.of(
      "dwelling", "service", "panel", "branch", "room", "raceway", "pattern", "place", "override", "let", "part");
  private static final Pattern WORDS = Pattern.compile("[^\\p{L}\\p{N}-]+|-{2,}");
  private static final Pattern QUOTED = Pattern.compile("\"[^\"\\n]*\"");
  private static final Pattern COMMENT = Pattern.compile("//[^\\n]*");
  private static final Set<Mistake> OF_LEGS = Set.of(Mistake.SLOT_OUT_OF_RANGE, Mistake.SLOT_TAKEN, Mistake.LEG_UNKNOWN);
  private static final Set<Mistake> OF_HANDLE = Set.of(Mistake.HANDLE_UNSTATED, Mistake.POLE_COUNT);
  private static final Set<Mistake> OF_FEEDER = Set.of(Mistake.CABLE_UNKNOWN, Mistake.WIRE_SIZE_UNKNOWN, Mistake.LENGTH_NEGATIVE,
      Mistake.CONDUCTORS_TOO_MANY,
      Mistake.UNIT_MISSING, Mistake.UNIT_UNKNOWN, Mistake.DIMENSION_MISMATCH);

  private static final Set<Mistake> OF_TARGET = Set.of(Mistake.PANEL_FED_TWICE, Mistake.FEEDER_CIRCLE, Mistake.BRANCH_FED_BY_TWO_PANELS,
      Mistake.BRANCH_FROM_WRONG_PANEL);
  private static final Set<Mistake> OF_FACT = Set.of(Mistake.FACT_DENIED, Mistake.FACT_TWICE, Mistake.FACT_UNKNOWN,
      Mistake.FACT_WITHOUT_FIGURE);

  private final House house;
  private final List<PlanTree> files;
  private final List<Tree.Item> items;
  private final Placement placement;
  private final Doubts.Builder doubts = new Doubts.Builder();
  /** How many things the errors have been held against. */
  private long compared;
  private final Map<String, List<Tree.Branch>> branches;
  private final KnownNames boxNames;
  private final KnownNames branchNames;
  private final KnownNames panelNames;

  private DoubtFinder(House house, List<PlanTree> files, List<Tree.Item> items, Placement placement) {
    this.house = house;
    this.files = files;
    this.items = items;
    this.placement = placement;
    this.branches = items.stream().filter(Tree.Branch.class::isInstance).map(Tree.Branch.class::cast)
        .collect(Collectors.groupingBy(t -> t.name().text()));
    this.boxNames = new KnownNames(house.boxes().keySet());
    this.branchNames = new KnownNames(house.branches().keySet());
    this.panelNames = new KnownNames(house.panels().keySet());
  }

  /** Errors times what they are compared with, one by one, in about a second. A plan with more is in doubt as a whole. */
  private static final long MOST_COMPARED = 20_000_000;

  /**
   * @param findings of reading, which are in place, and of binding, whose spans are as the trees have them
   * @param broken names of branches part of which could not be traced
   * @param placement where the spans of the trees stand
   */
  static Doubts of(
      List<Finding> findings, House house, List<PlanTree> files, List<Tree.Item> items, Set<String> broken, Placement placement) {
    List<Finding> errors = findings.stream()
        .filter(f -> f.severity() == Severity.ERROR && !isOf(LEAVE_NOTHING_OUT, f)).toList();
    if (errors.isEmpty()) {
      return Doubts.NONE;
    }
    DoubtFinder finder = new DoubtFinder(house, files, items, placement);
    finder.compared = (long) errors.size() * items.size();
    for (int i = 0; i < errors.size() && finder.compared <= MOST_COMPARED; i++) {
      finder.add(errors.get(i));
    }
    if (finder.compared > MOST_COMPARED) {
      finder.anything();
    }
    broken.forEach(finder::way);
    finder.follow();
    return finder.doubts.build();
  }

  /** How many statements of an item a mistake in it is compared with. */
  private static long parts(Tree.Item item) {
    return item instanceof Tree.Panel panel
        ? panel.statements().size()
        : item instanceof Tree.Branch branch
            ? branch.chains().stream().mapToLong(c -> c.runs().size()).sum()
            : item instanceof Tree.Room room ? room.devices().size() + room.boxes().size() : 0;
  }

  private static boolean isOf(Set<Mistake> kinds, Finding finding) {
    return Mistake.of(finding).filter(kinds::contains).isPresent();
  }

  // ---- Where a mistake stands

  private void add(Finding finding) {
    if (finding.place().isEmpty()) {
      anything();
      return;
    }
    Span at = inPlace(finding.place().get().span());
    boolean found = false;
    for (Tree.Item item : items) {
      if (covers(item.span(), at) || isGiven(item, at) || isOverridden(item, at)) {
        within(item, at, finding);
        found = true;
      }
    }
    if (!found) {
      outside(finding, at);
    }
  }

  /** Whether a place is in the cable of a branch that was given to the pattern of the branch, and so stands elsewhere. */
  private boolean isGiven(Tree.Item item, Span at) {
    return item instanceof Tree.Branch branch && branch.wiring().filter(w -> covers(w.span(), at)).isPresent();
  }

  /** Whether a place is in what an override puts into a room or panel of a pattern. */
  private boolean isOverridden(Tree.Item item, Span at) {
    if (item.span().source().placed().isEmpty()) {
      return false;
    }
    return item instanceof Tree.Room room && (room.devices().stream().anyMatch(d -> covers(d.span(), at))
        || room.boxes().stream().anyMatch(b -> covers(b.span(), at)))
        || item instanceof Tree.Panel panel && panel.statements().stream().anyMatch(s -> covers(s.span(), at));
  }

  /** Whether a span holds another, be it by the line or the placement that the other has come from. */
  private boolean covers(Span outer, Span inner) {
    if (holds(outer, inner)) {
      return true;
    }
    if (inner.source().placed().isEmpty()) {
      return outer.source().placed().isPresent() && holds(outer.written(), inner);
    }
    for (Placed placed : inner.source().placed().get().chain()) {
      if (holds(outer, placed.place())) {
        return true;
      }
    }
    return false;
  }

  private boolean holds(Span someOuter, Span someInner) {
    if (someOuter.source() == someInner.source()) {
      return someOuter.start() <= someInner.start() && someInner.end() <= someOuter.end();
    }
    Span outer = inPlace(someOuter);
    Span inner = inPlace(someInner);
    return outer.source() == inner.source() && outer.start() <= inner.start() && inner.end() <= outer.end();
  }

  /** A span in the text as it was read, one of an excerpt in the whole of it; what a pattern has placed stays what it is. */
  private Span inPlace(Span span) {
    return span.source().placed().isEmpty() ? placement.whole(span) : span;
  }

  private void within(Tree.Item item, Span at, Finding finding) {
    compared += parts(item);
    if (item instanceof Tree.Panel panel) {
      panel(panel, at, finding);
    } else if (item instanceof Tree.Branch branch) {
      branch(branch, at, finding);
    } else if (item instanceof Tree.Room room) {
      room(room, at, finding);
    } else if (item instanceof Tree.Service service) {
      service(service, at, finding);
    } else if (item instanceof Tree.Dwelling) {
      doubts.add(Doubt.DWELLING);
    } else if (item instanceof Tree.Let let) {
      users(let.name().text());
    } else if (item instanceof Tree.Raceway raceway) {
      users(raceway.name().text());
    } else if (item instanceof Tree.Trial trial) {
      doubts.add(Doubt.TRIAL, trial.name().text());
    } else if (item instanceof Tree.Expectation expectation) {
      doubts.add(Doubt.TRIAL, Doubts.nameOf(expectation.span()));
    } else if (item instanceof Tree.Part part) {
      part(part);
    } else if (item instanceof Tree.CableType cable) {
      users(cable.name().text());
    } else if (item instanceof Tree.Use use && !Mistake.PACK_UNKNOWN.is(finding) || item instanceof Tree.Placing
        || mayHide(at, finding)) {
      anything();
    } else if (Mistake.UNEXPECTED.is(finding)) {
      damaged(wordsOf(lineOf(at)));
    }
    // Titles, silences, rules and limits say nothing of what is in the house, but for what stands on their lines unread.
  }

  /** Whether a statement of the house was passed over on the line of a mistake, or between it and the next item. */
  private boolean mayHide(Span within, Finding finding) {
    Span at = placement.whole(within);
    String text = at.source().text();
    int line = text.indexOf('\n', at.end());
    int next = items.stream().map(Tree.Item::span).filter(s -> s.source().placed().isEmpty()).map(placement::whole)
        .filter(s -> s.source() == at.source() && s.start() > at.start()).mapToInt(Span::start).min().orElse(text.length());
    String unread = COMMENT.matcher(text.substring(at.start(), Math.max(line < 0 ? text.length() : line, next))).replaceAll("");
    // What was read whole has no statement in a text in quotes.
    unread = Mistake.UNEXPECTED.is(finding) ? unread : QUOTED.matcher(unread).replaceAll("");
    return WORDS.splitAsStream(unread).anyMatch(OF_HOUSE::contains);
  }

  /** A mistake in what was not read as an item at all, or in a pattern. */
  private void outside(Finding finding, Span at) {
    Optional<Tree.Item> written = files.stream().flatMap(f -> f.items().stream()).filter(i -> covers(i.span(), at)).findFirst();
    if (written.isPresent() && !(written.get() instanceof Tree.Pattern) && !(written.get() instanceof Tree.Placing)
        && !(written.get() instanceof Tree.Overriding)) {
      within(written.get(), at, finding);
      return;
    }
    if (written.isPresent()) {
      anything();
      return;
    }
    switch (firstWord(at)) {
      case "branch" -> doubts.add(Doubt.BRANCHES);
      case "room" -> doubts.add(Doubt.ROOMS, Doubt.DEVICES, Doubt.CONTROLS);
      case "panel" -> doubts.add(Doubt.PANELS, Doubt.BRANCHES);
      case "service" -> doubts.add(Doubt.SERVICES);
      case "dwelling" -> doubts.add(Doubt.DWELLING);
      case "trial", "expect", "silence", "limit", "rule", "plan" -> {
        // Nothing of the house, unless a statement of it begins on the same line.
        if (mayHide(at, finding)) {
          anything();
        }
      }
      default -> anything();
    }
    damaged(wordsOf(lineOf(at)));
    damaged();
  }

  private String firstWord(Span within) {
    Span at = placement.whole(within);
    String text = at.source().text();
    int start = text.lastIndexOf('\n', Math.max(0, at.start() - 1)) + 1;
    String[] words = text.substring(start, Math.max(at.end(), start)).strip().split("[^\\p{L}-]+", 2);
    return words[0];
  }

  private String lineOf(Span within) {
    Span at = placement.whole(within);
    String text = at.source().text();
    int start = text.lastIndexOf('\n', Math.max(0, at.start() - 1)) + 1;
    int end = text.indexOf('\n', at.start());
    return text.substring(start, end < 0 ? text.length() : Math.max(start, end));
  }

  /** Whether a place in a statement is before the brace of its block. */
  private boolean isHeading(Span statement, Span within) {
    Span whole = placement.whole(statement);
    int end = Math.max(whole.start(), placement.whole(within).start());
    return !whole.source().text().substring(whole.start(), end).contains("{");
  }

  private static Set<String> wordsOf(String line) {
    return new HashSet<>(List.of(line.split("[^\\p{L}\\p{N}_-]+")));
  }

  /** Something was left out, and nobody can tell what. */
  private void anything() {
    doubts.add(Doubt.SERVICES, Doubt.PANELS, Doubt.BRANCHES, Doubt.ROOMS, Doubt.DEVICES, Doubt.DWELLING, Doubt.CONTROLS);
    house.panels().keySet().forEach(p -> doubts.add(Doubt.SLOTS, p));
    house.rooms().keySet().forEach(r -> doubts.add(Doubt.CONTENTS, r));
    damaged();
  }

  /** What stands on lines that could not be read: whatever they name may be meant. */
  private void damaged() {
    Set<String> words = new HashSet<>();
    files.forEach(f -> words.addAll(f.damagedWords()));
    damaged(words);
  }

  private void damaged(Set<String> words) {
    named(words);
    house.boxes().values().stream().filter(b -> words.contains(last(b.name())) && words.contains(b.room()))
        .forEach(b -> doubts.add(Doubt.REACHED, b.name()));
  }

  private static String last(String name) {
    return name.substring(name.lastIndexOf('.') + 1);
  }

  /** Branches and panels that a slot line named which could not be read. */
  private void named(Set<String> words) {
    house.branches().keySet().stream().filter(words::contains).forEach(b -> doubts.add(Doubt.FED, b));
    house.panels().keySet().stream().filter(words::contains).forEach(p -> doubts.add(Doubt.SUPPLY, p));
  }

  // ---- Panels

  private void panel(Tree.Panel tree, Span at, Finding finding) {
    String name = tree.name().text();
    if (Mistake.NAME_TWICE.is(finding) && covers(tree.name().span(), at)) {
      doubts.add(Doubt.PANELS, Doubt.BRANCHES).add(Doubt.SLOTS, name).add(Doubt.PANEL, name);
      return;
    }
    boolean inside = false;
    for (Tree.PanelStatement statement : tree.statements()) {
      if (covers(statement.span(), at)) {
        statement(name, statement, at, finding);
        inside = true;
      }
    }
    if (!inside) {
      headingOrLine(tree, name, at, finding);
    }
  }

  private void statement(String panel, Tree.PanelStatement statement, Span at, Finding finding) {
    if (statement instanceof Tree.Slot slot) {
      List<Breaker> breakers = house.panels().containsKey(panel)
          ? house.panels().get(panel).breakers().stream().filter(b -> sameLine(b, slot)).toList()
          : List.of();
      breakers.forEach(b -> slot(b, at, finding));
    } else if (statement instanceof Tree.Order || statement instanceof Tree.SlotCount) {
      doubts.add(Doubt.PANEL, panel);
      breakersOf(panel).forEach(b -> doubts.add(Doubt.LEGS, b.id().toString()));
    } else {
      doubts.add(Doubt.PANEL, panel);
    }
  }

  private static boolean sameLine(Breaker breaker, Tree.Slot slot) {
    return breaker.origin().whole().equals(slot.span());
  }

  private List<Breaker> breakersOf(String panel) {
    return Optional.ofNullable(house.panels().get(panel)).map(Panel::breakers).orElse(List.of());
  }

  private void slot(Breaker breaker, Span at, Finding finding) {
    String id = breaker.id().toString();
    if (isOf(OF_RATING, finding)) {
      doubts.add(Doubt.RATING, id);
    } else if (isOf(OF_LEGS, finding)) {
      doubts.add(Doubt.LEGS, id);
    } else if (isOf(OF_HANDLE, finding)) {
      doubts.add(Doubt.HANDLE, id).add(Doubt.LEGS, id);
      targetOf(breaker); // how many hots it gives is not known
    } else if (Mistake.BREAKER_WITHOUT_BRANCH.is(finding) && breaker.target() instanceof Breaker.Target.Unknown unknown) {
      doubts.add(Doubt.TARGET, id);
      branchNames.near(unknown.name()).forEach(b -> doubts.add(Doubt.FED, b));
      panelNames.near(unknown.name()).forEach(p -> doubts.add(Doubt.SUPPLY, p));
    } else if (Mistake.WORD_UNKNOWN.is(finding)) {
      doubts.add(Doubt.TRAITS, id).add(Doubt.HANDLE, id);
    } else if (Mistake.FEEDERS_IN_A_ROW.is(finding)) {
      doubts.add(Doubt.PANELS, Doubt.BRANCHES);
    } else if (isOf(OF_TARGET, finding)) {
      targetOf(breaker);
    } else {
      for (Doubt doubt : List.of(Doubt.RATING, Doubt.LEGS, Doubt.HANDLE, Doubt.TRAITS, Doubt.TARGET, Doubt.STATUS)) {
        doubts.add(doubt, id);
      }
      targetOf(breaker);
      named(wordsOf(lineOf(at)));
    }
  }

  private void targetOf(Breaker breaker) {
    if (breaker.target() instanceof Breaker.Target.ToBranch to) {
      doubts.add(Doubt.FED, to.branch());
    } else if (breaker.target() instanceof Breaker.Target.ToPanel to) {
      doubts.add(Doubt.SUPPLY, to.panel());
    }
  }

  private void headingOrLine(Tree.Panel tree, String name, Span within, Finding finding) {
    Span at = placement.whole(within);
    Span panel = placement.whole(tree.span());
    // What an override adds stands elsewhere in the text.
    Span first = tree.statements().stream().map(Tree.PanelStatement::span).filter(s -> holds(tree.span(), s)).findFirst()
        .map(placement::whole).orElseGet(panel::after);
    boolean heading = isHeading(panel, at);
    if (heading || at.start() < first.start() && at.line() == panel.line()) {
      boolean feeder = isOf(OF_FEEDER, finding) && tree.feederWiring().isPresent();
      doubts.add(feeder ? Doubt.FEEDER : Doubt.SUPPLY, name);
      if (Mistake.UNEXPECTED.is(finding)) {
        doubts.add(Doubt.FEEDER, name).add(Doubt.STATUS, name).add(Doubt.PANEL, name);
      }
      return;
    }
    String line = lineOf(at).strip();
    if (line.isEmpty() || Character.isDigit(line.charAt(0))) {
      doubts.add(Doubt.SLOTS, name);
      named(wordsOf(line));
    } else {
      doubts.add(Doubt.PANEL, name).add(Doubt.SLOTS, name);
    }
  }

  // ---- Branches

  private void branch(Tree.Branch tree, Span at, Finding finding) {
    String name = tree.name().text();
    if (Mistake.NAME_TWICE.is(finding)) {
      doubts.add(Doubt.BRANCHES);
      way(name);
      reached(tree);
      return;
    }
    if (Mistake.BRANCH_WITHOUT_BREAKER.is(finding)) {
      doubts.add(Doubt.FED, name);
      return;
    }
    if (Mistake.BRANCH_FROM_WRONG_PANEL.is(finding) || Mistake.BRANCH_FED_BY_TWO_PANELS.is(finding)) {
      doubts.add(Doubt.FED, name).add(Doubt.WAY, name);
      return;
    }
    for (Tree.Chain chain : tree.chains()) {
      for (Tree.Run run : chain.runs()) {
        if (!covers(run.span(), at)) {
          continue;
        }
        boolean length = run.length().filter(l -> covers(l.span(), at)).isPresent() || Mistake.RUN_WITHOUT_LENGTH.is(finding);
        boolean around = run.surroundings().stream().anyMatch(s -> covers(s.span(), at));
        if (length || around) {
          doubts.add(length ? Doubt.LENGTH : Doubt.SURROUNDINGS, name);
          return;
        }
      }
    }
    if (tree.kind().filter(k -> covers(k.span(), at)).isPresent()) {
      doubts.add(Doubt.USE, name);
    } else if (tree.surroundings().stream().anyMatch(s -> covers(s.span(), at))) {
      doubts.add(Doubt.SURROUNDINGS, name);
    } else {
      way(name);
      if (Mistake.UNEXPECTED.is(finding)) {
        doubts.add(Doubt.USE, name).add(Doubt.STATUS, name);
      }
      reached(tree);
    }
  }

  private void way(String branch) {
    doubts.add(Doubt.WAY, branch);
    if (!house.branches().containsKey(branch)) {
      doubts.add(Doubt.BRANCHES, branch);
    }
    branches.getOrDefault(branch, List.of()).forEach(this::reached);
  }

  /** Boxes that the chains of a branch name, whether or not it came to them. */
  private void reached(Tree.Branch tree) {
    for (Tree.Chain chain : tree.chains()) {
      place(chain.from());
      chain.runs().forEach(r -> place(r.to()));
    }
  }

  private void place(Tree.Place place) {
    String name = place.path().text();
    Device device = house.devices().get(name);
    String box = device == null ? name : device.box();
    List<String> meant = house.boxes().containsKey(box) ? List.of(box) : boxNames.near(box);
    meant.forEach(b -> doubts.add(Doubt.REACHED, b));
  }

  // ---- Rooms

  private void room(Tree.Room tree, Span at, Finding finding) {
    String room = tree.name().text();
    if (Mistake.NAME_TWICE.is(finding) && covers(tree.name().span(), at)) {
      doubts.add(Doubt.ROOMS, Doubt.DEVICES, Doubt.CONTROLS).add(Doubt.CONTENTS, room);
      return;
    }
    List<Tree.Device> devices = new ArrayList<>(tree.devices());
    tree.boxes().forEach(b -> devices.addAll(b.devices()));
    for (Tree.Device device : devices) {
      if (covers(device.span(), at)) {
        device(room, device, at, finding);
        return;
      }
    }
    for (Tree.Box box : tree.boxes()) {
      if (covers(box.span(), at)) {
        doubts.add(Doubt.BOX, room + "." + box.name());
        if (!Mistake.WORD_UNKNOWN.is(finding) && box.amounts().stream().noneMatch(a -> covers(a.span(), at))) {
          doubts.add(Doubt.DEVICES, Doubt.CONTROLS).add(Doubt.CONTENTS, room).add(Doubt.STATUS, room + "." + box.name());
        }
        return;
      }
    }
    boolean heading = isHeading(tree.span(), at);
    boolean told = tree.facts().stream().anyMatch(f -> covers(f.span(), at)) || tree.kind().filter(k -> covers(k.span(), at)).isPresent()
        || isOf(OF_FACT, finding);
    if (heading || told) {
      doubts.add(Doubt.ROOM, room);
      if (heading && !told) {
        statusWithin(room);
      }
      return;
    }
    doubts.add(Doubt.DEVICES).add(Doubt.CONTENTS, room);
    if (lineOf(at).contains(" for ")) {
      doubts.add(Doubt.CONTROLS);
    }
  }

  private void statusWithin(String room) {
    doubts.add(Doubt.STATUS, room);
    house.boxes().values().stream().filter(b -> b.room().equals(room)).map(Box::name).forEach(b -> doubts.add(Doubt.STATUS, b));
    house.devices().values().stream().filter(d -> d.room().equals(room)).map(Device::name).forEach(d -> doubts.add(Doubt.STATUS, d));
  }

  private void device(String room, Tree.Device tree, Span at, Finding finding) {
    String name = room + "." + tree.name();
    boolean controls = tree.controls().stream().anyMatch(c -> covers(c.span(), at));
    if (!house.devices().containsKey(name) || Mistake.NAME_TWICE.is(finding)) {
      doubts.add(Doubt.DEVICES).add(Doubt.CONTENTS, room);
      if (!tree.controls().isEmpty()) {
        doubts.add(Doubt.CONTROLS);
      }
    } else if (controls) {
      doubts.add(Doubt.CONTROLS);
    } else if (Mistake.DEVICE_UNFED.is(finding)) {
      doubts.add(Doubt.REACHED, house.devices().get(name).box());
      controllers(name).forEach(this::way); // what goes on from a switch to what it works is not there
    } else if (isOf(UNSUITED, finding) || Mistake.HOT_UNSTATED.is(finding) || Mistake.HOT_UNKNOWN.is(finding)
        || isFigure(tree, at)) {
      doubts.add(Doubt.FIGURES, name);
    } else if (Mistake.WORD_UNKNOWN.is(finding)) {
      doubts.add(Doubt.KIT, name);
    } else if (isOf(OF_FACT, finding) || Mistake.POWER_FACTOR_OUT_OF_RANGE.is(finding)) {
      doubts.add(Doubt.FIGURES, name);
    } else {
      doubts.add(Doubt.KIT, name).add(Doubt.FIGURES, name).add(Doubt.STATUS, name).add(Doubt.CONTROLS);
    }
  }

  /** Names of the branches that hold a switch which works a device. */
  private List<String> controllers(String device) {
    return house.branches().values().stream()
        .filter(b -> b.points().stream().flatMap(p -> p.devices().stream()).map(house.devices()::get)
            .anyMatch(d -> d != null && d.controls().contains(device)))
        .map(Branch::name).toList();
  }

  private boolean isFigure(Tree.Device tree, Span at) {
    return tree.amounts().stream().anyMatch(a -> covers(a.span(), at));
  }

  // ---- The rest

  private void service(Tree.Service tree, Span at, Finding finding) {
    String name = tree.name().text();
    if (Mistake.NAME_TWICE.is(finding)) {
      doubts.add(Doubt.SERVICES);
    }
    if (tree.earths().stream().anyMatch(e -> covers(e.span(), at))) {
      doubts.add(Doubt.ELECTRODES, name);
      return;
    }
    doubts.add(Doubt.SERVICE, name);
    boolean run = tree.runs().stream().anyMatch(r -> covers(r.span(), at));
    boolean source = tree.sources().stream().anyMatch(s -> covers(s.span(), at));
    if (!run && !source) {
      doubts.add(Doubt.ELECTRODES, name);
      house.panels().values().stream().filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(name))
          .forEach(p -> doubts.add(Doubt.SUPPLY, p.name()));
    }
  }

  private void part(Tree.Part part) {
    String kind = String.join(" ", part.name().stream().map(Tree.Word::text).toList());
    house.devices().values().stream().filter(d -> d.kind().name().equals(kind))
        .forEach(d -> doubts.add(Doubt.KIT, d.name()).add(Doubt.FIGURES, d.name()));
  }

  /** Whatever says the name of a constant, a raceway or a cable that could not be read. */
  private void users(String name) {
    Pattern said = Pattern.compile("(?<![\\p{L}\\p{N}_.-])" + Pattern.quote(name) + "(?![\\p{L}\\p{N}_-])");
    for (Tree.Item item : items) {
      if (item instanceof Tree.Let || !said.matcher(item.span().text()).find()) {
        continue;
      }
      if (item instanceof Tree.Panel panel) {
        String of = panel.name().text();
        doubts.add(Doubt.PANEL, of).add(Doubt.FEEDER, of);
        breakersOf(of).stream().filter(b -> said.matcher(b.origin().whole().text()).find())
            .forEach(b -> doubts.add(Doubt.RATING, b.id().toString()).add(Doubt.LEGS, b.id().toString()));
      } else if (item instanceof Tree.Branch branch) {
        way(branch.name().text());
        doubts.add(Doubt.LENGTH, branch.name().text()).add(Doubt.SURROUNDINGS, branch.name().text());
      } else if (item instanceof Tree.Room room) {
        doubts.add(Doubt.ROOM, room.name().text());
        house.devices().values().stream().filter(d -> d.room().equals(room.name().text()))
            .filter(d -> said.matcher(d.origin().whole().text()).find()).forEach(d -> doubts.add(Doubt.FIGURES, d.name()));
        house.boxes().values().stream().filter(b -> b.room().equals(room.name().text()))
            .filter(b -> said.matcher(b.origin().whole().text()).find()).forEach(b -> doubts.add(Doubt.BOX, b.name()));
      } else if (item instanceof Tree.Service service) {
        doubts.add(Doubt.SERVICE, service.name().text()).add(Doubt.ELECTRODES, service.name().text());
      } else if (item instanceof Tree.Dwelling) {
        doubts.add(Doubt.DWELLING);
      }
    }
  }

  /** A panel whose supply is in doubt leaves that of those behind it in doubt. */
  private void follow() {
    Map<String, Panel> panels = house.panels();
    boolean more = true;
    Doubts known = doubts.build();
    while (more) {
      more = false;
      for (Panel panel : panels.values()) {
        if (!known.has(Doubt.SUPPLY, panel.name()) && panel.supply() instanceof PanelSupply.FromBreaker from
            && (known.has(Doubt.SUPPLY, from.breaker().panel()) || known.has(Doubt.LEGS, from.breaker().toString()))) {
          doubts.add(Doubt.SUPPLY, panel.name());
          known = doubts.build();
          more = true;
        }
      }
    }
    // A branch that is nowhere may have come to any box that nothing comes to.
    Doubts all = known;
    for (Branch branch : house.branches().values()) {
      if (all.has(Doubt.WAY, branch.name())) {
        branch.points().forEach(p -> p.box().ifPresent(b -> doubts.add(Doubt.REACHED, b)));
      }
    }
  }
}
