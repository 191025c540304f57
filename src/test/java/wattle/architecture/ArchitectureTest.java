package wattle.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.ArchConfiguration;
import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import wattle.acceptance.Measurements;
import wattle.balance.Balance;
import wattle.boxes.BoxFill;
import wattle.conductors.Conductors;
import wattle.faults.Faults;
import wattle.faults.TimeCurrent;
import wattle.loads.ConnectedLoads;
import wattle.lockout.Lockout;
import wattle.materials.Materials;
import wattle.trials.SolvedTrials;
import wattle.trials.Trials;
import wattle.trials.VoltageProfile;
import wattle.trials.WorstCases;
import wattle.worksheet.Additions;
import wattle.worksheet.HouseWorksheets;

/**
 * Holds every arrow between packages against {@code src/test/resources/architecture/arrows.txt}: one that is not listed is a
 * failure, and so is one that is listed and gone. A package may know only packages on lines above its own, so there is no circle.
 */
class ArchitectureTest {
  private static final Path LIST = Path.of("src/test/resources/architecture/arrows.txt");

  private static final JavaClasses CLASSES = classes();

  private static JavaClasses classes() {
    // Nothing is asked about classes of the platform and of libraries; finding and reading them took most of two minutes.
    ArchConfiguration.get().setResolveMissingDependenciesFromClassPath(false);
    return new ClassFileImporter()
        .withImportOption(new ImportOption.DoNotIncludeTests())
        // Graphviz as JVM classes: two megabytes that a compiler made, and that know nothing of ours.
        .withImportOption(location -> !location.contains("/GraphvizModuleMachine"))
        .importPackages("wattle");
  }

  /** Of a class: {@code bind}; within {@code emit} its floor and room, {@code emit.sheet.trial}. */
  private static String room(JavaClass type) {
    String[] parts = type.getPackageName().split("\\.");
    if (parts.length < 2) {
      return "";
    }
    return parts[1].equals("emit") ? type.getPackageName().substring("wattle.".length()) : parts[1];
  }

  private static DescribedPredicate<JavaClass> in(String room) {
    return DescribedPredicate.describe("in " + room, type -> room(type).equals(room));
  }

  /** What somebody outside {@code emit} sees of it: its floor. */
  private static String seenFrom(String room, String target) {
    boolean within = room.startsWith("emit.") || !target.startsWith("emit.");
    return within ? target : target.substring(0, target.indexOf('.', "emit.".length()));
  }

  /** Arrows with one dependency as their proof. */
  private static Map<String, Map<String, String>> found() {
    Map<String, Map<String, String>> arrows = new TreeMap<>();
    for (JavaClass type : CLASSES) {
      String from = room(type);
      Map<String, String> known = arrows.computeIfAbsent(from, f -> new TreeMap<>());
      for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
        JavaClass target = dependency.getTargetClass().getBaseComponentType();
        if (target.getPackageName().startsWith("wattle.") && !room(target).equals(from)) {
          known.putIfAbsent(seenFrom(from, room(target)), dependency.getDescription());
        }
      }
    }
    return arrows;
  }

  private static Map<String, Set<String>> listed() throws IOException {
    Map<String, Set<String>> arrows = new LinkedHashMap<>();
    for (String line : Files.readAllLines(LIST)) {
      if (!line.isBlank() && !line.startsWith("#")) {
        String[] sides = line.split(":", 2);
        arrows.put(sides[0].strip(), new TreeSet<>(sides[1].isBlank() ? List.of() : List.of(sides[1].strip().split("\\s+"))));
      }
    }
    return arrows;
  }

  private static void write(Map<String, Map<String, String>> found) throws IOException {
    List<String> lines = new ArrayList<>();
    Set<String> left = new TreeSet<>(found.keySet());
    for (String line : Files.readAllLines(LIST)) {
      String room = line.split(":", 2)[0].strip();
      if (line.isBlank() || line.startsWith("#")) {
        lines.add(line);
      } else if (left.remove(room)) {
        lines.add((room + ": " + String.join(" ", found.get(room).keySet())).strip());
      }
    }
    left.forEach(room -> lines.add((room + ": " + String.join(" ", found.get(room).keySet())).strip()));
    Files.write(LIST, lines);
  }

  @Test
  void everyArrowIsListed() throws IOException {
    Map<String, Map<String, String>> found = found();
    Map<String, Set<String>> listed = listed();
    assertThat(CLASSES).as("classes seen").hasSizeGreaterThan(900);
    List<String> wrong = new ArrayList<>();
    found.forEach((room, known) -> {
      Set<String> may = listed.getOrDefault(room, Set.of());
      known.forEach((target, proof) -> {
        if (!may.contains(target)) {
          wrong.add(room + " may not know " + target + ": " + proof);
        }
      });
      may.stream().filter(m -> !known.containsKey(m)).forEach(m -> wrong.add(room + " is listed as knowing " + m + ", and does not"));
    });
    found.keySet().stream().filter(r -> !listed.containsKey(r)).forEach(r -> wrong.add("package " + r + " is not listed: say where it"
        + " stands"));
    listed.keySet().stream().filter(r -> !found.containsKey(r)).forEach(r -> wrong.add("package " + r + " is listed and gone"));
    if (!wrong.isEmpty() && "write".equals(System.getProperty("golden"))) {
      write(found);
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void arrowsPointUp() throws IOException {
    Set<String> above = new TreeSet<>();
    listed().forEach((room, known) -> {
      assertThat(above).as("on lines above " + room).containsAll(known);
      above.add(room);
      if (room.startsWith("emit.")) {
        above.add(seenFrom("", room));
      }
    });
  }

  /** What costs work is made in one place, for all who ask; that of another plan or moment is asked of the same value. */
  @Test
  void figuresAreWorkedOutInOneHome() {
    Set<Class<?>> figures = Set.of(Conductors.class, ConnectedLoads.class, BoxFill.class, Faults.class, HouseWorksheets.class,
        Materials.class, Measurements.class, SolvedTrials.class, WorstCases.class, TimeCurrent.class, VoltageProfile.class, Lockout.class,
        Balance.class, Additions.class);
    noClasses()
        .that(DescribedPredicate.not(in("figures")))
        .should()
        .callCodeUnitWhere(DescribedPredicate.describe("that makes the figures of a house",
            call -> isMaker(call.getTarget().getName()) && figures.stream().anyMatch(call.getTargetOwner()::isEquivalentTo)
                && !call.getOriginOwner().getPackageName().equals(call.getTargetOwner().getPackageName())))
        .check(CLASSES);
    Set<String> made = CLASSES.that(in("figures")).stream().flatMap(c -> c.getCodeUnitCallsFromSelf().stream())
        .filter(c -> isMaker(c.getTarget().getName())).map(c -> c.getTargetOwner().getName()).collect(Collectors.toSet());
    assertThat(made).containsAll(figures.stream().map(Class::getName).toList());
    noClasses()
        .that(DescribedPredicate.not(in("trials")))
        .should()
        .accessClassesThat()
        .areAssignableTo(Trials.class)
        .check(CLASSES);
  }

  private static boolean isMaker(String name) {
    return name.equals("of") || name.equals("<init>");
  }

  @Test
  void onlyTheCommandLineSpeaksToTheProcess() {
    noClasses()
        .that(DescribedPredicate.not(in("cli")))
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .accessField(System.class, "in")
        .orShould()
        .callMethod(System.class, "exit", int.class)
        .check(CLASSES);
  }
}
