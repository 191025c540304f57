package wattle.compiler;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A fault of a filled test sheet and its mend. {@code sheet-samples.txt} has a line for each: the name of the finding, the sound sheet and
 * the faulty one, for the plan {@code structure-sample.wattle}.
 */
record SheetSample(String name, String sound, String faulty) {
  /** All there are, by the names of the findings. */
  static Map<String, SheetSample> all() {
    Map<String, SheetSample> all = new LinkedHashMap<>();
    BuildText.of("sheet-samples.txt").lines().forEach(line -> {
      String[] parts = line.replace("\\n", "\n").split("\\|", -1);
      all.put(parts[0], new SheetSample(parts[0], parts[1], parts[2]));
    });
    return all;
  }

  static Optional<SheetSample> of(String name) {
    return Optional.ofNullable(all().get(name));
  }
}
