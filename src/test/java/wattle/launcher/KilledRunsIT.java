package wattle.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Commands that write are killed at random moments: a file is what it was or what the command makes of it, and what a killed run left goes
 * with a later one. Every fourth command is killed once; all of them, so many times each, with {@code -Dkills=48}.
 */
class KilledRunsIT {
  private static final int KILLS = Integer.getInteger("kills", 1);
  private static final int STEP = System.getProperty("kills") == null ? 4 : 1;
  private static final Path COURT = Path.of("examples", "alder-court", "house.wattle");
  private static final Path UNEVEN = Path.of("examples", "kitchen-renovation", "before.wattle");
  private static final String SCHEDULE = "slot,rating,poles,description\n1,15,1,Hall lights\n2,20,1,Kitchen counter\n3,30,2,Dryer\n";
  private static final String PRICES = "item,unit,price,hours\n14/2 NM-B,m,1.10,0.05\n";

  @TempDir
  Path folder;

  /**
   * A command in a folder with plans.
   *
   * @param arguments of it, run in that folder
   * @param before the files that it writes, by name, with what each holds before; empty where there is none
   */
  private record Killed(List<String> arguments, Map<String, String> before) {
    @Override
    public String toString() {
      return String.join(" ", arguments);
    }
  }

  static Stream<Killed> commands() throws IOException {
    String court = Files.readString(COURT);
    String rooms = Files.readString(COURT.resolveSibling("rooms.wattle"));
    String untidy = court.replace("  ", "      ");
    String misspelled = court.replaceFirst("arc-fault", "arc-falt");
    List<Killed> all = List.of(
        new Killed(List.of("tidy", "plan.wattle"), Map.of("plan.wattle", untidy)),
        new Killed(List.of("tidy", "."), Map.of("plan.wattle", untidy, "rooms.wattle", rooms.replace("  ", "     "))),
        new Killed(List.of("mend", "--write", "plan.wattle"), Map.of("plan.wattle", misspelled)),
        new Killed(List.of("balance", "--write", "uneven.wattle"), Map.of("uneven.wattle", Files.readString(UNEVEN))),
        making("draw --view one-line --out one-line.svg plan.wattle", "one-line.svg"),
        making("draw --view panel --out panel.png plan.wattle", "panel.png"),
        making("report plan.wattle --out .", "report.html"),
        making("report plan.wattle --pdf --out .", "report.html", "report.pdf"),
        making("report . --out all", "all/plan/report.html", "all/uneven/report.html"),
        making("table --of materials --prices prices.csv --out materials.csv plan.wattle", "materials.csv"),
        making("export plan.wattle --out plan.json", "plan.json"),
        making("permit plan.wattle --out permit.pdf", "permit.pdf"),
        making("test-sheet plan.wattle --out tests.csv", "tests.csv"),
        making("questions plan.wattle --out questions.pdf", "questions.pdf"),
        making("directory plan.wattle --out door.pdf", "door.pdf"),
        making("lockout plan.wattle kitchen.c1 --out lockout.pdf", "lockout.pdf"),
        making("compare uneven.wattle plan.wattle --out changes.pdf", "changes.pdf"),
        making("compare uneven.wattle plan.wattle --out changes.md --picture changes.svg", "changes.md", "changes.svg"),
        making("trial plan.wattle breakfast --out trial.csv --picture trial.svg", "trial.csv", "trial.svg"),
        making("begin --from schedule.csv --out begun.wattle", "begun.wattle"),
        making("begin --bedrooms 2 --out first.wattle", "first.wattle"));
    return IntStream.range(0, all.size()).filter(i -> i % STEP == 1 % STEP).mapToObj(all::get);
  }

  private static Killed making(String command, String... files) {
    return new Killed(List.of(command.split(" ")), Stream.of(files).collect(Collectors.toMap(f -> f, f -> "")));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void aFileIsWholeWheneverItsWriterIsKilled(Killed command) throws Exception {
    Map<String, String> before = prepare(command);
    Instant begun = Instant.now();
    assertThat(start(command).waitFor(120, TimeUnit.SECONDS)).isTrue();
    Duration took = Duration.between(begun, Instant.now());
    Map<String, String> after = held(command);
    command.before.keySet().forEach(f -> assertThat(after.get(f)).as(f).isNotEmpty().isNotEqualTo(before.get(f)));

    Random random = new Random(7);
    int untouched = 0;
    for (int i = 0; i < KILLS; i++) {
      prepare(command);
      Process run = start(command);
      run.waitFor((long) (took.toMillis() * (0.3 + random.nextDouble())), TimeUnit.MILLISECONDS);
      run.destroyForcibly().waitFor();
      Map<String, String> now = held(command);
      for (String file : now.keySet()) {
        assertThat(now.get(file)).as("kill %s leaves one or the other in %s", i, file).isIn(before.get(file), after.get(file));
      }
      untouched += now.equals(before) ? 1 : 0;
    }
    System.out.println(command + ": " + KILLS + " kills, " + untouched + " before a file was in its place");

    for (Path left : leftovers()) {
      Files.setLastModifiedTime(left, FileTime.from(Instant.now().minus(Duration.ofHours(2))));
    }
    prepare(command);
    assertThat(start(command).waitFor(120, TimeUnit.SECONDS)).isTrue();
    assertThat(leftovers()).isEmpty();
    assertThat(held(command)).isEqualTo(after);
  }

  /** Puts the plans and what the command changes back; what its files hold then. */
  private Map<String, String> prepare(Killed command) throws IOException {
    Files.copy(COURT, folder.resolve("plan.wattle"), StandardCopyOption.REPLACE_EXISTING);
    for (String used : List.of("rooms.wattle", "garage.wattle")) {
      Files.copy(COURT.resolveSibling(used), folder.resolve(used), StandardCopyOption.REPLACE_EXISTING);
    }
    Files.copy(UNEVEN, folder.resolve("uneven.wattle"), StandardCopyOption.REPLACE_EXISTING);
    Files.writeString(folder.resolve("schedule.csv"), SCHEDULE);
    Files.writeString(folder.resolve("prices.csv"), PRICES);
    for (Map.Entry<String, String> file : command.before.entrySet()) {
      if (file.getValue().isEmpty()) {
        Files.deleteIfExists(folder.resolve(file.getKey()));
      } else {
        Files.writeString(folder.resolve(file.getKey()), file.getValue());
      }
    }
    return held(command);
  }

  /** What the files of a command hold, byte for byte; nothing of one that is not there. */
  private Map<String, String> held(Killed command) throws IOException {
    Map<String, String> held = new TreeMap<>();
    for (String name : command.before.keySet()) {
      Path file = folder.resolve(name);
      held.put(name, Files.exists(file) ? new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1) : "");
    }
    return held;
  }

  private Process start(Killed command) throws IOException {
    List<String> line = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:TieredStopAtLevel=1", "-jar", Path.of("target", "wattle", "wattle.jar").toAbsolutePath().toString()));
    line.addAll(command.arguments);
    return new ProcessBuilder(line).directory(folder.toFile()).redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD).start();
  }

  private List<Path> leftovers() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(f -> f.getFileName().toString().endsWith(".part")).toList();
    }
  }
}
