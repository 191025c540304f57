package wattle.live;

import java.util.List;
import java.util.function.Function;
import wattle.derivation.Derivation;
import wattle.emit.media.page.Markup;
import wattle.trials.Danger;

/** What can hurt, burn or ruin in what was clicked together. */
final class DangerPart {
  /** Of one kind; where the neutral of a service is gone, all metal of a house is live. */
  private static final int MOST = 6;

  private final Situation situation;
  private final Markup out = new Markup();
  private final Function<Derivation, String> folded;

  /** @param folded what stands beneath a figure when it is opened */
  DangerPart(Situation situation, Function<Derivation, String> folded) {
    this.situation = situation;
    this.folded = folded;
  }

  String html() {
    List<Danger> dangers = situation.dangers();
    out.element("p", "In short: " + situation.result().verdict() + ".");
    for (Danger.Kind kind : Danger.Kind.values()) {
      List<Danger> these = dangers.stream().filter(d -> d.kind() == kind).toList();
      if (!these.isEmpty()) {
        kind(kind, these);
      }
    }
    return out.toString();
  }

  /** In one line, for those who do not see the page. */
  static String summary(List<Danger> dangers) {
    long kinds = dangers.stream().map(Danger::kind).distinct().count();
    return dangers.isEmpty()
        ? "none of the dangers that are checked; not the same as safe"
        : kinds == 1
            ? dangers.size() + " × " + dangers.get(0).kind().title().toLowerCase(java.util.Locale.ROOT)
            : dangers.size() + " dangers, first: " + dangers.get(0).words();
  }

  private static String severity(Danger.Kind kind) {
    return switch (kind) {
      case UNDERVOLTAGE, FLOATING, NOT_SERVED, ANIMALS -> "warning";
      case PROTECTION -> "advice";
      default -> "error";
    };
  }

  private void kind(Danger.Kind kind, List<Danger> dangers) {
    out.open("article", "class", "finding " + severity(kind));
    out.open("h3").element("span", kind.title(), "class", "severity").close();
    out.open("ul");
    for (Danger danger : dangers.subList(0, Math.min(MOST, dangers.size()))) {
      out.open("li").text(danger.words());
      danger.figure().ifPresent(f -> {
        out.text(" ").open("details", "class", "why").element("summary", "How");
        out.raw(folded.apply(f));
        danger.limit().ifPresent(l -> out.raw(folded.apply(l)));
        out.close();
      });
      if (!danger.branch().isEmpty() && situation.plan().house().branches().containsKey(danger.branch())) {
        out.text(" ").element("button", "Show " + danger.branch(), "type", "button", "class", "show", "data-branch", danger.branch());
      }
      out.close();
    }
    if (dangers.size() > MOST) {
      out.element("li", "and " + (dangers.size() - MOST) + " more of the kind");
    }
    out.close().close();
  }
}
