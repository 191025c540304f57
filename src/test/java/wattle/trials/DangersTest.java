package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.derivation.Derivation;

/** Which figures of a trial are dangers, by hand-worked cases and by the limits of the library. */
class DangersTest {
  private static final Set<Danger.Kind> MET = new HashSet<>();

  private static List<Danger> of(String events) {
    Compilation plan = Plans.compile("trial t {\n" + events + "\n}\n");
    TrialResult result = new Trials(plan.house(), plan.library()).run(plan.house().trials().get("t")).value();
    List<Danger> dangers = result.dangers();
    dangers.forEach(d -> MET.add(d.kind()));
    return dangers;
  }

  private static List<Danger> of(Danger.Kind kind, String events) {
    return of(events).stream().filter(d -> d.kind() == kind).toList();
  }

  private static Danger only(Danger.Kind kind, String events) {
    List<Danger> dangers = of(kind, events);
    assertThat(dangers).as(of(events).toString()).hasSize(1);
    return dangers.get(0);
  }

  private static double figure(Danger danger) {
    return danger.figure().map(Derivation::si).orElseThrow();
  }

  @Test
  void aHouseInOrderHasNone() {
    assertThat(of("")).isEmpty();
    assertThat(of("kitchen.c1.upper draws 10 A\nkitchen.c1.lower draws 10 A\nlaundry.washer on\nhall.sw1 on")).isEmpty();
    assertThat(of("open breaker P/2+4\nopen breaker P/3")).as("dead is not dangerous").isEmpty();
  }

  /** 36 ohm and 12 ohm in series across 240 V: 180 V and 60 V. */
  @Test
  void behindAnOpenNeutralOneVoltageIsTooHighAndOneTooLow() {
    String events = "kitchen.c1.upper draws 1200 W\nkitchen.c1.lower draws 400 W\nopen neutral of counter";
    List<Danger> high = of(Danger.Kind.OVERVOLTAGE, events);
    assertThat(high).extracting(Danger::at).containsExactlyInAnyOrder("kitchen.c1.lower", "kitchen.c2.lower");
    assertThat(figure(high.get(0))).isCloseTo(180, Offset.offset(2.0));
    assertThat(high.get(0).words()).contains("above its 120 V");
    List<Danger> low = of(Danger.Kind.UNDERVOLTAGE, events);
    assertThat(low).extracting(Danger::at).containsExactlyInAnyOrder("kitchen.c1.upper", "kitchen.c2.upper");
    assertThat(figure(low.get(0))).isCloseTo(60, Offset.offset(1.0));
    assertThat(of(events).get(0).kind()).as("the worse first").isEqualTo(Danger.Kind.OVERVOLTAGE);
  }

  /** With nothing else on, what is on puts the whole voltage on both its conductors: nothing between them, all of it to earth. */
  @Test
  void whatLooksDeadBehindAnOpenNeutralIsLive() {
    Danger dark = only(Danger.Kind.LIVE_THOUGH_DARK, "laundry.washer on\nopen neutral of washer");
    assertThat(dark.at()).isEqualTo("laundry.washer");
    assertThat(figure(dark)).isCloseTo(120, Offset.offset(1.0));
    assertThat(of(Danger.Kind.LIVE_THOUGH_DARK, "laundry.washer on\nopen hot of washer")).isEmpty();
  }

  @Test
  void withNothingOnBothHangOnNothing() {
    assertThat(of(Danger.Kind.FLOATING, "open neutral of washer")).extracting(Danger::at).containsExactly("laundry.washer");
  }

  /** Two hots on one leg of 15 A each return 30 A on a neutral behind a breaker of 20 A (Kirchhoff). */
  @Test
  void aNeutralOfTwoHotsOnOneLegIsOverloadedAndNothingOpens() {
    String events = "kitchen.c1.upper draws 15 A\nkitchen.c1.lower draws 15 A\nmove counter to 2+6";
    Danger neutral = only(Danger.Kind.NEUTRAL_OVER, events);
    assertThat(figure(neutral)).isCloseTo(30, Offset.offset(0.1));
    assertThat(neutral.limit().map(Derivation::si)).contains(20.0);
    assertThat(of(Danger.Kind.OVERCURRENT, events)).isEmpty();
    assertThat(of(Danger.Kind.NEUTRAL_OVER, events.replace("\nmove counter to 2+6", ""))).isEmpty();
  }

  @Test
  void aBreakerAboveItsRatingOpens() {
    Danger over = only(Danger.Kind.OVERCURRENT, "laundry.washer draws 40 A");
    assertThat(over.at()).isEqualTo("breaker P/3");
    assertThat(over.words()).contains("200 % of its rating").contains("opens in");
  }

  /** 120 V behind 5 kilo-ohms of leakage and 1 kilo-ohm of a person is 20 mA; behind 100 kilo-ohms it is 1.2 mA. */
  @Test
  void metalWithoutItsGroundIsADangerByVoltageOrByCurrent() {
    Danger touch = only(Danger.Kind.TOUCH, "lift ground at laundry.washer leaking 5 kohm");
    assertThat(touch.words()).contains("with its ground lifted").containsPattern("(19|20)(\\.\\d)? mA");
    assertThat(touch.limit()).isPresent();
    assertThat(of(Danger.Kind.TOUCH, "lift ground at laundry.washer")).isEmpty();
  }

