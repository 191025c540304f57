package wattle.begin;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Formatter;
import wattle.finding.Finding;
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
    Arbitrary<Supply> supplies = Combinators.combine(
        Arbitraries.of(SupplyChoice.class), Arbitraries.of(Work.class), Arbitraries.of(1, 1, 1, 2, 3)).as(Supply::new);
    Arbitrary<Set<Space>> spaces = Arbitraries.of(Space.class).set().ofMaxSize(Space.values().length);
    Arbitrary<Set<Appliance>> appliances = Arbitraries.of(Appliance.class).set().ofMaxSize(Appliance.values().length);
    return Combinators.combine(
        Arbitraries.strings().ofMaxLength(20), Arbitraries.of(codes), supplies,
        Arbitraries.integers().between(0, ServiceSize.values().length),
        Arbitraries.integers().between(1, Answers.MOST_STOREYS), Arbitraries.integers().between(0, Answers.MOST_BEDROOMS),
        Arbitraries.integers().between(0, Answers.MOST_BATHROOMS), Combinators.combine(spaces, appliances).as(Things::new))
        .as((title, code, supply, size, storeys, bedrooms, bathrooms, things) -> new Answers(title, supply.code(code), supply.system,
            supply.work, supply.dwellings, supply.service(size), "150 m2", storeys, bedrooms, bathrooms, things.spaces,
            things.appliances));
  }

  private record Things(Set<Space> spaces, Set<Appliance> appliances) {}

  private record Supply(SupplyChoice system, Work work, int dwellings) {
    /** No pack covers 230 V. */
    String code(String pack) {
      return system == SupplyChoice.SINGLE_230 ? "" : pack;
    }

    ServiceSize service(int which) {
      List<ServiceSize> sizes = ServiceSize.of(system, dwellings, work);
      return sizes.get(which % sizes.size());
    }
  }

  private static Answers house(
      String title, String code, ServiceSize service, String area, int storeys, int bedrooms, int bathrooms, Set<Space> spaces,
      Set<Appliance> appliances) {
    return new Answers(title, code, SupplyChoice.SPLIT_PHASE, Work.NEW, 1, service, area, storeys, bedrooms, bathrooms, spaces, appliances);
  }

  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  void compilesWithNoErrorAndHoldsWhatWasAskedFor(@ForAll("answers") Answers answers) {
    String text = tidy(FirstPlan.text(answers));
    Compilation plan = compile(text);
    // A service too small for what was asked for is the answer of the person, and the plan tells them so.
    assertThat(plan.findings())
        .as(text)
        .noneMatch(f -> f.severity() == Severity.ERROR && !f.rule().equals("service-below-load"));
    assertThat(tidy(text)).isEqualTo(text);
    assertThat(plan.house().rooms().values().stream().filter(r -> r.kind().equals(java.util.Optional.of("bedroom"))))
        .hasSize(answers.bedrooms() * answers.dwellings());
    assertThat(plan.house().rooms().values().stream().filter(r -> r.kind().equals(java.util.Optional.of("bathroom"))))
        .hasSize(answers.bathrooms() * answers.dwellings());
    assertThat(plan.house().dwellings()).hasSize(answers.dwellings());
    String of = answers.dwellings() == 1 ? "" : answers.dwellings() == 2 ? "unit2." : "flat2.";
    answers.spaces().forEach(space -> assertThat(plan.house().rooms()).containsKey(of + space.word()));
    for (Appliance appliance : answers.appliances()) {
      String kind = appliance.device().replaceFirst(" \\d.*", "");
      assertThat(plan.house().devices().values()).anyMatch(d -> d.kind().name().equals(kind));
    }
  }

  @Test
  void allThereIsGoesIntoOnePanel() {
    Answers all = house(
        "All", "us-2023", ServiceSize.A400, "500 m2", 4, Answers.MOST_BEDROOMS, Answers.MOST_BATHROOMS,
        EnumSet.allOf(Space.class), EnumSet.allOf(Appliance.class));
    // Nine bedrooms have nine smoke alarms on one branch, as they should: advice about it is no fault.
    assertThat(compile(FirstPlan.text(all)).findings()).filteredOn(f -> f.severity() != wattle.finding.Severity.ADVICE).isEmpty();
  }

  @Test
  void aUsualHouse() {
    Answers usual = house(
        "A usual house", "us-2023", ServiceSize.A200, "150 m2", 1, 3, 2, EnumSet.of(Space.LIVING, Space.DINING, Space.LAUNDRY),
        EnumSet.of(Appliance.RANGE, Appliance.DISHWASHER, Appliance.DRYER, Appliance.WATER_HEATER));
    Golden.check(Path.of("src/test/resources/begin/usual-house.wattle"), tidy(FirstPlan.text(usual)));
  }

  private static Answers small(SupplyChoice system, Work work, int dwellings, ServiceSize service) {
    return new Answers(
        "Small", system == SupplyChoice.SINGLE_230 ? "" : "us-2023", system, work, dwellings, service, "60 m2", 1, 1, 1,
        EnumSet.of(Space.LIVING), EnumSet.of(Appliance.RANGE, Appliance.WATER_HEATER));
  }

  static Stream<Arguments> supplies() {
    return Stream.of(SupplyChoice.values())
        .flatMap(s -> Stream.of(Work.values()).flatMap(w -> Stream.of(1, 3).map(n -> Arguments.of(s, w, n))));
  }

  /** With the conductors that the plan names, and a source, there is neither an error nor a warning, but for a service too small. */
  @ParameterizedTest
  @MethodSource("supplies")
  void theConductorsThatItNamesSuitEachService(SupplyChoice system, Work work, int dwellings) {
    for (ServiceSize service : ServiceSize.of(system, dwellings, work)) {
      String text = tidy(FirstPlan.text(small(system, work, dwellings, service)));
      Matcher run = Pattern.compile("run 20 m of (.*)\\.\n").matcher(text);
      assertThat(run.find()).as(text).isTrue();
      String whole = text.replaceFirst("(service main [^{]*\\{\n)", "$1  source available 9 kA\n  run 20 m of " + run.group(1) + "\n")
          .replaceAll(" by (\\S+ in EMT with|[0-9]\\S* mm2 Cu TPS)(.* \\{\n +bus)", " by 9 m of $1$2");
      List<Finding> findings = compile(whole).findings();
      if (findings.stream().noneMatch(f -> f.rule().equals("service-below-load"))) {
        assertThat(findings).as(whole).noneMatch(f -> f.severity() != Severity.ADVICE);
      }
    }
  }

  /** Twenty-one ways of two slots fill one column of 84 slots; on three phases the flats are spread over the legs. */
  @ParameterizedTest
  @EnumSource(SupplyChoice.class)
  void fortyDwellingsAreWrittenOnceAndSpreadOverTheLegs(SupplyChoice system) {
    ServiceSize service = system == SupplyChoice.SINGLE_230 ? ServiceSize.A400 : ServiceSize.A2000;
    String text = tidy(FirstPlan.text(small(system, Work.NEW, Answers.MOST_DWELLINGS, service)));
    Compilation plan = compile(text);
    assertThat(plan.findings()).as(text).noneMatch(f -> f.severity() == Severity.ERROR);
    assertThat(plan.house().dwellings()).hasSize(40);
    assertThat(text.lines().count()).isLessThan(150);
    assertThat(text.split("branch counter1")).hasSize(2);
    Map<String, Long> flats = plan.house().panels().values().stream().filter(p -> p.name().startsWith("flat"))
        .collect(Collectors.groupingBy(p -> p.legs().toString(), Collectors.counting()));
    assertThat(flats.values()).as(flats.toString()).hasSize(system == SupplyChoice.THREE_PHASE ? 3 : 1)
        .allMatch(n -> n >= 40 / flats.size());
  }

  @Test
  void existingWorkBehindFusesHasNoGroundAndSaysTheLegOfEachWay() {
    String text = tidy(FirstPlan.text(small(SupplyChoice.SPLIT_PHASE, Work.FUSES, 1, ServiceSize.A60)));
    assertThat(text).contains("main 120/240 V 60 A existing", "main fuse 60 A", "NM without ground", "ungrounded", "fuse leg A+B")
        .doesNotContain("arc-fault", "ground-fault", "two-pole", "breaker");
  }

  @Test
  void betweenTwoHotsOfAWyeTheRatingIsStated() {
    for (SupplyChoice wye : List.of(SupplyChoice.TWO_LEGS_OF_WYE, SupplyChoice.THREE_PHASE)) {
      assertThat(FirstPlan.text(small(wye, Work.NEW, 1, ServiceSize.A200))).contains("range 12 kW 208 V", "water heater 4.5 kW 208 V");
    }
    assertThat(FirstPlan.text(small(SupplyChoice.SPLIT_PHASE, Work.NEW, 1, ServiceSize.A200))).doesNotContain("208");
  }

  @Test
  void aBlock() {
    Golden.check(
        Path.of("src/test/resources/begin/block.wattle"),
        tidy(FirstPlan.text(small(SupplyChoice.THREE_PHASE, Work.NEW, 24, ServiceSize.A1000))));
  }

  /**
   * CSA C22.1-21 26-656 and 26-658 (AFCI but for bathroom, counter, refrigerator), 26-704 (Class A GFCI within 1.5 m of water and
   * outdoors), 26-654 (two counter receptacles and nothing else), 26-744 (range on 40 A); ebmag.com, smoke alarms
   * on AFCI/GFCI-protected circuits.
   */
  @Test
  void aCanadianHouse() {
    Answers usual = house(
        "A usual house", "ca-2021", ServiceSize.A200, "150 m2", 1, 2, 1,
        EnumSet.of(Space.LIVING, Space.DINING, Space.LAUNDRY, Space.GARAGE),
        EnumSet.of(Appliance.RANGE, Appliance.DISHWASHER, Appliance.DRYER, Appliance.WATER_HEATER, Appliance.HOT_TUB));
    String text = tidy(FirstPlan.text(usual));
    Golden.check(Path.of("src/test/resources/begin/canadian-house.wattle"), text);
    assertThat(text).containsPattern("40 A +two-pole +range").containsPattern("15 A +dishwasher").containsPattern("15 A +fridge")
        .containsPattern("15 A +hall ").containsPattern("two-pole ground-fault +hottub").containsPattern("arc-fault +dining")
        .containsPattern("20 A +ground-fault +counter1").containsPattern("20 A +counter2").doesNotContain("small-appliance");
    Compilation plan = compile(text.replaceFirst("(service main [^{]*\\{\n)", "$1  source available 9 kA\n"));
    assertThat(plan.findings()).as(text).isEmpty();
  }

  @Test
  void legsAreNearlyAlike() {
    Answers usual = house("House", "ca-2021", ServiceSize.A100, "90 m2", 1, 2, 1, EnumSet.of(Space.LIVING),
        EnumSet.of(Appliance.RANGE));
    Compilation plan = compile(FirstPlan.text(usual));
    var loads = wattle.loads.ConnectedLoads.of(plan.house()).panel("P");
    assertThat(loads.difference(plan.house().panels().get("P").system())).isLessThan(1500);
    assertThat(plan.source().text()).contains("NMD90").doesNotContain("NM-B");
  }
}
