package wattle.server;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import wattle.syntax.Tree;

/** What a quoted text is for, and of what it is: the label of a branch, the title of a plan, the reason of a silence. */
final class TextPages {
  private TextPages() {}

  /**
   * @param around the trees that hold the text, outermost first; the text is the last of them
   * @param thing the page of what has a name; absent where the name leads nowhere
   */
  static Optional<Page> of(Tree.Text text, List<Tree> around, Question question, Function<Tree.Word, Optional<Page>> thing) {
    Tree holder = around.get(around.size() - 2);
    if (holder instanceof Tree.Heading heading) {
      return Optional.of(heading(text, heading, question));
    }
    if (holder instanceof Tree.Silence silence) {
      return Optional.of(silence(silence, question.analysis()));
    }
    if (holder instanceof Tree.Expectation expectation) {
      return Optional.of(new Page().title("label of an expectation", "").line(expectation.measured().text() + "; shown with its result"));
    }
    if (holder instanceof Tree.SourceLine source) {
      return Optional
          .of(new Page().title("label of the source", source.kind().text()).line("shown in the one-line diagram and the report"));
    }
    if (holder instanceof Tree.Fact fact) {
      return Optional.of(new Page().title(fact.name().text(), "stated as a text"));
    }
    if (holder instanceof Tree.Argument) {
      return Optional.of(new Page().title("given to a pattern", "").line("replaces its parameter"));
    }
    if (holder instanceof Tree.Slot slot) {
      Page page = new Page().title("label of slot", slot.slots().text()).line("shown in the panel directory");
      return Optional.of(around.get(0) instanceof Tree.Panel panel ? slot(page, panel, slot, question.analysis()) : page);
    }
    return name(holder).flatMap(thing).map(p -> p.line("this text is its label, shown in pictures, tables and the panel directory"));
  }

  private static Page heading(Tree.Text text, Tree.Heading heading, Question question) {
    boolean revision = heading.revision().filter(r -> r.span().equals(text.span())).isPresent();
    if (revision) {
      return new Page().title("revision", "").line("shown in the title block of every sheet, and by compare");
    }
    var house = question.analysis().house();
    return new Page().title("title of the plan", "")
        .line("shown on every picture and page")
        .line(count(house.panels().size(), "panel", "panels") + ", " + count(house.branches().size(), "branch", "branches") + ", "
            + count(house.rooms().size(), "room", "rooms") + ", " + count(house.devices().size(), "device", "devices"));
  }

  private static String count(int count, String one, String more) {
    return count + " " + (count == 1 ? one : more);
  }

  private static Page silence(Tree.Silence silence, Analysis analysis) {
    long silenced = analysis.compilation().findings().stream()
        .filter(f -> f.rule().equals(silence.rule().text())
            && f.silenced().filter(silence.reason().value()::equals).isPresent())
        .count();
    return new Page().title("reason of a silence", "")
        .line("shown with each finding of " + silence.rule() + " that it silences: " + silenced + " here");
  }

  private static Page slot(Page page, Tree.Panel panel, Tree.Slot slot, Analysis analysis) {
    return Optional.ofNullable(analysis.house().panels().get(panel.name().text()))
        .flatMap(p -> p.breakers().stream().filter(b -> b.id().slots().stream()
            .anyMatch(s -> slot.slots().numbers().stream().anyMatch(n -> n.number() == s.number() && n.half().equals(s.half()))))
            .findFirst())
        .map(b -> page.line(BreakerLine.of(b)))
        .orElse(page);
  }

  /** The name of what may have a label. */
  private static Optional<Tree.Word> name(Tree holder) {
    if (holder instanceof Tree.Branch branch) {
      return Optional.of(branch.name());
    }
    if (holder instanceof Tree.Room room) {
      return Optional.of(room.name());
    }
    if (holder instanceof Tree.Device device) {
      return Optional.of(device.name());
    }
    if (holder instanceof Tree.Panel panel) {
      return Optional.of(panel.name());
    }
    if (holder instanceof Tree.Service service) {
      return Optional.of(service.name());
    }
    if (holder instanceof Tree.Dwelling dwelling) {
      return dwelling.name();
    }
    if (holder instanceof Tree.Raceway raceway) {
      return Optional.of(raceway.name());
    }
    if (holder instanceof Tree.Trial trial) {
      return Optional.of(trial.name());
    }
    if (holder instanceof Tree.Pack pack) {
      return Optional.of(pack.name());
    }
    if (holder instanceof Tree.Rule rule) {
      return Optional.of(rule.name());
    }
    return Optional.empty();
  }
}
