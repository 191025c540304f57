package wattle.bind;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.quantity.Quantity;

/** How branches and breakers fit: who feeds whom, on which legs, and what a shared neutral would carry. */
final class BranchChecks {
  private final Scope scope;
  private final Map<String, Panel> panels;
  private final Map<BreakerId, Breaker> breakers = new LinkedHashMap<>();

  BranchChecks(Scope scope, Map<String, Panel> panels) {
    this.scope = scope;
    this.panels = panels;
    panels.values().forEach(p -> p.breakers().forEach(b -> breakers.putIfAbsent(b.id(), b)));
  }

  void check(Map<String, Branch> branches, Set<String> broken) {
    Set<String> fed = new HashSet<>(branches.keySet());
    fed.addAll(panels.keySet());
    KnownNames known = new KnownNames(fed);
    Set<String> nowhere = new HashSet<>();
    // Each on its own: two that are written into one slot have one name.
    panels.values().stream().flatMap(p -> p.breakers().stream()).forEach(breaker -> {
      if (breaker.target() instanceof Breaker.Target.Unknown unknown) {
        nowhere.add(unknown.name());
        reportUnknownTarget(breaker, unknown.name(), known);
      }
    });
    KnownNames misspelled = new KnownNames(nowhere);
    Set<BreakerId> saidAlready = new HashSet<>();
    for (Branch branch : branches.values()) {
      if (branch.hots().isEmpty()) {
        reportUnfed(branch, misspelled);
        continue;
      }
      checkPanel(branch);
      if (branch.sharesNeutral() && !broken.contains(branch.name())) {
        checkSharedNeutral(branch, saidAlready);
      }
    }
    for (Breaker breaker : breakers.values()) {
      if (!saidAlready.contains(breaker.id()) && breaker.handle() == Breaker.Handle.COMMON_TRIP) {
        checkSpansLegs(breaker);
      }
    }
  }

  private void reportUnknownTarget(Breaker breaker, String name, KnownNames known) {
    if (scope.mayStandInDamage(name)) {
      return;
    }
    Span line = breaker.origin().whole();
    String written = line.source().placed().flatMap(p -> p.local(name)).orElse(name);
    int at = line.text().indexOf(written, Math.min(line.text().length(), breaker.id().slotText().length()));
    Span span = at < 0 ? breaker.origin().name() : line.source().span(line.start() + at, line.start() + at + written.length());
    Finding.Builder finding = Finding
        .error(Mistake.BREAKER_WITHOUT_BRANCH, "breaker " + breaker.id() + " feeds '" + name + "', which the plan does not have")
        .at(span, "a branch or panel of the plan is expected here");
    scope.near(name, span, known).forEach(n -> finding.fix(Fix.safe("write " + n, span, n)));
    scope.report(finding.fix("add branch " + name).fix(Fix.offered("write later where it is not decided", span, "later")));
  }

  private void reportUnfed(Branch branch, KnownNames misspelled) {
    // A misspelled target nearby is that breaker's finding; saying both would report one fault twice.
    if (misspelled.mayMean(branch.name()) || scope.mayStandInDamage(branch.name())) {
      return;
    }
    scope.report(
        Finding.error(Mistake.BRANCH_WITHOUT_BREAKER, "no breaker feeds branch '" + branch.name() + "'")
            .at(branch.origin().name(), "no slot line of any panel names it")
            .because("Without a breaker nothing protects its wire.")
            .fix("name it on the slot line that feeds it"));
  }

  private void checkPanel(Branch branch) {
    List<String> feeding = branch.hots().stream().map(h -> h.breaker().panel()).distinct().toList();
    if (feeding.size() > 1) {
      BreakerId other = branch.hots().stream().map(BranchHot::breaker).filter(b -> b.panel().equals(feeding.get(1))).findFirst()
          .orElseThrow();
      scope.report(
          Finding
              .error(Mistake.BRANCH_FED_BY_TWO_PANELS, "branch '" + branch.name() + "' is fed by panels " + String.join(" and ", feeding))
              .at(breakers.get(other).origin().name(), "the second")
              .with(breakers.get(branch.hots().get(0).breaker()).origin().name(), "the first"));
    } else if (branch.panel().isPresent() && !branch.panel().get().equals(feeding.get(0))) {
      Span start = branch.points().get(0).origin().name();
      scope.report(
          Finding
              .error(Mistake.BRANCH_FROM_WRONG_PANEL,
                  "branch '" + branch.name() + "' starts at panel '" + branch.panel().get() + "' and its breaker is in '" + feeding.get(0)
                      + "'")
              .at(start, "'" + feeding.get(0) + "' is expected here")
              .with(breakers.get(branch.hots().get(0).breaker()).origin().name(), "fed here")
              .fix(Fix.offered("write " + feeding.get(0), start, feeding.get(0))));
    }
  }

