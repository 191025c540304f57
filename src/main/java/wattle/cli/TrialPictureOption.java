package wattle.cli;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import wattle.compiler.Compilation;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.file.Output;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.trials.TrialResult;

/** A picture of a branch with the figures of a trial on it, beside the tables. */
final class TrialPictureOption {
  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Also draw a branch with the figures of the trial; a name that ends in .svg, .png or .pdf.")
  private String picture;

  @Option(
      names = "--branch",
      paramLabel = "BRANCH",
      description = "The branch for --picture (default: the one in the events, otherwise the one that heats most).")
  private String branch;

  @Mixin
  private PaperOption paper;

  /** What is asked for, looked at before anything is worked out. */
  Optional<PictureFile> file() {
    if (picture == null) {
      if (branch != null) {
        throw new Failure("--branch says which branch --picture draws; give --picture with a file");
      }
      paper.refuseWithout("--picture");
    }
    return Optional.ofNullable(picture).map(PictureFile::named);
  }

  /** The picture that is asked for, in one file or several; none where none is. */
  List<Output> of(Compilation plan, List<TrialCommand.Run> runs) {
    Optional<PictureFile> file = file();
    if (file.isEmpty()) {
      return List.of();
    }
    boolean onPaper = paper.isGiven();
    if (runs.size() > 1) {
      throw new Failure("--picture is of one trial: name it");
    }
    TrialResult result = runs.get(0).result();
    Optional<String> name = Optional.ofNullable(branch).or(result::mainBranch);
    if (name.isEmpty()) {
      throw new Failure("nothing flows in any branch; name the one to draw with --branch");
    }
    TrialPicture view = new TrialPicture(plan.house(), BranchPlots.branch(plan, name), result, runs.get(0).title());
    List<Drawing> drawings = onPaper ? paper.sheets(view, plan.house()) : List.of(view.plate(TrialPicture.USUAL_WIDTH).drawing());
    return file.get().of(drawings, view.title() + plan.house().title().map(t -> ": " + t).orElse(""));
  }
}
