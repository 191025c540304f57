package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.read.Reading;
import wattle.read.SourceReader;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.finding.Undecided;
import wattle.model.Branch;
import wattle.model.House;

/**
 * One mistake in a plan hides no fault elsewhere, and brings no other finding than the one that is meant. Every plan of the examples is
 * spoiled by one mistake of each kind, somewhere in it.
 */
class MutationTest {
  /** Rules that find something at everything, so that silence shows. */
  private static final String WITNESSES = Stream
      .of("branch", "device", "box", "room", "breaker", "panel", "service").map(MutationTest::witness).collect(Collectors.joining());

  private static String witness(String kind) {
    String claim = switch (kind) {
      case "branch" -> "some r in x.runs has r.wiring.type is \"?\"";
      case "device" -> "x.part is \"?\"";
      case "box" -> "x.traits includes \"?\"";
      case "room" -> "x.status is \"?\"";
      case "breaker" -> "x.rating is at most 0 A";
      case "panel" -> "x.bus is at most 0 A";
      default -> "x.rating is at most 0 A";
    };
    return "rule witness-" + kind + " \"W\" {\n  for each " + kind + " x\n  for all work\n  require " + claim
        + "\n  otherwise advice \"witness\"\n  at x\n}\n";
  }

  /** A mistake: what is spoiled, and how. */
  private record Mistake(String name, Pattern at, Function<MatchResult, String> spoiled) {
    static Mistake of(String name, String at, String spoiled) {
      return new Mistake(name, Pattern.compile(at, Pattern.MULTILINE), m -> expand(spoiled, m));
    }

    private static String expand(String text, MatchResult m) {
      String made = text;
      for (int i = 0; i <= m.groupCount(); i++) {
        made = made.replace("$" + i, m.group(i) == null ? "" : m.group(i));
      }
      return made;
    }
  }

  private static final List<Mistake> MISTAKES = List.of(
      Mistake.of("a cable that is none", "^(branch [^\\n]* by \\S+ )([A-Z-]+)", "$1NQ-Q"),
      Mistake.of("a size that is none", "^(branch [^\\n]* by )\\d+/", "$1777/"),
      Mistake.of("a kind that is none", "(\\b[a-z]\\w*: )(receptacle|light|junction|range)\\b", "$1contraption"),
      Mistake.of("a trait that is none", "(\\b[a-z]\\w*: (?:receptacle|light)) ", "$1 wonderful "),
      Mistake.of("a load in amperes of what has none", "\\b(\\d+) W\\b", "$1 furlong"),
      Mistake.of("a breaker without a unit", "^( +\\d+(?:\\+\\d+)? +\\d+) A\\b", "$1"),
      Mistake.of("a breaker in volts", "^( +\\d+(?:\\+\\d+)? +\\d+) A\\b", "$1 V"),
      Mistake.of("protection that is none", "^( +\\d+[^\\n]*)arc-fault", "$1arc-falt"),
      Mistake.of("a slot that is none", "^( +)\\d+( +\\d+ A)", "$1399$2"),
      Mistake.of("a length left out", "--\\d+(?:\\.\\d+)? (?:m|ft)--", "-- --"),
      Mistake.of("a length in amperes", "--(\\d+(?:\\.\\d+)?) (?:m|ft)--", "--$1 A--"),
      Mistake.of("a place that is none", "(-- ?[a-z]\\w*\\.[a-z]\\w*)( |$)", "$1zzq$2"),
      Mistake.of("the end of a branch left out", " --\\d+(?:\\.\\d+)? (?:m|ft)-- [a-z]\\w*\\.[a-z]\\w*( *)(\\}?)$", "$1$2"),
      Mistake.of("a line of a branch twice", "^(branch [^\\n]*\\{[^\\n]*\\}) *$", "$1\n$1"),
      Mistake.of("a room of a kind that is none", "^(room \\w+ [^\\n]*)is \\w+", "$1is kichen"),
      Mistake.of("an area without a figure", "floor-area \\S+ \\S+", "floor-area"),
      Mistake.of("a switch for nothing", "\\bswitch for [a-z]\\w*", "switch for zzq"),
      Mistake.of("a stray sign on a slot line", "^( +\\d+(?:\\+\\d+)? +)(\\d+ A)", "$1) $2"),
      Mistake.of("a device line half typed", "(\\b[a-z]\\w*:) (receptacle|light)\\b", "$1"),
      Mistake.of("a branch half typed", "^(branch [a-z]\\w*) by [^\\n{]*\\{", "$1 by {"),
      Mistake.of("a voltage that is none", "120/240 V", "120/777 V"),
      Mistake.of("an electrode's wire that is none", "(earth \\S+ by )\\d+ ", "$1777 "),
      Mistake.of("a file that is none", "use \"(\\w+)", "use \"no-$1"));

