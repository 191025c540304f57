package wattle.emit.document.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.emit.document.findings.FindingMarks;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Marked;
import wattle.emit.media.drawing.Plate;
import wattle.emit.sheet.schedule.Alike;
import wattle.emit.view.branchwiring.BranchWiring;
import wattle.emit.view.rooms.RoomSheet;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.House;
import wattle.model.Room;
import wattle.trials.TrialResult;

/** The pictures of a report of which there are many: a branch each, a trial each, the rooms. */
final class ReportPictures {
  /** A picture is about ten kilobytes; more of them make a page that is slow to come. */
  private static final int MOST_BRANCHES = 100;

  private static final int MOST_ROOMS = 80;
  private static final int MOST_BRANCHES_OF_A_TRIAL = 4;
  private static final double LEGEND_WIDTH = 900;

  private static final Legend NO_SIGNS = new Legend(List.of(), List.of());

  private final House house;

  private final Alike alike;

  private final FindingMarks marks;

  ReportPictures(House house, Alike alike, FindingMarks marks) {
    this.house = house;
    this.alike = alike;
    this.marks = marks;
  }

  /** The legend of all, then every branch. */
  List<Content> branches() {
    List<Branch> all = house.branches().values().stream().filter(b -> !b.points().isEmpty() && !alike.isRepeated(b.name())).toList();
    if (all.isEmpty()) {
      return List.of(new Content.Remark("The plan has no branch."));
    }
    List<Branch> branches = all.subList(0, Math.min(MOST_BRANCHES, all.size()));
    List<Content> contents = new ArrayList<>();
    alike.lines().forEach(line -> contents.add(new Content.Remark(line)));
    contents.add(signs(BranchWiring.legend(house, branches)));
    for (Branch branch : branches) {
      Drawing whole = BranchWiring.of(house, branch, BranchWiring.USUAL_WIDTH).bare();
      contents.add(
          new Content.Folded(
              title(branch), marks.on(whole, Marked.Side.LEFT_CORNER),
              marks.on(BranchWiring.view(house, branch), Marked.Side.LEFT_CORNER), NO_SIGNS));
    }
    if (all.size() > branches.size()) {
      contents.add(new Content.Remark(
          "The first " + branches.size() + " of " + all.size() + " branches; wattle draw --view branch --of NAME draws any of them."));
    }
    return contents;
  }

  /** Its name, what it is for, where it comes from, and how many boxes it has. */
  private String title(Branch branch) {
    long boxes = branch.points().stream().flatMap(p -> p.box().stream()).distinct().count();
    String breakers = branch.hots().stream().map(BranchHot::breaker).map(Object::toString).distinct().collect(Collectors.joining(" and "));
    return Stream.of(
        Optional.of(branch.name()), label(branch),
        Optional.of(breakers).filter(b -> !b.isEmpty()).map(b -> "breaker " + b), Optional.of(boxes + (boxes == 1 ? " box" : " boxes")))
        .flatMap(Optional::stream)
        .collect(Collectors.joining(", "));
  }

  private Optional<String> label(Branch branch) {
    return branch.label()
        .or(() -> branch.hots().stream().flatMap(h -> house.breaker(h.breaker()).stream()).flatMap(b -> b.label().stream()).findFirst());
  }

  private static Content signs(Legend legend) {
    String title = "Signs of the pictures of branches";
    String words = legend.items().stream().map(Legend.Item::words).collect(Collectors.joining("; ")) + ".";
    return new Content.Picture("Signs of the pictures", legend.sketch(LEGEND_WIDTH).drawing(10, title, words),
        new Plate(List.of(), legend, title, words));
  }

  List<Content> rooms() {
    List<Room> rooms = house.rooms().values().stream().filter(r -> !r.boxes().isEmpty() && !alike.isRepeated(r.name())).toList();
    if (rooms.isEmpty()) {
      return List.of();
    }
    if (rooms.size() > MOST_ROOMS) {
      return List.of(new Content.Remark(
          "Not drawn here, for there are " + rooms.size() + " rooms: wattle draw --view rooms draws them, on sheets with --paper."));
    }
    RoomSheet sheet = new RoomSheet(house, rooms);
    return List.of(new Content.Folded(
        "Boxes and devices of each room, with what protects them", marks.on(sheet.plate().bare(), Marked.Side.BESIDE),
        marks.on(sheet, Marked.Side.BESIDE), NO_SIGNS));
  }

  /**
   * The branches that a trial is about, with its figures.
   *
   * @param trial its name, by which a command asks for it
   */
  List<Content> trial(String trial, TrialResult result, String title) {
    List<Content> contents = new ArrayList<>();
    List<String> all = result.mainBranches();
    int drawn = Math.min(MOST_BRANCHES_OF_A_TRIAL, all.size());
    for (String name : all.subList(0, drawn)) {
      TrialPicture picture = new TrialPicture(house, house.branches().get(name), result, title);
      Plate plate = picture.plate(TrialPicture.USUAL_WIDTH);
      contents.add(new Content.Folded(
          "Branch " + name + " in it, with volts, amperes and watts", plate.drawing(), picture,
          new Legend(picture.legend().items(), List.of())));
    }
    if (drawn < all.size()) {
      contents.add(notDrawn(trial, all.subList(drawn, all.size())));
    }
    return contents;
  }

  private static Content notDrawn(String trial, List<String> branches) {
    boolean one = branches.size() == 1;
    return new Content.Remark(
        branches.size() + " more " + (one ? "branch that it is about is" : "branches that it is about are") + " not drawn here: "
            + String.join(", ", branches)
            + ". wattle trial FILE " + trial + " --branch " + branches.get(0) + " --picture " + branches.get(0) + ".svg draws "
            + (one ? "it." : branches.get(0) + ", and the others by their names."));
  }
}
