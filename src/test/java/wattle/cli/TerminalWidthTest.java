package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.emit.media.text.DisplayWidth;
import wattle.emit.sheet.tables.PlanTable;

/** On a terminal nothing that people read is wider than it. */
class TerminalWidthTest {
  private static final String HOUSE = "examples/alder-court/house.wattle";
  private static final String FLATS = "examples/tern-court/house.wattle";

  @TempDir
  Path folder;

  private static String run(int columns, String... arguments) {
    StringWriter out = new StringWriter();
    Main.run(arguments, new PrintWriter(out), new PrintWriter(out), OptionalInt.of(columns));
    return out.toString();
  }

  /** No line but one that is a single word. */
  private static void assertFits(int columns, String... arguments) {
    String out = run(columns, arguments);
    assertThat(out).isNotBlank();
    assertThat(out.lines().filter(l -> DisplayWidth.of(l) > columns && l.strip().contains(" "))).as(String.join(" ", arguments)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {60, 80, 110})
  void everyTableFits(int columns) {
    for (PlanTable table : PlanTable.values()) {
      assertFits(columns, "table", "--of", EnumerationWord.of(table), HOUSE);
    }
    assertFits(columns, "table", "--of", "runs", FLATS);
  }

  @ParameterizedTest
  @ValueSource(ints = {60, 80})
  void everyDocumentFits(int columns) {
    assertFits(columns, "check", HOUSE);
    assertFits(columns, "check", "--assumptions", "examples/cottage/house.wattle");
    assertFits(columns, "explain");
    assertFits(columns, "explain", "--words");
    assertFits(columns, "explain", "box-overfilled");
    assertFits(columns, "explain", HOUSE, "--figures");
    assertFits(columns, "explain", HOUSE, "--figure", "voltage of kitchen.c1");
    assertFits(columns, "trial", HOUSE);
    assertFits(columns, "trial", HOUSE, "--every");
    assertFits(columns, "trial", HOUSE, "--add", "vehicle charger 7.7 kW");
    assertFits(columns, "lockout", HOUSE, "kitchen.c1");
    assertFits(columns, "directory", HOUSE);
    assertFits(columns, "permit", HOUSE);
    assertFits(columns, "permit", "--worksheet", HOUSE);
    assertFits(columns, "test-sheet", HOUSE);
    assertFits(columns, "balance", HOUSE);
    assertFits(columns, "compare", "examples/kitchen-renovation/before.wattle", "examples/kitchen-renovation/after.wattle");
    assertFits(columns, "size", "40", "A", "150", "ft", "240", "V");
    assertFits(columns, "check", "no-such-file-of-a-plan.wattle");
  }

  /** The whole table is there: every cell of a wide print is in the narrow one. */
  @Test
  void whatDoesNotFitGoesOnBeneath() {
    String narrow = run(60, "table", "--of", "loads", HOUSE);
    String wide = run(60, "--wide", "table", "--of", "loads", HOUSE);
    assertThat(words(narrow)).containsAll(words(wide).stream().filter(w -> !w.contains("─")).toList());
    assertThat(wide.lines().mapToInt(DisplayWidth::of).max().orElse(0)).isGreaterThan(60);
    assertThat(run(60, "table", "--wide", "--of", "loads", HOUSE)).isEqualTo(wide);
  }

  private static Set<String> words(String text) {
    return Arrays.stream(text.split("\\s+")).collect(Collectors.toSet());
  }

  /** What programs read keeps its lines, and what browsers show goes to a file. */
  @Test
  void dataStayWholeAndPagesGoToFiles() {
    assertThat(run(60, "table", "--of", "loads", "--format", "csv", HOUSE).lines().mapToInt(String::length).max().orElse(0))
        .isGreaterThan(60);
    for (List<String> page : List.of(List.of("directory", HOUSE), List.of("permit", HOUSE), List.of("lockout", HOUSE, "kitchen.c1"),
        List.of("test-sheet", HOUSE))) {
      String[] command = new java.util.ArrayList<>(page).toArray(new String[page.size() + 2]);
      command[page.size()] = "-f";
      command[page.size() + 1] = "html";
      assertThat(run(80, command)).contains("name a file with --out").hasLineCount(2).doesNotContain("<");
      StringWriter piped = new StringWriter();
      Main.run(command, new PrintWriter(piped), new PrintWriter(new StringWriter()));
      assertThat(piped.toString()).startsWith("<!DOCTYPE html>");
    }
    assertThat(run(80, "draw", "--view", "one-line", HOUSE)).contains("name a file with --out");
    assertThat(run(80, "directory", HOUSE, "-o", folder.resolve("d.html").toString())).isEmpty();
  }

  /** Every word of a narrow help is one of a wide help: none is broken at a hyphen or a slash. */
  @ParameterizedTest
  @ValueSource(ints = {60, 80})
  void helpBreaksNoWord(int columns) {
    for (Class<?> command : Main.COMMANDS) {
      String name = Main.nameOf(command);
      assertFits(columns, name, "--help");
      assertThat(words(run(400, name, "--help"))).as(name).containsAll(words(run(columns, name, "--help").replace(" \\\n", "\n")));
    }
    assertFits(columns, "--help");
    assertThat(run(columns, "trial", "--help")).startsWith("Usage: wattle trial [-");
  }
}
