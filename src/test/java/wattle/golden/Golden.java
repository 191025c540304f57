package wattle.golden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A file beside a plan that holds what a user reads, whole. With {@code -Dgolden=write} it is written anew, and the test
 * still fails, so that no run both writes and passes.
 */
public final class Golden {
  private Golden() {}

  /** Compares a text with its golden file. */
  public static void check(Path golden, String actual) {
    try {
      if ("write".equals(System.getProperty("golden"))) {
        boolean same = Files.exists(golden) && Files.readString(golden).equals(actual);
        Files.writeString(golden, actual);
        assertThat(same).as("%s was written anew; read the difference, then run without -Dgolden", golden).isTrue();
        return;
      }
      assertThat(golden).as("a golden file; -Dgolden=write makes it").exists();
      sameLines(golden.toString(), actual, Files.readString(golden));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Fails with the lines that differ, and not with two whole documents. */
  public static void sameLines(String name, String actual, String wanted) {
    if (!actual.equals(wanted)) {
      fail(name + " differs; -Dgolden=write makes it anew\n" + difference(actual.lines().toList(), wanted.lines().toList()));
    }
  }

  /** What lies between the first and the last lines that are the same, that much of it at most. */
  private static String difference(List<String> actual, List<String> wanted) {
    int shorter = Math.min(actual.size(), wanted.size());
    int alike = 0;
    while (alike < shorter && actual.get(alike).equals(wanted.get(alike))) {
      alike++;
    }
    int behind = 0;
    while (behind < shorter - alike && actual.get(actual.size() - 1 - behind).equals(wanted.get(wanted.size() - 1 - behind))) {
      behind++;
    }
    return "from line " + (alike + 1) + ":\n" + some("- ", wanted.subList(alike, wanted.size() - behind))
        + some("+ ", actual.subList(alike, actual.size() - behind)) + (alike == shorter && alike == actual.size() && alike == wanted.size()
            ? "the ends of lines differ\n"
            : "");
  }

  private static String some(String sign, List<String> lines) {
    int most = 12;
    String shown = lines.stream().limit(most).map(l -> sign + l + "\n").collect(Collectors.joining());
    return lines.size() > most ? shown + sign + "… and " + (lines.size() - most) + " more lines\n" : shown;
  }

  /** Every plan below a folder, in the order of their names. */
  public static List<Path> plans(String folder) {
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      return files.filter(f -> f.toString().endsWith(".wattle")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The golden file of a plan: the same name with another ending. */
  public static Path beside(Path plan, String ending) {
    return plan.resolveSibling(plan.getFileName().toString().replaceFirst("\\.wattle$", "." + ending));
  }
}