  @Test
  void exchangedConductorsFaultsAndJoints() {
    Danger reversed = only(Danger.Kind.REVERSED, "swap at laundry.washer");
    assertThat(figure(reversed)).isCloseTo(120, Offset.offset(1.0));
    assertThat(of(Danger.Kind.FAULT, "fault hot to ground at laundry.washer")).hasSize(1);
    assertThat(figure(only(Danger.Kind.JOINT, "laundry.washer draws 10 A\nloosen neutral at laundry.washer by 0.5 ohm"))).isCloseTo(50,
        Offset.offset(0.5)); // I² × R
    assertThat(of(Danger.Kind.JOINT, "loosen neutral at laundry.washer by 0.5 ohm")).as("without current it is cold").isEmpty();
  }

  /** An earth electrode is no neutral: with the service neutral gone, metal of the whole house rises. */
  @Test
  void withoutTheServiceNeutralMetalRises() {
    List<Danger> touch = of(Danger.Kind.TOUCH, "kitchen.c1.upper draws 4 kW\nopen service neutral");
    assertThat(touch.size()).isGreaterThan(3);
    assertThat(touch).allMatch(d -> figure(d) >= 50 && !d.words().contains("with its ground lifted"));
  }

  private static List<Danger> atMarlowCroft(String events) throws java.io.IOException {
    String text = java.nio.file.Files.readString(java.nio.file.Path.of("examples/marlow-croft/house.wattle")) + "\ntrial asked {\n" + events
        + "\n}\n";
    Compilation plan = new wattle.compiler.Compiler(wattle.read.SourceReader.FROM_DISK)
        .structure(new wattle.finding.Source("m.wattle", text), java.nio.file.Path.of("m.wattle"));
    List<Danger> dangers = new Trials(plan.house(), plan.library()).run(plan.house().trials().get("asked")).value().dangers();
    dangers.forEach(d -> MET.add(d.kind()));
    return dangers;
  }

  /** A pump that leaks through 5 kilo-ohms drives 24 mA past a breaker that opens from 6 mA (UL 943), and tells that it does. */
  @Test
  void protectionThatOpensIsTold() throws java.io.IOException {
    assertThat(atMarlowCroft("lift ground at utility.pump leaking 5 kohm\nutility.pump on"))
        .filteredOn(d -> d.kind() == Danger.Kind.PROTECTION)
        .singleElement().matches(d -> d.words().contains("breaker E/4 trips"));
    assertThat(atMarlowCroft("utility.pump on")).filteredOn(d -> d.kind() == Danger.Kind.PROTECTION).isEmpty();
  }

  @Test
  void limitsHaveTheirSources() {
    Compilation plan = Plans.compile("");
    // 127 V on 120 V: 83 Illinois Administrative Code 410.300 b); 50 V: IEC 60364-4-41, as reported at emf-portal.org; 6 mA: UL 943,
    // class A, as quoted in NFPA 70 Article 100.
    assertThat(plan.library().limit("voltage-above").orElseThrow().value().si() * 120 + 120).isCloseTo(127, Offset.offset(0.1));
    assertThat(plan.library().limit("touch-voltage").orElseThrow().value().si()).isEqualTo(50);
    assertThat(plan.library().limit("touch-current").orElseThrow().value().si()).isCloseTo(0.006, Offset.offset(1e-12));
  }

  @Test
  void everyKindIsMetByOneOfTheseTrials() throws java.io.IOException {
    MET.clear();
    of("kitchen.c1.upper draws 1200 W\nkitchen.c1.lower draws 400 W\nopen neutral of counter\nlift ground at laundry.washer leaking 5"
        + " kohm");
    of("laundry.washer on\nopen neutral of washer\nswap at kitchen.range\nfault hot to ground at kitchen.c1\nopen neutral of loop");
    of("kitchen.c1.upper draws 15 A\nkitchen.c1.lower draws 15 A\nmove counter to 2+6\nlaundry.washer draws 40 A\nloosen neutral at"
        + " laundry.washer by 0.5 ohm\nswap at den.lamp");
    atMarlowCroft("lose main\nutility.battery on\nlift ground at utility.pump leaking 5 kohm\nutility.pump on");
    atMarlowCroft("kitchen.range draws 300 A\nbarn.pv on");
    atMarlowCroft("kitchen.range draws 300 A\nbarn.pv on");
    MET.add(Danger.Kind.CONDUCTOR_OVER); // met by OldWorkDangersTest
    MET.addAll(List.of(Danger.Kind.SOURCE_OVER, Danger.Kind.POWER_INTO_GENERATOR)); // met by SourceDangersTest
    MET.addAll(List.of(Danger.Kind.ANIMALS, Danger.Kind.NOT_SERVED)); // met by FeedersInTrialsTest
    assertThat(MET).containsExactlyInAnyOrderElementsOf(Arrays.asList(Danger.Kind.values()));
  }
}
