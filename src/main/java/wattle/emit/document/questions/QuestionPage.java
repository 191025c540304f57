package wattle.emit.document.questions;

import wattle.derivation.Derivation;
import wattle.derivation.DerivationUnits;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.unfolded.DerivationText;
import wattle.questions.Level;
import wattle.questions.Question;
import wattle.questions.QuestionSheet;

/** Questions as a page with room to write, and the answer key on a page of its own. */
public final class QuestionPage {
  private static final String STYLE = """
      .write { height: 4em; border-bottom: 0.6pt solid #888; margin-bottom: 0.9em; }
      .question { page-break-inside: avoid; }
      .answer { margin-top: 0.8em; }
      .key { page-break-before: always; }
      .steps, .steps ul { list-style: none; padding-left: 1.2em; font-size: 9pt; }
      code { font-size: 9pt; overflow-wrap: anywhere; }
      details summary { cursor: pointer; }
      """;

  private QuestionPage() {}

  /**
   * The page.
   *
   * @param file of the plan, for the commands that show an answer
   * @param folds whether workings unfold at a click, as on a screen; on paper they are printed
   */
  public static Page of(QuestionSheet sheet, String file, String paper, boolean folds) {
    Markup body = new Markup();
    body.element("h1", QuestionText.title(sheet));
    body.element("p", Page.CAUTION, "class", "caution small");
    Level level = null;
    for (int i = 0; i < sheet.questions().size(); i++) {
      Question question = sheet.questions().get(i);
      if (question.level() != level) {
        level = question.level();
        body.element("h2", level.title());
      }
      body.open("div", "class", "question").element("p", i + 1 + ". " + question.text());
      body.element("div", "", "class", "write").close();
    }
    body.element("h1", "Answer key", "class", "key");
    DerivationUnits units = new DerivationUnits(sheet.house().units());
    for (int i = 0; i < sheet.questions().size(); i++) {
      answer(body, i + 1, sheet.questions().get(i), units, file, folds);
    }
    return new Page(QuestionText.title(sheet), paper, STYLE, body.toString());
  }

  private static void answer(Markup body, int number, Question question, DerivationUnits units, String file, boolean folds) {
    body.open("div", "class", "answer").element("p", number + ". " + question.answer().get(0));
    question.answer().stream().skip(1).forEach(a -> body.element("p", a));
    for (Derivation working : QuestionText.telling(question)) {
      Derivation shown = units.shown(working);
      if (folds) {
        body.open("details").element("summary", "how " + shown.name() + " is calculated");
      }
      body.raw(DerivationText.html(shown, folds ? Integer.MAX_VALUE : QuestionText.DEEPEST));
      if (folds) {
        body.close();
      }
    }
    if (!question.events().isEmpty()) {
      body.open("p", "class", "small").text("Try it: ").element("code", QuestionText.command(question, file)).close();
    }
    body.close();
  }
}