  private static Stream<Path> plans() throws IOException {
    try (Stream<Path> all = Files.walk(Path.of("examples"))) {
      return all.filter(p -> p.toString().endsWith(".wattle") && !p.toString().contains("broken")).sorted().toList().stream();
    }
  }

  private static Compilation compile(String text, Path path) {
    return new Compiler(SourceReader.FROM_DISK, READING).compile(new Source(path.toString(), text + "\n" + WITNESSES), path);
  }

  private static final Reading READING = new Reading.Afresh();

  private static boolean isOfStructure(Finding finding, Compilation plan) {
    return !plan.library().rules().containsKey(finding.rule()) && !Compiler.COMPUTED.contains(finding.rule())
        && !Set.of("expectation-failed", "silence-idle", "trial-empty", "panel-overfull").contains(finding.rule());
  }

  private static Undecided.Question key(Finding finding) {
    return new Undecided.Question(finding.rule(), finding.subject());
  }

  private static Map<Undecided.Question, Finding> judged(Compilation plan) {
    Map<Undecided.Question, Finding> judged = new java.util.LinkedHashMap<>();
    plan.findings().stream().filter(f -> !isOfStructure(f, plan)).forEach(f -> judged.putIfAbsent(key(f), f));
    return judged;
  }

  @TestFactory
  Stream<DynamicTest> oneMistakeHidesNothingAndBringsNothingElse() throws IOException {
    return plans().flatMap(path -> {
      String text = read(path);
      Compilation sound = compile(text, path);
      if (sound.findings().stream().anyMatch(f -> f.severity() == Severity.ERROR && isOfStructure(f, sound)
          && !f.rule().startsWith("shared-neutral"))) {
        return Stream.of(); // a file of another plan
      }
      // Each mistake in a third of the plans, each plan with a third of the mistakes; -Dmutations=all tries all.
      boolean all = "all".equals(System.getProperty("mutations"));
      return MISTAKES.stream().filter(m -> all || Math.floorMod((path + m.name).hashCode(), 3) == 0)
          .filter(m -> m.at.matcher(text).find())
          .map(m -> DynamicTest.dynamicTest(path + ": " + m.name, () -> tryOut(sound, text, path, m)));
    });
  }

