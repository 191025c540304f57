package wattle.golden;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
      assertThat(actual).as(golden.toString()).isEqualTo(Files.readString(golden));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
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
