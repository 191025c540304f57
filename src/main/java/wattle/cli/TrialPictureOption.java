package wattle.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Option;
import wattle.compiler.Compilation;
import wattle.emit.drawing.DrawingSvg;
import wattle.emit.file.Output;
import wattle.emit.picture.PdfPicture;
import wattle.emit.picture.PngPicture;
import wattle.emit.picture.UnreadablePictureException;
import wattle.emit.trialpicture.TrialPicture;
import wattle.trials.TrialResult;

/** A picture of a branch with the figures of a trial on it, beside the tables. */
final class TrialPictureOption {
  private static final int PIXELS_PER_INCH = 144;

  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Draw a branch with the figures of the trial on it, too; a name that ends in .svg, .png or .pdf.")
  private String picture;

  @Option(
      names = "--branch",
      paramLabel = "BRANCH",
      description = "The branch of --picture (default: the one that the events are about, else the one heated most).")
  private String branch;

  /** The picture that is asked for; absent where none is. */
  Optional<Output> of(Compilation plan, List<TrialCommand.Run> runs) {
    if (picture == null) {
      if (branch != null) {
        throw new Failure("--branch says which branch --picture draws; give --picture with a file");
      }
      return Optional.empty();
    }
    if (runs.size() > 1) {
      throw new Failure("--picture is of one trial: name it");
    }
    TrialResult result = runs.get(0).result();
    Optional<String> name = Optional.ofNullable(branch).or(result::mainBranch);
    if (name.isEmpty()) {
      throw new Failure("nothing flows in any branch; name the one to draw with --branch");
    }
    String svg =
        DrawingSvg.document(
            TrialPicture.of(plan.house(), BranchPlots.branch(plan, name), result, runs.get(0).title(), TrialPicture.USUAL_WIDTH).drawing());
    return Optional.of(output(ResultOutput.path(picture), svg, runs.get(0).title()));
  }

  private static Output output(Path file, String svg, String title) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    try {
      if (name.endsWith(".svg")) {
        return Output.text(file, svg);
      }
      if (name.endsWith(".png")) {
        return new Output(file, PngPicture.of(svg, PIXELS_PER_INCH));
      }
      if (name.endsWith(".pdf")) {
        return new Output(file, PdfPicture.of(List.of(svg), title, Optional.empty()));
      }
    } catch (UnreadablePictureException e) {
      throw new Failure(e.getMessage());
    }
    throw new Failure("the name " + file + " does not tell a format; end it in .svg, .png or .pdf");
  }
}
