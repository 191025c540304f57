package wattle.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
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

/** The arrows between the phases point down. A package that is not listed here is a failure: say where it stands. */
class ArchitectureTest {
  private static final JavaClasses CLASSES = new ClassFileImporter()
      .withImportOption(new ImportOption.DoNotIncludeTests())
      // Graphviz as JVM classes: two megabytes that a compiler made, and that know nothing of ours.
      .withImportOption(location -> !location.contains("/GraphvizModuleMachine"))
      .importPackages("wattle");

  /** From the ground up; a phase may know those named before it in its own line's list. */
  private record Phase(String name, Set<String> knows) {}

  private static final Set<String> COMPUTATIONS = Set.of("conductors", "network", "loads", "faults", "boxes", "lockout", "balance",
      "worksheet", "trials", "materials", "acceptance");

  private static final List<Phase> PHASES = phases();

  private static List<Phase> phases() {
    Set<String> ground = Set.of("finding", "quantity");
    Set<String> model = join(ground, "model", "derivation");
    Set<String> library = join(model, "syntax", "evaluate", "library");
    Set<String> results = join(library, join(COMPUTATIONS, "memo").toArray(String[]::new));
    Set<String> shown = join(model, "library", "figures", "conductors", "loads", "faults", "boxes", "lockout", "balance", "worksheet",
        "trials", "materials", "acceptance");
    return List.of(
        new Phase("finding", Set.of()),
        new Phase("memo", Set.of()),
        new Phase("quantity", Set.of()),
        new Phase("derivation", ground),
        new Phase("syntax", Set.of("finding")),
        new Phase("evaluate", Set.of("finding", "quantity", "syntax")),
        new Phase("model", ground),
        new Phase("library", join(model, "syntax", "evaluate")),
        new Phase("pattern", join(ground, "syntax", "evaluate")),
        new Phase("read", join(ground, "syntax", "library")),
        new Phase("bind", join(library, "pattern")),
        new Phase("conductors", library),
        new Phase("boxes", results),
        new Phase("loads", results),
        new Phase("lockout", results),
        new Phase("balance", results),
        new Phase("worksheet", results),
        new Phase("network", results),
        new Phase("faults", results),
        new Phase("trials", results),
        new Phase("materials", results),
        new Phase("acceptance", results),
        new Phase("figures", results),
        // Of the network it takes the complex numbers that currents are added as.
        new Phase("rules", join(library, "memo", "conductors", "loads", "boxes", "figures", "network", "worksheet")),
        new Phase("compare", join(model, "worksheet", "loads", "faults", "trials", "materials", "figures")),
        new Phase("begin", Set.of()),
        new Phase("edit", join(ground, "syntax")),
        // What judges beside the rules: expectations, faults, service loads, the room in a panel.
        new Phase("compiler",
            join(library, "memo", "read", "pattern", "bind", "figures", "rules", "trials", "faults", "worksheet", "balance")),
        // It shows results of every computation but the network, which only trials see.
        new Phase("emit", join(shown, "syntax", "rules", "compare", "compiler")),
        new Phase("server",
            join(library, "memo", "conductors", "loads", "trials", "rules", "compare", "figures", "compiler", "edit", "read")),
        new Phase("live", join(model, "syntax", "trials", "figures", "compiler", "emit", "read")),
        new Phase("cli", join(shown, "syntax", "rules", "compare", "compiler", "emit", "edit", "read", "begin", "server", "live")));
  }

  private static Set<String> join(Set<String> base, String... more) {
    Set<String> joined = new TreeSet<>(base);
    joined.addAll(List.of(more));
    return joined;
  }

  private static String phaseOf(JavaClass type) {
    String[] parts = type.getPackageName().split("\\.");
    return parts.length > 1 ? parts[1] : "";
  }

  private static DescribedPredicate<JavaClass> inPhase(String phase) {
    return DescribedPredicate.describe(
        "in " + phase, type -> type.getPackageName().startsWith("wattle") && phaseOf(type).equals(phase));
  }

  @TestFactory
  Stream<DynamicTest> aPhaseKnowsOnlyWhatIsBeneathIt() {
    return PHASES.stream()
        .map(
            phase -> DynamicTest.dynamicTest(
                phase.name,
                () -> noClasses()
                    .that(inPhase(phase.name))
                    .should()
                    .dependOnClassesThat(
                        DescribedPredicate.describe(
                            "of a phase that " + phase.name + " may not know",
                            type -> type.getPackageName().startsWith("wattle.")
                                && !phaseOf(type).equals(phase.name)
                                && !phase.knows.contains(phaseOf(type))))
                    .allowEmptyShould(true)
                    .check(CLASSES)));
  }

  @Test
  void everyPackageHasItsPlace() {
    Set<String> listed = new TreeSet<>();
    PHASES.forEach(p -> listed.add(p.name));
    Set<String> found = new TreeSet<>();
    CLASSES.forEach(c -> found.add(phaseOf(c)));
    assertThat(listed).containsAll(found);
    assertThat(CLASSES).as("classes seen").hasSizeGreaterThan(150);
  }

  @Test
  void thereAreNoCircles() {
    SlicesRuleDefinition.slices().matching("wattle.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  /** What costs work is made in one place, for all who ask; that of another plan or moment is asked of the same value. */
  @Test
  void figuresAreWorkedOutInOneHome() {
    Set<Class<?>> figures = Set.of(Conductors.class, ConnectedLoads.class, BoxFill.class, Faults.class, HouseWorksheets.class,
        Materials.class, Measurements.class, SolvedTrials.class, WorstCases.class, TimeCurrent.class, VoltageProfile.class, Lockout.class,
        Balance.class, Additions.class);
    noClasses()
        .that(DescribedPredicate.not(inPhase("figures")))
        .should()
        .callCodeUnitWhere(DescribedPredicate.describe("that makes the figures of a house",
            call -> isMaker(call.getTarget().getName()) && figures.stream().anyMatch(call.getTargetOwner()::isEquivalentTo)
                && !call.getOriginOwner().getPackageName().equals(call.getTargetOwner().getPackageName())))
        .check(CLASSES);
    // Calls within lambdas that the build made plain are not seen, so that only some of them show here.
    Set<String> made = CLASSES.that(inPhase("figures")).stream().flatMap(c -> c.getCodeUnitCallsFromSelf().stream())
        .filter(c -> isMaker(c.getTarget().getName())).map(c -> c.getTargetOwner().getName()).collect(Collectors.toSet());
    assertThat(made).containsAnyElementsOf(figures.stream().map(Class::getName).toList());
    noClasses()
        .that(DescribedPredicate.not(inPhase("trials")))
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
        .that(DescribedPredicate.not(inPhase("cli")))
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
