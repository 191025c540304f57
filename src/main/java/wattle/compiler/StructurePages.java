package wattle.compiler;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** What the checks of the notation, of the structure and of the computations mean: those that are no rules of a pack. */
public final class StructurePages {
  private StructurePages() {}

  /** The meaning of each, by its name as findings show it. */
  public static Map<String, String> all() {
    Map<String, String> pages = new TreeMap<>();
    BuildText.of("structure-pages.txt").lines().forEach(line -> {
      int bar = line.indexOf('|');
      pages.put(line.substring(0, bar), line.substring(bar + 1));
    });
    return Collections.unmodifiableMap(pages);
  }

  public static Set<String> names() {
    return all().keySet();
  }

  /** A page to print; empty for a name that is none of them. */
  public static Optional<String> of(String name) {
    return Optional.ofNullable(all().get(name)).map(t -> name + " (" + standing(name) + ")\n\n" + t + "\n" + example(name));
  }

  /** A fault and its mend, of those that have one. */
  private static String example(String name) {
    return StructureSample.of(name).map(s -> example(s.soundLines(), s.faultyLines()))
        .or(() -> SheetSample.of(name).map(s -> example(s.sound().indent(2), s.faulty().indent(2)))).orElse("");
  }

  private static String example(String sound, String faulty) {
    return "\npasses:\n" + sound + "\ndoes not pass:\n" + faulty;
  }

  private static String standing(String name) {
    return Compiler.COMPUTED.contains(name)
        ? "a computation, in every pack; a plan may silence it with its reason"
        : "structure, in every pack; it cannot be silenced";
  }
}
