package wattle.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.page.Markup;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.model.Branch;
import wattle.model.House;

/** One branch with the figures on it, its boxes as a list, and what can be done at the box that was chosen. */
final class BranchPart {
  /** Margins of the picture, left and right together. */
  private static final double AROUND = 48;

  /** As wide as its legend is easily read. */
  private static final double LEGEND = 560;

  private final House house;
  private final Situation situation;
  private final Markup out = new Markup();

  BranchPart(Situation situation) {
    this.situation = situation;
    house = situation.plan().house();
  }

  String html(Optional<Branch> shown, Optional<String> place, double width) {
    if (shown.isEmpty()) {
      return out.element("p", "The plan has no branch.").toString();
    }
    Branch branch = shown.get();
    Choice.of(out, "branch", "Branch", house.branches().values().stream().toList(), Branch::name,
        b -> b.name() + b.label().map(l -> ", " + l).orElse(""), branch.name());
    out.open("div", "class", "wide picture", "role", "group", "tabindex", "0", "aria-label",
        "Branch " + branch.name() + " with its figures");
    out.raw(DrawingSvg.pointable(new TrialPicture(house, branch, situation.result(), "what was clicked").plate(width - AROUND)
        .drawing(Math.min(LEGEND, width - AROUND)), "wiring")).close();
    List<String> names = names(branch);
    String chosen = place.filter(names::contains).orElse("");
    out.element("p", "Choose a box in the picture, or here:", "class", "note", "id", "places-words");
    out.open("ul", "class", "places", "aria-labelledby", "places-words");
    for (int p = 0; p < names.size(); p++) {
      boolean now = names.get(p).equals(chosen);
      out.open("li").element("button", p == 0 ? "Panel " + names.get(p) : names.get(p), "type", "button", "class", "place", "data-place",
          names.get(p), "aria-pressed", String.valueOf(now)).close();
    }
    out.close();
    if (!chosen.isEmpty()) {
      out.open("div", "id", "box", "role", "group", "aria-labelledby", "box-title");
      new BoxControls(out, situation, branch).write(names.indexOf(chosen));
      out.close();
    }
    return out.toString();
  }

  /** Of every point, as its spot in the picture is called; the panel comes first. */
  private static List<String> names(Branch branch) {
    List<String> names = new ArrayList<>();
    branch.points().forEach(p -> names.add(p.box().or(branch::panel).orElse("?")));
    return names;
  }
}