  private void checkSharedNeutral(Branch branch, Set<BreakerId> saidAlready) {
    List<BreakerId> ids = branch.hots().stream().map(BranchHot::breaker).distinct().toList();
    Optional<Leg> shared = sharedLeg(branch);
    if (shared.isPresent()) {
      saidAlready.addAll(ids);
      double sum = branch.hots().stream()
          .filter(h -> h.leg().equals(shared))
          .mapToDouble(h -> breakers.get(h.breaker()).amperes().orElse(0.0))
          .sum();
      double rated = ids.stream().mapToDouble(i -> breakers.get(i).amperes().orElse(0.0)).max().orElse(0);
      Breaker first = breakers.get(ids.get(0));
      Finding.Builder finding = Finding
          .error(Mistake.SHARED_NEUTRAL_SAME_LEG, "both hots of '" + branch.name() + "' come from leg " + shared.get())
          .at(first.origin().name(), legsText(branch))
          .with(branch.wiring().origin().whole(), "one neutral for both hots")
          .because(
              "The neutral would carry the sum, up to " + amperes(sum) + "; its hots are protected at " + amperes(rated)
                  + " and it has no breaker of its own.")
          .figure("worst neutral current", amperes(sum))
          .figure("breaker", amperes(rated))
          .source(source(Mistake.SHARED_NEUTRAL_SAME_LEG.word()))
          .about(branch.name());
      if (ids.size() > 1) {
        finding.with(breakers.get(ids.get(1)).origin().name(), "the other hot");
      }
      // On two legs its hots still have to open together.
      boolean fuses = ids.stream().map(breakers::get).anyMatch(b -> b.device() == Breaker.Device.FUSE);
      String both = fuses ? ", with both fuses in one pull-out that takes them out together" : ", with one handle for both";
      suggestion(branch, first).ifPresentOrElse(
          s -> finding.fix(
              inSlots(first, s,
                  "use " + s + " (legs " + legsOf(first, s) + ")" + (ids.size() > 1 ? both : "") + ", or run a neutral for each hot",
                  ids.size() == 1)),
          () -> finding.fix("move one hot to a slot on another leg" + both + ", or run a neutral for each hot"));
      scope.report(finding);
    }
    boolean together = ids.size() == 1;
    if (!together && shared.isEmpty()) {
      Breaker first = breakers.get(ids.get(0));
      Breaker second = breakers.get(ids.get(1));
      scope.report(
          Finding.error(Mistake.SHARED_NEUTRAL_TWO_BREAKERS, "hots of multiwire circuit '" + branch.name() + "' do not open together")
              .about(branch.name())
              .at(second.origin().name(), "breaker " + second.id())
              .with(first.origin().name(), "breaker " + first.id())
              .with(branch.wiring().origin().whole(), "one neutral for both hots")
              .because("With one handle open, the other hot still feeds the shared neutral, and the box looks dead but is not.")
              .fix(first.device() == Breaker.Device.FUSE || second.device() == Breaker.Device.FUSE
                  ? "put both fuses in one pull-out that takes both out together, or run a neutral for each hot"
                  : "put both on one two-pole breaker, or tie their handles: " + pairText(first, second) + " handle-tied")
              .source(source(Mistake.SHARED_NEUTRAL_TWO_BREAKERS.word())));
    }
  }

  private Citation source(String finding) {
    return scope.library().article(finding).orElse(Citation.COMMON_PRACTICE);
  }

  private static String pairText(Breaker first, Breaker second) {
    return first.id().slotText() + "+" + second.id().slotText();
  }

  private static Optional<Leg> sharedLeg(Branch branch) {
    Set<Leg> seen = new HashSet<>();
    for (BranchHot hot : branch.hots()) {
      if (hot.leg().isPresent() && !seen.add(hot.leg().get())) {
        return hot.leg();
      }
    }
    return Optional.empty();
  }

