package wattle.lockout;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.words.HouseWords;

/**
 * From a place to its lockout. A box counts every branch that comes to it, and a branch counts every breaker that feeds
 * one of its hots: where a neutral is shared, the hot left on would make the neutral live the moment a joint of it is
 * opened, and where a load stands between two hots it would make the other one live. A source on a branch feeds it
 * whatever the breaker does, so its own disconnect is a handle too. In a panel, whatever can feed the bus counts.
 */
final class LockoutDeriver {
  private final House house;
  private final Place place;
  private final Circuits circuits;
  private final HouseWords words;
  private final Handles handles;
  private final List<String> unknown = new ArrayList<>();

  LockoutDeriver(House house, Place place) {
    this.house = house;
    this.place = place;
    this.circuits = new Circuits(house);
    this.words = new HouseWords(house);
    this.handles = new Handles(house, circuits, words);
  }

  Lockout derive() {
    Set<String> killed = new LinkedHashSet<>();
    if (place instanceof Place.InPanel panel) {
      openPanel(house.panels().get(panel.panel()), killed);
    } else {
      branches().forEach(b -> openBranch(b, killed));
    }
    List<Handle> opened = handles.inOrder();
    Proofs proofs = new Proofs(house, circuits);
    return new Lockout(
        place,
        title(),
        opened,
        unknown,
        new Losses(house, circuits, words).of(killed, place),
        new Neighbors(house, circuits, words).of(place, killed, opened),
        place instanceof Place.InPanel panel
            ? List.of(proofs.inPanel(house.panels().get(panel.panel())))
            : place.boxes().stream().map(proofs::inBox).toList(),
        new Warnings(house, circuits, words).of(place, opened));
  }

  private String title() {
    if (place instanceof Place.AtDevice d) {
      return words.device(house.devices().get(d.device()));
    }
    if (place instanceof Place.AtBox b) {
      return words.box(b.box());
    }
    if (place instanceof Place.InRoom r) {
      return words.room(r.room());
    }
    if (place instanceof Place.OnBranch b) {
      return words.branch(house.branches().get(b.branch()));
    }
    if (place instanceof Place.InPanel p) {
      return words.panel(p.panel());
    }
    throw new AssertionError(place);
  }

  /** Every branch in a box that is opened, and the branch itself, which may come to no box yet. */
  private Set<Branch> branches() {
    Set<Branch> branches = new LinkedHashSet<>();
    if (place instanceof Place.OnBranch on) {
      branches.add(house.branches().get(on.branch()));
    }
    for (String box : place.boxes()) {
      List<Branch> here = circuits.at(box);
      if (here.isEmpty()) {
        unknown.add("no branch of the plan reaches " + box + ": what feeds it is not known");
      }
      branches.addAll(here);
    }
    return branches;
  }

  private void openBranch(Branch branch, Set<String> killed) {
    killed.add(branch.name());
    List<Breaker> breakers = circuits.breakersOf(branch);
    if (breakers.isEmpty()) {
      unknown.add("the plan does not say which breaker feeds branch " + words.branch(branch));
    }
    boolean several = breakers.size() > 1;
    for (Breaker breaker : breakers) {
      // Each handle of several has a label of its own, and feeds its own conductor.
      String purpose = "feeds " + (several ? HouseWords.titled(breaker.label(), branch.name()) : words.branch(branch));
      handles.open(breaker,
          several && house.sharesNeutralBetweenLoads(branch)
              ? purpose + ", which shares one neutral over " + breakers.size() + Circuits.kind(breakers)
              : purpose);
      if (breaker.backFed() && circuits.sourcesOn(branch).isEmpty()) {
        unknown.add("breaker " + breaker.id() + " is back-fed, and the plan does not state the source on " + words.branch(branch));
      }
    }
    circuits.sourcesOn(branch).forEach(s -> handles.open(s, "can feed " + words.branch(branch) + " from its own side"));
  }

  private void openPanel(Panel panel, Set<String> killed) {
    handles.openSupply(panel, unknown);
    for (Breaker breaker : panel.breakers()) {
      if (circuits.canBackFeed(breaker)) {
        handles.open(breaker, "what is beyond it can feed the bus of " + words.panel(panel.name()));
        circuits.sourcesBeyond(breaker).forEach(s -> handles.open(s, "keeps the load side of breaker " + breaker.id() + " live"));
        if (breaker.backFed() && circuits.sourcesBeyond(breaker).isEmpty()) {
          unknown.add("breaker " + breaker.id() + " is back-fed, and the plan does not state the source beyond it");
        }
      }
    }
    for (Panel fed : circuits.from(panel)) {
      for (Breaker breaker : fed.breakers()) {
        if (breaker.target() instanceof Breaker.Target.ToBranch to && house.branches().containsKey(to.branch())) {
          killed.add(to.branch());
        }
      }
    }
  }
}
