package wattle.emit.document.primer;

import wattle.compiler.Compilation;
import wattle.compiler.Primer;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.model.Branch;
import wattle.model.Trial;
import wattle.trials.TrialResult;

/** The same as a page, with a picture of the branch in its trial. */
public final class PrimerPage {
  private static final double WIDTH = 900;

  private static final String STYLE = """
      .picture svg { max-width: 100%; height: auto; }
      """;

  private PrimerPage() {}

  public static Page of(Primer primer, Compilation lessons, String paper) {
    Markup body = new Markup();
    body.element("h1", primer.title());
    body.element("p", primer.text());
    Trial trial = lessons.house().trials().get(primer.trial());
    body.element("h2", "On the mock-up wall: " + trial.label().orElse(trial.name()));
    body.element("p", PrimerText.events(primer, lessons));
    body.list(PrimerText.figures(primer, lessons));
    TrialResult result = lessons.figures().trials().result(trial).value();
    result.mainBranch().map(lessons.house().branches()::get).ifPresent(branch -> picture(body, lessons, branch, result, trial));
    body.open("p").text("Try it: ").element("code", PrimerText.command(primer)).close();
    body.element("p", Page.CAUTION, "class", "caution small");
    return new Page(primer.title(), paper, STYLE, body.toString());
  }

  private static void picture(Markup body, Compilation lessons, Branch branch, TrialResult result, Trial trial) {
    TrialPicture view = new TrialPicture(lessons.house(), branch, result, trial.label().orElse(trial.name()));
    body.open("div", "class", "picture").raw(DrawingSvg.element(view.plate(WIDTH).drawing(), "primer")).close();
  }
}