  private String legsText(Branch branch) {
    StringBuilder text = new StringBuilder();
    for (BranchHot hot : branch.hots()) {
      Breaker breaker = breakers.get(hot.breaker());
      Panel panel = panels.get(hot.breaker().panel());
      int slot = breaker.poles().get(hot.pole()).slot().number();
      if (slot < 1) {
        continue; // a finding of its own
      }
      text.append(text.length() == 0 ? "" : ", ").append("slot ").append(breaker.poles().get(hot.pole()).slot());
      if (breaker.device() == Breaker.Device.BREAKER && hot.leg().isPresent()) {
        text.append(" is row ").append(panel.order().rowOf(slot, panel.slotCount().orElse(Panel.MOST_SLOTS)));
      }
      text.append(" (leg ").append(hot.leg().map(Leg::name).orElse("?")).append(')');
    }
    return text.toString();
  }

  /** The legs of two slots, as in {@code A and B}. */
  private String legsOf(Breaker first, String pair) {
    Panel panel = panels.get(first.id().panel());
    return java.util.Arrays.stream(pair.split("\\+"))
        .map(s -> panel.order().legOf(Integer.parseInt(s), panel.slotCount().orElse(Integer.parseInt(s)), panel.legs()).name()).sorted()
        .collect(java.util.stream.Collectors.joining(" and "));
  }

  /**
   * The slot of the first hot and the next one down its column, where that stands on another leg and is free; none where the plan
   * states legs, which then do not follow from slots.
   */
  private Optional<String> suggestion(Branch branch, Breaker first) {
    Panel panel = panels.get(first.id().panel());
    if (branch.hots().stream().anyMatch(h -> breakers.get(h.breaker()).legsStated())) {
      return Optional.empty();
    }
    int slot = first.poles().get(0).slot().number();
    int next = slot + (panel.order() == wattle.model.SlotOrder.ODD_LEFT ? 2 : 1);
    boolean there = slot >= 1 && next <= panel.slotCount().orElse(Panel.MOST_SLOTS);
    Set<BreakerId> own = new HashSet<>(branch.hots().stream().map(BranchHot::breaker).toList());
    boolean free = panel.breakers().stream()
        .filter(b -> !own.contains(b.id()))
        .flatMap(b -> b.poles().stream())
        .noneMatch(p -> p.slot().number() == next);
    return there && free && panel.legs().size() > 1 ? Optional.of(slot + "+" + next) : Optional.empty();
  }

  private void checkSpansLegs(Breaker breaker) {
    List<Leg> legs = breaker.poles().stream().flatMap(p -> p.leg().stream()).toList();
    Panel panel = panels.get(breaker.id().panel());
    if (legs.size() < 2 || panel.legs().size() < 2 || new HashSet<>(legs).size() == legs.size()) {
      return;
    }
    scope.report(
        Finding.error(Mistake.TWO_POLE_ON_ONE_LEG, "both poles of breaker " + breaker.id() + " are on leg " + legs.get(0))
            .about(breaker.id().toString())
            .at(breaker.origin().name(), "these slots are on the same leg")
            .because("Between them there are 0 V instead of " + Quantity.plain(panel.system().legToLegVolts(), 3)
                + " V: what it feeds does not work.")
            .fix(panel.order().rowOf(panel.slotCount().orElse(42), panel.slotCount().orElse(42)) < 2
                ? Fix.of("use a panel with more slots: the slots of one row are all on one leg")
                : inSlots(breaker, nextRow(breaker, panel),
                    "use slots of two rows that follow each other, such as " + nextRow(breaker, panel), areFree(breaker, panel))));
  }

  /** Writes other slots where those of a breaker stand; an order alone where they are worked out, or where more than them would change. */
  private static Fix inSlots(Breaker breaker, String slots, String order, boolean alone) {
    Span written = breaker.origin().name();
    boolean asMany = slots.split("\\+").length == breaker.poles().size();
    return alone && asMany && written.text().equals(breaker.id().slotText()) ? Fix.offered(order, written, slots) : Fix.of(order);
  }

  private static boolean areFree(Breaker breaker, Panel panel) {
    List<String> wanted = List.of(nextRow(breaker, panel).split("\\+"));
    return panel.breakers().stream()
        .filter(b -> !b.id().equals(breaker.id()))
        .flatMap(b -> b.poles().stream())
        .noneMatch(p -> wanted.contains(String.valueOf(p.slot().number())));
  }

  private static String nextRow(Breaker breaker, Panel panel) {
    int slot = breaker.poles().get(0).slot().number();
    int step = panel.order() == wattle.model.SlotOrder.ODD_LEFT ? 2 : 1;
    boolean down = panel.slotCount().map(count -> slot + step <= count).orElse(true);
    return down ? slot + "+" + (slot + step) : (slot - step) + "+" + slot;
  }

  private static String amperes(double value) {
    return Quantity.plain(value, 4) + " A";
  }
}
