package wattle.begin;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Formatter;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/** Whatever the answers, the plan compiles with no error, holds all that was asked for, and is in order. */
class FirstPlanTest {
  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("first.wattle", text), Path.of("first.wattle"));
  }

  private static String tidy(String text) {
    return Formatter.format(new Source("first.wattle", text)).value();
  }

  @Provide
  Arbitrary<Answers> answers() {
    List<String> codes = new java.util.ArrayList<>(StandardLibrary.packNames());
    codes.remove("common");
    codes.add("");
    Arbitrary<Set<Space>> spaces = Arbitraries.of(Space.class).set().ofMaxSize(Space.values().length);
    Arbitrary<Set<Appliance>> appliances = Arbitraries.of(Appliance.class).set().ofMaxSize(Appliance.values().length);
    return Combinators.combine(
        Arbitraries.strings().ofMaxLength(20), Arbitraries.of(codes), Arbitraries.of(ServiceSize.class),
        Arbitraries.integers().between(1, Answers.MOST_STOREYS), Arbitraries.integers().between(0, Answers.MOST_BEDROOMS),
        Arbitraries.integers().between(0, Answers.MOST_BATHROOMS), spaces, appliances)
        .as((title, code, service, storeys, bedrooms, bathrooms, rooms, list) -> new Answers(title, code, service, "150 m2", storeys,
            bedrooms, bathrooms, rooms, list));
  }

  @Property(tries = 150, edgeCases = EdgeCasesMode.NONE)
  void compilesWithNoErrorAndHoldsWhatWasAskedFor(@ForAll("answers") Answers answers) {
    String text = tidy(FirstPlan.text(answers));
    Compilation plan = compile(text);
    // A service too small for what was asked for is the answer of the person, and the plan tells them so.
    assertThat(plan.findings())
        .as(text)
        .noneMatch(f -> f.severity() == Severity.ERROR && !f.rule().equals("service-below-load"));
    assertThat(tidy(text)).isEqualTo(text);
    assertThat(plan.house().rooms().values().stream().filter(r -> r.kind().equals(java.util.Optional.of("bedroom"))))
        .hasSize(answers.bedrooms());
    assertThat(plan.house().rooms().values().stream().filter(r -> r.kind().equals(java.util.Optional.of("bathroom"))))
        .hasSize(answers.bathrooms());
    answers.spaces().forEach(space -> assertThat(plan.house().rooms()).containsKey(space.word()));
    for (Appliance appliance : answers.appliances()) {
      String kind = appliance.device().replaceFirst(" \\d.*", "");
      assertThat(plan.house().devices().values()).anyMatch(d -> d.kind().name().equals(kind));
    }
  }

  @Test
  void allThereIsGoesIntoOnePanel() {
    Answers all = new Answers(
        "All", "us-2023", ServiceSize.A400, "500 m2", 4, Answers.MOST_BEDROOMS, Answers.MOST_BATHROOMS,
        EnumSet.allOf(Space.class), EnumSet.allOf(Appliance.class));
    // Nine bedrooms have nine smoke alarms on one branch, as they should: advice about it is no fault.
    assertThat(compile(FirstPlan.text(all)).findings()).filteredOn(f -> f.severity() != wattle.finding.Severity.ADVICE).isEmpty();
  }

  @Test
  void aUsualHouse() {
    Answers usual = new Answers(
        "A usual house", "us-2023", ServiceSize.A200, "150 m2", 1, 3, 2, EnumSet.of(Space.LIVING, Space.DINING, Space.LAUNDRY),
        EnumSet.of(Appliance.RANGE, Appliance.DISHWASHER, Appliance.DRYER, Appliance.WATER_HEATER));
    Golden.check(Path.of("src/test/resources/begin/usual-house.wattle"), tidy(FirstPlan.text(usual)));
  }

  @Test
  void legsAreNearlyAlike() {
    Answers usual = new Answers("House", "ca-2021", ServiceSize.A100, "90 m2", 1, 2, 1, EnumSet.of(Space.LIVING),
        EnumSet.of(Appliance.RANGE));
    Compilation plan = compile(FirstPlan.text(usual));
    var loads = wattle.loads.ConnectedLoads.of(plan.house()).panel("P");
    assertThat(loads.difference(plan.house().panels().get("P").system())).isLessThan(1500);
    assertThat(plan.source().text()).contains("NMD90").doesNotContain("NM-B");
  }
}
