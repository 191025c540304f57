package wattle.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.syntax.Tree;

/** The words of a device in one placement: its kind and traits, a parameter among them as the word or words given for it. */
final class DeviceWords {
  private static final Pattern WORD = Pattern.compile("[\\p{L}_][\\p{L}_0-9]*(?:-[\\p{L}_0-9]+)*");
  private static final Pattern WORDS = Pattern.compile(WORD + "(?: +" + WORD + ")*");

  private final Frame frame;

  DeviceWords(Frame frame) {
    this.frame = frame;
  }

  /** Absent where something else than words is given for one of them, which has been told. */
  Optional<List<Tree.Word>> of(Tree.Device device) {
    if (device.words().stream().allMatch(w -> frame.argument(w.text()).isEmpty())) {
      return Optional.of(frame.plain(device.words()));
    }
    List<Tree.Word> words = new ArrayList<>();
    for (Tree.Word word : device.words()) {
      Optional<Argument> given = frame.argument(word.text());
      List<Tree.Word> meant = given.map(this::words).orElse(List.of());
      if (!meant.isEmpty()) {
        words.addAll(meant);
      } else if (given.isEmpty() || isBeforeAFigure(word, device)) {
        words.add(frame.plain(word));
      } else {
        report(word, given.get());
        return Optional.empty();
      }
    }
    return Optional.of(words);
  }

  /** The words that are given; none where a figure is, or a cable. */
  private List<Tree.Word> words(Argument argument) {
    if (argument.text().isPresent()) {
      return words(argument.text().get());
    }
    return argument.name()
        .filter(name -> !frame.ledger().constants().containsKey(name.text()))
        .map(name -> List.of(new Tree.Word(name.text(), argument.span())))
        .orElse(List.of());
  }

  /** Each word of a text where it stands between the quotes. */
  private static List<Tree.Word> words(Tree.Text text) {
    if (!WORDS.matcher(text.value()).matches()) {
      return List.of();
    }
    Span whole = text.span();
    boolean asWritten = whole.text().equals('"' + text.value() + '"');
    List<Tree.Word> words = new ArrayList<>();
    for (Matcher word = WORD.matcher(text.value()); word.find();) {
      int start = whole.start() + 1 + word.start();
      words.add(new Tree.Word(word.group(), asWritten ? new Span(whole.source(), start, start + word.group().length()) : whole));
    }
    return words;
  }

  /** A figure's name may be that of the parameter which gives the figure, as in {@code height (height)}; an only word is the kind. */
  private static boolean isBeforeAFigure(Tree.Word word, Tree.Device device) {
    return device.words().size() > 1
        && device.amounts().stream().anyMatch(a -> a.before().filter(b -> b.span().equals(word.span())).isPresent());
  }

  private void report(Tree.Word word, Argument given) {
    frame.ledger().report(
        Finding.error("argument-kind", "'" + word + "' needs a kind of device, and '" + given.shown() + "' is none")
            .at(given.span(), "a kind such as light, or one of several words in quotes, is expected here")
            .with(frame.span(word.span()), "used as a kind here")
            .fix("give a kind that the parts have, as in light or \"smoke alarm\""));
  }
}
