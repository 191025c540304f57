package wattle.bind;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.model.Box;
import wattle.model.Origin;
import wattle.model.Panel;
import wattle.model.Surroundings;
import wattle.model.Wiring;
import wattle.model.Words;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Follows the chains of a branch from its panel, box by box, into a tree. */
final class BranchTracer {
  /** Names of what is in a room that stand in a finding; there may be many more. */
  private static final int SHOWN = 6;

  private final Scope scope;
  private final Landmarks landmarks;
  private final WiringBinder wirings;
  private final SurroundingsBinder surroundings;
  private final LandmarkNames names;

  BranchTracer(Scope scope, Landmarks landmarks) {
    this(scope, landmarks, new LandmarkNames(landmarks));
  }

  private BranchTracer(Scope scope, Landmarks landmarks, LandmarkNames names) {
    this.scope = scope;
    this.landmarks = landmarks;
    this.wirings = new WiringBinder(scope);
    this.surroundings = new SurroundingsBinder(scope);
    this.names = names;
  }

  /** Each branch as traced the last time, where its names still lead to the same boxes; else traced now. */
  List<BranchDraft> trace(List<Tree.Branch> trees, Memory memory) {
    boolean asBefore = memory.leadsAsBefore(landmarks);
    return memory.drafts.all(
        trees, tree -> tree, scope, (tree, known) -> Optional.of(known).filter(k -> asBefore || leadsWhereItLed(k)),
        within -> in(within)::trace);
  }

  private BranchTracer in(Scope other) {
    return new BranchTracer(other, landmarks, names);
  }

  /** Whether every name of a branch that was traced in full leads where it led. */
  private boolean leadsWhereItLed(BranchDraft draft) {
    int run = 0;
    boolean same = !draft.broken && areKnown(draft.tree.surroundings());
    for (Tree.Chain chain : draft.tree.chains()) {
      if (!same || chain.runs().isEmpty()) {
        return false;
      }
      same = starts(chain.from(), draft.stops.get(draft.legs.get(run).from()));
      for (Tree.Run each : chain.runs()) {
        same &= leads(each.to(), draft.stops.get(draft.legs.get(run++).to())) && areKnown(each.surroundings());
      }
    }
    return same;
  }

  private boolean starts(Tree.Place place, BranchDraft.Stop stop) {
    boolean atPanel = landmarks.panels().contains(place.path().text());
    return atPanel == stop.box.isEmpty() && (atPanel || leads(place, stop));
  }

  private boolean leads(Tree.Place place, BranchDraft.Stop stop) {
    return boxOf(place).equals(stop.box);
  }

  private boolean areKnown(List<Tree.Surroundings> written) {
    for (Tree.Surroundings each : written) {
      if (each instanceof Tree.Through through && !through.raceways().stream().allMatch(r -> landmarks.raceways().contains(r.text()))) {
        return false;
      }
    }
    return true;
  }

  private BranchDraft trace(Tree.Branch tree) {
    BranchDraft draft = new BranchDraft(tree);
    draft.surroundings = surroundings(tree.surroundings(), Surroundings.UNSTATED);
    draft.use = tree.kind().flatMap(kind -> scope.word(Words.BRANCH_USES, kind));
    draft.wiring = tree.wiring().flatMap(wirings::bind);
    draft.broken = tree.wiring().isPresent() && draft.wiring.isEmpty();
    for (Tree.Chain chain : tree.chains()) {
      chain(chain, draft);
    }
    return draft;
  }

  private Surroundings surroundings(List<Tree.Surroundings> written, Surroundings base) {
    Surroundings bound = surroundings.bind(written, base);
    for (Tree.Surroundings each : written) {
      if (each instanceof Tree.Through through) {
        for (Tree.Word raceway : through.raceways()) {
          if (!landmarks.raceways().contains(raceway.text()) && !scope.mayStandInDamage(raceway.text())) {
            unknown(raceway.text(), raceway.span(), "no raceway is called '" + raceway + "'", "a raceway of the plan is expected here",
                names.raceways());
          }
        }
      }
    }
    return bound;
  }

  private void chain(Tree.Chain chain, BranchDraft draft) {
    Optional<Integer> at = start(chain.from(), draft);
    for (Tree.Run run : chain.runs()) {
      if (at.isEmpty()) {
        draft.broken = true;
        return;
      }
      at = run(run, at.get(), draft);
    }
  }