  private static String read(Path path) {
    try {
      return Files.readString(path);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static void tryOut(Compilation sound, String text, Path path, Mistake mistake) {
    List<MatchResult> places = mistake.at.matcher(text).results().toList();
    // Somewhere in the plan, the same place in every run.
    MatchResult place = places.get(Math.floorMod((path + mistake.name).hashCode(), places.size()));
    String spoiled = text.substring(0, place.start()) + mistake.spoiled.apply(place) + text.substring(place.end());
    Compilation plan = compile(spoiled, path);
    String where = mistake.name + " at «" + place.group().strip() + "»";
    List<String> before = structure(sound);
    List<String> structure = new ArrayList<>(structure(plan));
    before.forEach(structure::remove);
    if (structure.isEmpty()) {
      return; // what was made is another plan, and no mistake
    }
    Map<Undecided.Question, Finding> was = judged(sound);
    Map<Undecided.Question, Finding> is = judged(plan);
    List<String> brought = is.keySet().stream().filter(k -> !was.containsKey(k) && !isMoved(k)).map(k -> k + ": " + is.get(k).headline())
        .toList();
    assertThat(brought).as(where + " brings nothing but " + structure).isEmpty();
    Set<String> near = near(sound.house(), text, place);
    List<String> hidden = new ArrayList<>();
    was.forEach((k, f) -> {
      boolean gone = !is.containsKey(k) && is.keySet().stream().noneMatch(i -> i.rule().equals(k.rule()) && isMoved(i));
      boolean said = plan.undecided().has(f);
      boolean far = k.subject().isPresent() && !near.contains(k.subject().get()) && isLocal(mistake);
      if (gone && (!said || far)) {
        hidden.add(k + (said ? " far from the mistake" : " without being in doubt"));
      }
    });
    assertThat(hidden).as(where + " hides nothing; it brings " + structure).isEmpty();
  }

  /** A breaker in a slot that is none has another name there, and nothing else is new about it. */
  private static boolean isMoved(Undecided.Question key) {
    return key.subject().filter(s -> s.contains("399")).isPresent();
  }

  private static boolean isLocal(Mistake mistake) {
    return !mistake.name.contains("file") && !mistake.name.contains("voltage");
  }

  private static List<String> structure(Compilation plan) {
    return plan.findings().stream().filter(f -> isOfStructure(f, plan)).map(f -> f.rule() + ": " + f.headline()).toList();
  }

  /** Names of what hangs together with anything that the spoiled lines name: its branch, and all that is on that. */
  private static Set<String> near(House house, String text, MatchResult place) {
    int start = text.lastIndexOf('\n', place.start()) + 1;
    int end = text.indexOf('\n', place.end());
    Set<String> words = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}_-]*").matcher(text.substring(start, end < 0 ? text.length() : end))
        .results()
        .map(MatchResult::group).collect(Collectors.toCollection(HashSet::new));
    // The blocks around the line are named by their headings.
    Matcher heading = Pattern.compile("^(?:branch|room|panel|service) (\\w+)", Pattern.MULTILINE).matcher(text.substring(0, place.end()));
    String last = "";
    while (heading.find()) {
      last = heading.group(1);
    }
    words.add(last);
    Set<String> near = new HashSet<>(words);
    for (Branch branch : house.branches().values()) {
      List<String> names = new ArrayList<>(List.of(branch.name()));
      branch.points().forEach(p -> p.box().ifPresent(b -> {
        names.add(b);
        names.addAll(house.boxes().get(b).devices());
        names.add(house.boxes().get(b).room());
      }));
      branch.hots().forEach(h -> {
        names.add(h.breaker().toString());
        names.add(h.breaker().panel());
      });
      if (names.stream().anyMatch(n -> words.contains(n) || words.contains(n.substring(n.lastIndexOf('.') + 1)))) {
        near.addAll(names);
      }
    }
    house.panels().values().stream().filter(p -> words.contains(p.name()))
        .forEach(p -> p.breakers().forEach(b -> near.add(b.id().toString())));
    house.boxes().values().stream().filter(b -> words.contains(b.room())).forEach(b -> {
      near.add(b.name());
      near.addAll(b.devices());
    });
    return near;
  }

  /** An unknown cable here and a breaker above its conductor there: both are reported. */
  @Test
  void aMistakeHereAndAFaultThere() {
    String text = """
        plan "Two things wrong"
        use code us-2023
        service main 120/240 V 200 A { source transformer 25 kVA 2 %   run 20 m of 4/0 Al triplex   earth water-pipe by 4 Cu }
        panel P from main { bus 200 A   slots 40   bonded
          main breaker 200 A 22 kA
          1  30 A  front
          2  20 A  arc-fault other
        }
        branch front by 14/2 NM-B { P --3 m-- bed.r }
        branch other by 12/2 NN-B { P --3 m-- bed.x --3 m-- bath.r }
        room bed { r: receptacle   x: receptacle tamper-resistant }
        room bath { r: receptacle }
        """;
    Map<String, List<String>> found = new TreeMap<>(
        new Compiler(SourceReader.FROM_DISK).compile(new Source("two.wattle", text), Path.of("two.wattle"))
            .findings().stream().collect(Collectors.groupingBy(Finding::rule, Collectors.mapping(Finding::headline, Collectors.toList()))));
    assertThat(found).containsEntry("cable-unknown", List.of("no type of cable is called 'NN-B'"))
        .containsEntry("breaker-above-conductor", List.of("circuit 'front' is too small for its breaker: 14 AWG copper on 30 A"));
    // What hangs on the unknown cable is in doubt: nobody says that it is unprotected, or thin, or without a ground.
    assertThat(found.keySet()).doesNotContain("ground-fault-missing", "arc-fault-missing", "bath-circuit-small", "device-unfed");
  }
}
