package wattle.words;

import java.util.ArrayList;
import java.util.List;
import wattle.model.Surroundings;

/** Where a run goes, in words. */
public final class SurroundingsWords {
  private SurroundingsWords() {}

  /** As in {@code attic, 50 °C, with 3 more, through riser}; empty where the plan says nothing. */
  public static String of(Surroundings surroundings) {
    List<String> words = new ArrayList<>();
    surroundings.place().ifPresent(words::add);
    surroundings.ambient().ifPresent(a -> words.add(a.toString()));
    if (surroundings.bundledWith() > 1) {
      words.add("with " + (surroundings.bundledWith() - 1) + " more");
    }
    surroundings.raceways().forEach(r -> words.add("through " + r));
    if (surroundings.underground()) {
      words.add("buried" + surroundings.buried().map(b -> " " + b).orElse(""));
    }
    surroundings.supported().ifPresent(s -> words.add("supported " + s));
    surroundings.held().ifPresent(h -> words.add("held " + h + " from boxes"));
    surroundings.fromEdge().ifPresent(e -> words.add(e + " from the edge of the framing"));
    if (surroundings.nailPlated()) {
      words.add("protected by nail plates");
    }
    return String.join(", ", words);
  }
}