  private Optional<Integer> start(Tree.Place place, BranchDraft draft) {
    String name = place.path().text();
    if (landmarks.panels().contains(name)) {
      if (draft.panel.isEmpty()) {
        draft.panel = Optional.of(name);
        draft.stops.add(0, new BranchDraft.Stop(Optional.empty(), place.span()));
        return Optional.of(0);
      }
      if (!draft.panel.get().equals(name)) {
        scope.report(
            Finding.error("branch-from-two-panels", "branch '" + draft.name() + "' starts at two panels")
                .at(place.span(), "the second")
                .with(draft.stops.get(0).span, "the first"));
        return Optional.empty();
      }
      return Optional.of(0);
    }
    Optional<String> box = boxOf(place);
    if (box.isPresent() && draft.stopOfBox.containsKey(box.get())) {
      return Optional.of(draft.stopOfBox.get(box.get()));
    }
    if (box.isEmpty()) {
      reportUnknown(place, draft.panel.isEmpty() && draft.stops.isEmpty(), draft);
    } else if (!(draft.broken && wouldReach(draft.tree, box)) && !scope.mayStandInDamage(name)) {
      scope.report(
          Finding.error("run-from-nowhere", "a run starts at '" + name + "', which branch '" + draft.name() + "' has not reached")
              .at(place.span(), "not reached before this")
              .because("A branch is a tree: it starts at its panel, and a fork starts at a box already reached.")
              .fix("start at the panel, or put this line after the one that reaches " + name));
    }
    return Optional.empty();
  }

  private Optional<Integer> run(Tree.Run run, int from, BranchDraft draft) {
    Tree.Place place = run.to();
    if (place.path().text().equals("later")) {
      scope.assume("branch " + draft.name() + " is not finished");
      draft.broken = true;
      draft.unfinished = true;
      return Optional.empty();
    }
    // Asked before the place is, so that a place that is not known hides no cable that is not stated.
    Optional<Wiring> wiring = wiring(run, draft);
    Optional<String> box = boxOf(place);
    if (box.isEmpty()) {
      if (landmarks.panels().contains(place.path().text())) {
        scope.report(
            Finding.error("run-to-panel", "a run of branch '" + draft.name() + "' ends in panel '" + place.path().text() + "'")
                .at(place.span(), "a box or device is expected here")
                .because("A panel is fed by a breaker, through its own feeder.")
                .fix("name the panel on a slot line, and write by with its feeder after the panel's name"));
      } else {
        reportUnknown(place, false, draft);
      }
      return Optional.empty();
    }
    Optional<Integer> known = Optional.ofNullable(draft.stopOfBox.get(box.get()));
    if (known.isPresent()) {
      scope.report(
          Finding.error("branch-loop", "branch '" + draft.name() + "' reaches '" + place.path().text() + "' twice")
              .at(place.span(), "reached again")
              .with(draft.stops.get(known.get()).span, "reached before")
              .because("A loop has two paths to the breaker, so opening one joint does not make the rest dead.")
              .fix(isLast(run, draft)
                  ? Fix.takenOut("take out this run, or end it in another box", run.span())
                  : Fix.of("take out this run, or end it in another box")));
      return known;
    }
    if (wiring.isEmpty()) {
      return Optional.empty();
    }
    int to = draft.stops.size();
    draft.stops.add(new BranchDraft.Stop(box, place.span()));
    draft.stopOfBox.put(box.get(), to);
    arrive(place, draft.stops.get(to));
    draft.legs.add(
        new BranchDraft.Leg(
            from, to, length(run, draft), wiring.get(), surroundings(run.surroundings(), draft.surroundings),
            run.status().isPresent() ? Scope.status(run.status()) : Scope.status(draft.tree.status()),
            new Origin(run.dashes(), run.span())));
    return Optional.of(to);
  }

  /** What a run is made of, by its own words or those of its branch; a branch where neither says so gets one finding. */
  private Optional<Wiring> wiring(Tree.Run run, BranchDraft draft) {
    Optional<Wiring> wiring = run.wiring().isPresent() ? run.wiring().flatMap(wirings::bind) : draft.wiring;
    if (wiring.isEmpty()) {
      if (draft.tree.wiring().isEmpty() && run.wiring().isEmpty() && !draft.broken) {
        scope.report(
            Finding.error("cable-missing", "nothing says what branch '" + draft.name() + "' is run with")
                .at(draft.tree.name().span().after(), "a cable such as by 14/2 NM-B is expected here"));
      }
      draft.broken = true;
    }
    return wiring;
  }

  private static void arrive(Tree.Place place, BranchDraft.Stop stop) {
    stop.hotWord = place.hot();
    stop.wiredThrough = place.wired().isPresent() && place.wired().get().text().equals("through");
  }

  private Optional<Quantity> length(Tree.Run run, BranchDraft draft) {
    if (run.later()) {
      scope.assume("a run of branch " + draft.name() + " to " + run.to().path().text() + " has no length yet");
      return Optional.empty();
    }
    if (run.length().isEmpty()) {
      scope.report(
          Finding.error(Mistake.RUN_WITHOUT_LENGTH, "the run to '" + run.to().path().text() + "' has no length")
              .at(run.dashes(), "a length such as --3 m-- is expected here")
              .because("Voltage, fault current and the cable list depend on it.")
              .fix("write --3 m-- with its length")
              .fix(Fix.offered("write --later-- where it is not known yet", run.dashes(), "--later--")));
      return Optional.empty();
    }
    return ServiceBinder.lengthOf(run.length().get(), scope, "the length of a run");
  }

