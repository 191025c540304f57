package wattle.emit.document.findings;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.compiler.Compilation;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Marked;
import wattle.emit.media.drawing.View;
import wattle.finding.Finding;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Device;
import wattle.model.House;

/** Puts the findings of a plan into its pictures, at the things that they are about; what is silenced is not marked. */
public final class FindingMarks {
  private static final String HEADING = "Findings";

  private final List<Marked.Note> notes;

  private FindingMarks(List<Marked.Note> notes) {
    this.notes = List.copyOf(notes);
  }

  /** For pictures by themselves. */
  public static FindingMarks of(Compilation plan) {
    return of(plan, false);
  }

  /** For pictures on a page that has the findings too, each with the id {@link #idOf}. */
  public static FindingMarks inPage(Compilation plan) {
    return of(plan, true);
  }

  /** For pictures that are wanted without. */
  public static FindingMarks none() {
    return new FindingMarks(List.of());
  }

  private static FindingMarks of(Compilation plan, boolean inPage) {
    List<Marked.Note> notes = new ArrayList<>();
    List<Finding> facts = plan.facts();
    for (int i = 0; i < facts.size(); i++) {
      Finding fact = facts.get(i);
      if (fact.silenced().isEmpty()) {
        Set<String> things = new LinkedHashSet<>();
        fact.each().forEach(f -> f.subject().ifPresent(s -> things.addAll(things(plan.house(), s))));
        if (!things.isEmpty()) {
          notes.add(new Marked.Note(things, fact.severity() + ": " + fact.told(), inPage ? idOf(i) : ""));
        }
      }
    }
    return new FindingMarks(notes);
  }

  /** The id of a finding on a page, by its place among the facts of the plan. */
  public static String idOf(int fact) {
    return "fact-" + (fact + 1);
  }

  /** @param side where marks hide least in it */
  public Drawing on(Drawing drawing, Marked.Side side) {
    return Marked.of(drawing, HEADING, side, notes);
  }

  /** The same for sheets. */
  public View on(View view, Marked.Side side) {
    return notes.isEmpty() ? view : Marked.of(view, HEADING, side, notes);
  }

  /** Where a picture may show it: a device at its box, a branch at its ways, a panel at its main. */
  private static Set<String> things(House house, String subject) {
    Set<String> things = new LinkedHashSet<>(List.of(subject, "main " + subject));
    Optional.ofNullable(house.devices().get(subject)).map(Device::box).ifPresent(things::add);
    // A list of devices names a box only by what is in it.
    Optional.ofNullable(house.boxes().get(subject)).flatMap(b -> b.devices().stream().findFirst()).ifPresent(things::add);
    Optional.ofNullable(house.branches().get(subject)).map(Branch::hots)
        .ifPresent(hots -> hots.stream().map(BranchHot::breaker).forEach(b -> things.add(b.toString())));
    house.branches().values().stream()
        .filter(b -> b.hots().stream().anyMatch(h -> h.breaker().toString().equals(subject)))
        .forEach(b -> things.add(b.name()));
    return things;
  }
}
