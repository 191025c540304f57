package wattle.compiler;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
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
    try (InputStream in = StructurePages.class.getResourceAsStream("structure-pages.txt")) {
      if (in == null) {
        throw new IllegalStateException("structure-pages.txt is missing from this build");
      }
      Map<String, String> pages = new TreeMap<>();
      new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().forEach(line -> {
        int bar = line.indexOf('|');
        pages.put(line.substring(0, bar), line.substring(bar + 1));
      });
      return Collections.unmodifiableMap(pages);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read structure-pages.txt", e);
    }
  }

  public static Set<String> names() {
    return all().keySet();
  }

  /** A page to print; empty for a name that is none of them. */
  public static Optional<String> of(String name) {
    return Optional.ofNullable(all().get(name)).map(t -> name + " (" + standing(name) + ")\n\n" + t + "\n");
  }

  private static String standing(String name) {
    return Compiler.COMPUTED.contains(name)
        ? "a computation, in every pack; a plan may silence it with its reason"
        : "structure, in every pack; it cannot be silenced";
  }
}