  /** Whether nothing goes on from the end of a run in its line: what did would start elsewhere without it. */
  private static boolean isLast(Tree.Run run, BranchDraft draft) {
    return draft.tree.chains().stream().anyMatch(c -> !c.runs().isEmpty() && c.runs().get(c.runs().size() - 1) == run);
  }

  /** Whether some run leads to a box, so that only a mistake in the branch, which has been told, keeps it from there. */
  private boolean wouldReach(Tree.Branch tree, Optional<String> box) {
    return tree.chains().stream().flatMap(c -> c.runs().stream()).anyMatch(run -> boxOf(run.to()).equals(box));
  }

  /** The box that a path leads to: a box itself, or the one that a device is in. */
  private Optional<String> boxOf(Tree.Place place) {
    String name = place.path().text();
    UnwiredDevice device = landmarks.rooms().devices().get(name);
    if (device != null) {
      return Optional.of(device.box());
    }
    return landmarks.rooms().boxes().containsKey(name) ? Optional.of(name) : Optional.empty();
  }

  private void reportUnknown(Tree.Place place, boolean first, BranchDraft draft) {
    Tree.Path path = place.path();
    String name = path.text();
    if (scope.mayStandInDamage(name)) {
      return;
    }
    if (name.indexOf('.') < 0 || landmarks.rooms().rooms().containsKey(name)) {
      if (landmarks.rooms().rooms().containsKey(name)) {
        scope.report(
            Finding.error(Mistake.NAME_UNKNOWN, "'" + name + "' is a room, not a box")
                .at(path.span(), "a box or device such as " + name + ".sw is expected here"));
        return;
      }
      KnownNames starts = first ? names.panels() : names.boxes();
      unknown(name, path.span(), (first ? "no panel is called '" : "no box or device is called '") + name + "'",
          first ? "a branch starts at its panel" : "a box or device such as kitchen.c1 is expected here", starts);
      return;
    }
    int words = roomWords(path);
    if (words == 0) {
      reportNoRoom(path, draft);
      return;
    }
    String room = path.words().subList(0, words).stream().map(Tree.Word::text).collect(Collectors.joining("."));
    KnownNames inRoom = names.in(room);
    unknown(name, path.span(), "no box or device is called '" + name + "'", "room " + room + " has " + listed(inRoom.names(), room),
        inRoom);
  }

  private void reportNoRoom(Tree.Path path, BranchDraft draft) {
    Tree.Word room = path.words().size() > 1
        ? path.first()
        : new Tree.Word(path.text().substring(0, path.text().lastIndexOf('.')), path.span());
    Finding.Builder finding = Finding.error("box-in-no-room", "'" + path.text() + "' is in no room: no room is called '" + room + "'")
        .at(room.span(), "a room of the plan is expected here")
        .because("Every box needs a room, so that it can be found and opened. The rest of this branch was not checked.");
    for (String near : scope.near(room.text(), room.span(), names.rooms())) {
      finding.fix(Fix.safe("write " + near, room.span(), near));
    }
    String order = "add room " + room + " with this box in it";
    // Before its branch, since a part of a text that is typed in does not know where all of it ends.
    Span branch = draft.tree.span();
    Span before = branch.source().span(branch.start(), branch.start());
    String box = path.words().size() == 2 ? path.last().text() : "";
    scope.report(finding.fix(box.isEmpty()
        ? Fix.of(order)
        : Fix.offered(order, before, "room " + room + " {\n  box " + box + " { }\n}\n")));
  }

  /** How many words of a path name its room; a room of a placement has several. */
  private int roomWords(Tree.Path path) {
    String room = "";
    int words = 0;
    for (int i = 0; i + 1 < path.words().size(); i++) {
      room += (i == 0 ? "" : ".") + path.words().get(i).text();
      words = landmarks.rooms().rooms().containsKey(room) ? i + 1 : words;
    }
    return words;
  }

  private static String listed(Collection<String> names, String room) {
    if (names.isEmpty()) {
      return "nothing in it";
    }
    return names.stream().limit(SHOWN).map(n -> n.substring(room.length() + 1)).collect(Collectors.joining(", "))
        + (names.size() > SHOWN ? " and more" : "");
  }

  private void unknown(String name, Span span, String headline, String expected, KnownNames known) {
    Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, headline).at(span, expected);
    for (String near : scope.near(name, span, known)) {
      finding.fix(Fix.safe("write " + near, span, near));
      scope.spoil(near); // if that was meant, nothing else is missing there
    }
    scope.report(finding);
  }
}
