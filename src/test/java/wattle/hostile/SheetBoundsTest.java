package wattle.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Sheets of cells and plans at the bounds, in a Java machine with little memory: a result or one clear message, and never a trace. */
class SheetBoundsTest {
  private static final Path PLAN = Path.of("examples", "kitchen-renovation", "after.wattle").toAbsolutePath();
  private static final String SCHEDULE = "slot,rating,poles,description\n";
  private static final String PRICES = "item,unit,price,hours\n";
  private static final String READINGS = "test,breaker,at,reading\n";

  @TempDir
  Path folder;

  static Stream<Arguments> sheets() {
    List<String> begin = List.of("begin", "--from", "sheet.csv", "-");
    List<String> prices = List.of("table", "--of", "materials", "--prices", "sheet.csv", PLAN.toString());
    List<String> readings = List.of("test-sheet", "--read", "sheet.csv", PLAN.toString());
    return Stream.of(
        Arguments.of(begin, SCHEDULE + "1,15,1,lights\n".repeat(19_999), "slot 1 is taken"),
        Arguments.of(begin, SCHEDULE + "1,15,1,lights\n".repeat(20_000), "at most 20000 lines are read"),
        Arguments.of(begin, SCHEDULE + "\"" + ("1,".repeat(90) + "\n").repeat(2000) + "\",15,1,x\n", "is not a slot"),
        Arguments.of(begin, SCHEDULE + "1,".repeat(200) + "\n", "at most 200 cells in a line are read"),
        Arguments.of(begin, SCHEDULE + "1,15,1," + "x".repeat(10_000) + "\n", "at most 10000 characters in a line are read"),
        Arguments.of(begin, "slot,rating,description,".repeat(60) + "\n" + ("1,15,x,".repeat(26) + "\n").repeat(5000), "reading stopped"),
        Arguments.of(begin, "x".repeat(4 << 20) + "x", "a sheet of at most 4194304 bytes is read"),
        Arguments.of(prices, PRICES + "x,parsec,one,2\n".repeat(19_999), "are not a figure"),
        Arguments.of(prices, PRICES + "14/2 NM-B,m," + "9".repeat(400) + ",0.1\n", "at most 12 digits"),
        Arguments.of(prices, "price,unit,item\n1\n", "Materials to buy"),
        Arguments.of(prices, PRICES + "x,each,1,2\n".repeat(20_000), "at most 20000 lines are read"),
        Arguments.of(readings, READINGS + IntStream.range(0, 19_999).mapToObj(i -> "service main/x" + i + ",,,0.2\n")
            .collect(Collectors.joining()), "the plan has no measurement"),
        Arguments.of(readings, "x".repeat(5 << 20), "a sheet of at most 4194304 bytes is read"));
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void aSheetAtItsBoundsIsReadOrRefused(List<String> command, String sheet, String said) throws Exception {
    Files.writeString(folder.resolve("sheet.csv"), sheet);
    BoundedProcess.Outcome outcome = BoundedProcess.run(folder, "-Xmx512m", command);
    assertThat(outcome.text()).contains(said).doesNotContain("Exception", "internal error", "out of memory", "\tat java");
    assertThat(outcome.code()).isLessThan(3);
  }

  @Test
  void aPlanThatTakesMoreMemoryThanThereIsIsSaidToDoSo() throws Exception {
    StringBuilder plan = new StringBuilder("plan \"P\"\n");
    for (int i = 0; i < 25_000; i++) {
      plan.append("room r").append(i).append(" area 10 m2 { l: light 10 W }\n");
    }
    Files.writeString(folder.resolve("p.wattle"), plan);
    BoundedProcess.Outcome outcome = BoundedProcess.run(folder, "-Xmx32m", List.of("check", "p.wattle"));
    assertThat(outcome.code()).isEqualTo(2);
    assertThat(outcome.text()).contains("out of memory: the result takes more than the ", "-Xmx4g").doesNotContain("\tat ");
  }
}
