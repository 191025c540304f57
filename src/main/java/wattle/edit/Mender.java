package wattle.edit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;

/**
 * Applies fixes and holds each to its word: a fix stays only if the text it gives no longer has the finding, has no new one, and is
 * of a house that is no more dangerous. A finding with several fixes is left alone, since choosing between them is the reader's.
 */
public final class Mender {
  private final Function<Source, List<Finding>> check;
  private final Hidden hidden;
  private final Objections objections;
  private final Set<String> named;

  /** What speaks against a fix that leaves no new finding. */
  @FunctionalInterface
  public interface Objections {
    /** Why a fix that makes one text of another makes the house more dangerous; absent where it does not. */
    Optional<String> to(Fix fix, Source before, Source after);
  }

  /** Which findings of a mended text were there before and could not be seen. */
  @FunctionalInterface
  public interface Hidden {
    /** Whether what hides behind the mistakes of a text includes this finding. */
    boolean was(Finding found, Source before);
  }

  /**
   * @param check the findings of a text
   * @param hidden what a fix brings to light without making it
   * @param named rules whose offered fixes may be applied as well, because the user named them
   */
  public Mender(Function<Source, List<Finding>> check, Hidden hidden, Objections objections, Set<String> named) {
    this.check = check;
    this.hidden = hidden;
    this.objections = objections;
    this.named = Set.copyOf(named);
  }

  /**
   * A fix that was not made.
   *
   * @param finding that it is of
   * @param why what speaks against it: the danger or the finding that it would bring, or that it leaves its own
   */
  public record Refused(Finding finding, String why) {}

  /**
   * What became of a text.
   *
   * @param text the mended text
   * @param applied findings whose fix was applied, in the order applied
   * @param refused findings whose fix was tried and did not do what it promised
   * @param left findings of the mended text
   */
  public record Mended(String text, List<Finding> applied, List<Refused> refused, List<Finding> left) {
    public Mended {
      applied = List.copyOf(applied);
      refused = List.copyOf(refused);
      left = List.copyOf(left);
    }
  }

  /** Applies one fix after another until none is left that may be applied. */
  public Mended mend(Source source) {
    Source at = source;
    List<Finding> findings = check.apply(at);
    List<Finding> applied = new ArrayList<>();
    List<Refused> refused = new ArrayList<>();
    List<Finding> tried = new ArrayList<>();
    while (true) {
      Source text = at;
      Finding next = findings.stream()
          .filter(f -> mayMend(f, text) && tried.stream().noneMatch(t -> t.isOfSameFault(f)))
          .findFirst()
          .orElse(null);
      if (next == null) {
        return new Mended(at.text(), applied, refused, findings);
      }
      Source mended = new Source(at.name(), apply(at.text(), theFix(next).edits()));
      List<Finding> after = check.apply(mended);
      boolean sameHouse = theFix(next).safety() == Fix.Safety.SAFE;
      Optional<String> broken = brokenWord(next, findings, after, f -> sameHouse && hidden.was(f, text));
      Optional<String> why = broken.isPresent()
          ? broken
          : objections.to(theFix(next), at, mended).map(danger -> "the house would be more dangerous, as " + danger);
      if (why.isEmpty()) {
        applied.add(next);
        at = mended;
        findings = after;
        refused.removeIf(r -> r.finding.isOfSameFault(next));
        tried.clear(); // what stood in the way of another fix may be gone
      } else {
        refused.removeIf(r -> r.finding.isOfSameFault(next));
        refused.add(new Refused(next, why.get()));
        tried.add(next);
      }
    }
  }

  /** Which finding a fix brings that was not there before, or that it leaves its own; absent where it does neither. */
  private static Optional<String> brokenWord(Finding mended, List<Finding> before, List<Finding> after, Predicate<Finding> wasHidden) {
    List<Finding> known = new ArrayList<>(before);
    for (Finding finding : after) {
      Optional<Finding> match = known.stream().filter(k -> k.isOfSameFault(finding)).findFirst();
      if (match.isEmpty() && wasHidden.test(finding)) {
        continue;
      }
      if (match.isEmpty()) {
        return Optional.of("its fix would bring another finding, " + finding.severity() + " " + finding.rule() + " (" + finding.headline()
            + ")");
      }
      known.remove(match.get());
    }
    return known.stream().anyMatch(k -> k.isOfSameFault(mended)) ? Optional.empty() : Optional.of("its fix leaves the finding");
  }

  private static Fix theFix(Finding finding) {
    return finding.fixes().stream().filter(f -> !f.edits().isEmpty()).findFirst().orElseThrow();
  }

  /** One fix that can be made, in this very text, and that is safe or was named. */
  private boolean mayMend(Finding finding, Source source) {
    return canMend(finding, source) && (theFix(finding).safety() == Fix.Safety.SAFE || named.contains(finding.rule()));
  }

  /** Whether a finding has one fix that can be made in a text, be it one that changes the house. */
  public static boolean canMend(Finding finding, Source source) {
    List<Fix> possible = finding.fixes().stream().filter(f -> !f.edits().isEmpty()).toList();
    return finding.silenced().isEmpty()
        && possible.size() == 1
        && possible.get(0).edits().stream().allMatch(e -> e.span().source().name().equals(source.name()));
  }

  /** The text with edits made, last first, so that the spans of the others stay right; new lines end as the others do. */
  public static String apply(String text, List<Edit> edits) {
    StringBuilder edited = new StringBuilder(text);
    String end = text.contains("\r\n") ? "\r\n" : "\n";
    edits.stream()
        .sorted(Comparator.comparingInt((Edit e) -> e.span().start()).reversed())
        .forEach(e -> edited.replace(e.span().start(), e.span().end(), e.text().replace("\n", end)));
    return edited.toString();
  }
}
