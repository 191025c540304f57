package wattle.compiler;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A fault of structure and its mend, as one change of a plan that stands beside this package. {@code structure-samples.txt} has a line
 * for each: its name, the sound text, which the plan has once, the faulty one, and then pairs of texts, what the plan has and what both
 * have instead of it. The plan is {@code structure-sample.wattle}, and of a name with {@code @flats} behind it
 * {@code structure-sample-flats.wattle}.
 *
 * @param name of the finding
 * @param plan the whole sound plan
 * @param sound the text in it that is replaced
 * @param faulty what it is replaced by
 */
public record StructureSample(String name, String plan, String sound, String faulty) {
  /** All there are, by the names of the findings. */
  public static Map<String, StructureSample> all() {
    Map<String, StructureSample> all = new LinkedHashMap<>();
    BuildText.of("structure-samples.txt").lines().forEach(line -> {
      String[] parts = line.replace("\\n", "\n").split("\\|", -1);
      String[] name = parts[0].split("@", 2);
      String base = BuildText.of(name.length == 1 ? "structure-sample.wattle" : "structure-sample-" + name[1] + ".wattle");
      all.put(name[0], new StructureSample(name[0], SampleTexts.with(base, parts, 3), parts[1], parts[2]));
    });
    return all;
  }

  /** That of a finding; absent where there is none. */
  public static Optional<StructureSample> of(String name) {
    return Optional.ofNullable(all().get(name));
  }

  /** The plan with the fault in it. */
  public String faultyPlan() {
    return plan.replace(sound, faulty);
  }

  /** The lines of the sound plan that the change is in, a little further in. */
  String soundLines() {
    return lines(sound);
  }

  /** The same lines with the fault in them. */
  String faultyLines() {
    return lines(faulty);
  }

  /** The whole block that the change is in, since one line of it says little. */
  private String lines(String text) {
    int at = plan.indexOf(sound);
    int start = plan.lastIndexOf('\n', at) + 1;
    while (plan.charAt(start) == ' ') {
      start = plan.lastIndexOf('\n', start - 2) + 1;
    }
    int end = Math.max(at + sound.length() - 1, at);
    end = plan.indexOf('\n', end);
    if (plan.substring(start, plan.indexOf('\n', start)).endsWith("{") && !plan.startsWith("}", plan.lastIndexOf('\n', end - 1) + 1)) {
      end = plan.indexOf("\n}", end) + 2;
    }
    StringBuilder out = new StringBuilder();
    (plan.substring(start, at) + text + plan.substring(at + sound.length(), Math.max(end, at + sound.length()))).lines()
        .filter(l -> !l.isBlank())
        .forEach(l -> out.append("  ").append(l).append('\n'));
    return out.isEmpty() ? "  // the same without that line\n" : out.toString();
  }
}
