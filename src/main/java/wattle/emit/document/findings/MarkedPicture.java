package wattle.emit.document.findings;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.compiler.Compilation;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Marked;
import wattle.finding.Finding;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Device;
import wattle.model.House;

/** A picture of a plan with its findings at the things that they are about; what is silenced is not marked. */
public final class MarkedPicture {
  private MarkedPicture() {}

  /** @param side where marks hide least in it */
  public static Drawing of(Compilation plan, Drawing drawing, Marked.Side side) {
    List<Marked.Note> notes = new ArrayList<>();
    for (Finding fact : plan.facts().stream().filter(f -> f.silenced().isEmpty()).toList()) {
      Set<String> things = new LinkedHashSet<>();
      fact.each().forEach(f -> f.subject().ifPresent(s -> things.addAll(things(plan.house(), s))));
      if (!things.isEmpty()) {
        notes.add(new Marked.Note(things, fact.severity() + ": " + fact.told()));
      }
    }
    return Marked.of(drawing, "Findings", side, notes);
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
