package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * Five invented houses with faults that stand beside each other. Each is listed here by its rule and its thing, as it was seeded, and
 * must be found with all the others there; faults of existing work that no code asks of it are found by a survey.
 */
class SurveyHousesTest {
  private static final Path HOUSES = Path.of("src/test/resources/plans/survey");

  private static final List<String> COTTAGE = List.of(
      "shared-neutral-same-leg", // two fuses of leg A over one white wire
      // 10 A and 12.5 A of one leg on a 20 A white wire
      "breaker-above-conductor kitchen", // a 30 A fuse on 14 AWG
      "receptacle-above-circuit kitchen.c1", "receptacle-above-circuit kitchen.c2", // 15 A receptacles on it
      "ground-pin-without-ground front.r1", "ground-pin-without-ground front.r2", "ground-pin-without-ground front.r3",
      "ground-pin-without-ground front.r4", "ground-pin-without-ground front.r5", "ground-pin-without-ground front.r6",
      "box-uncovered attic.splice"); // the splice without a box

  private static final List<String> COTTAGE_IF_NEW = List.of(
      "rod-single main", "service-small main", "ground-missing front", "ground-fault-missing kitchen.c1",
      "ground-fault-missing-plugged wash.machine", "arc-fault-missing front", "laundry-circuit-missing wash",
      "bath-receptacle-missing bath");

  private static final List<String> DUPLEX = List.of(
      "neutral-bonded-twice D1", "breaker-above-conductor counter1", "receptacle-above-circuit kitchen1.c1",
      "small-appliance-circuits-few", "ground-fault-missing kitchen1.c1", "ground-fault-missing kitchen1.c2",
      "ground-fault-missing bath1.r", "tamper-resistance-missing bath2.r", "rated-for-other-voltage utility2.heater");

  private static final List<String> OUTBUILDING = List.of(
      "feeder-bonded-without-ground barn", // three wires and a bond
      "feeder-below-load barn", // 73 A and more on 60 A, the area of the workshop not stated
      "load-above-breaker workshop.dust", "cable-not-for-burial outside", "burial-shallow outside", "ground-fault-missing yard.front",
      "ground-fault-missing yard.back", "voltage-drop-feeder barn", "fault-below-instantaneous barn");

  private static final List<String> KITCHEN = List.of(
      "breaker-above-conductor range", // 50 A on new 10 AWG
      "breaker-above-conductor oldbath", // 20 A on old 14 AWG
      "arc-fault-missing-extension bedrooms", // a new receptacle on an existing branch
      "tamper-resistance-missing bed.r3", "tamper-resistance-missing kitchen.c2", "small-appliance-circuits-few",
      "counter-receptacle-off-circuit kitchen.c1", "ground-fault-missing kitchen.c1", "ground-fault-missing-appliance kitchen.range");

  private static List<String> ofEachFlat() {
    return IntStream.rangeClosed(1, 12).boxed()
        .flatMap(
            n -> List.of("breaker-above-conductor flat" + n + ".bed", "ground-fault-missing flat" + n + ".bath.r",
                "ground-fault-missing-appliance flat" + n + ".kitchen.range", "smoke-alarm-missing-in-bedroom flat" + n + ".bed").stream())
        .toList();
  }

  private static Compilation compile(String house) throws Exception {
    return new Compiler(SourceReader.FROM_DISK).compile(HOUSES.resolve(house + ".wattle"));
  }

  /** Rule and thing of each place of each fact, and the rule alone. */
  private static Set<String> told(List<Finding> facts) {
    return facts.stream().flatMap(f -> f.each().stream())
        .flatMap(f -> List.of(f.rule(), f.rule() + f.subject().map(s -> " " + s).orElse("")).stream())
        .collect(Collectors.toSet());
  }

  private static void assertEach(List<String> seeded, List<Finding> facts) {
    List<String> missed = new ArrayList<>(seeded);
    missed.removeAll(told(facts));
    assertThat(missed).as("seeded, and not found").isEmpty();
  }

  @Test
  void aFuseBoxCottage() throws Exception {
    Compilation cottage = compile("cottage");
    assertEach(COTTAGE, cottage.facts());
    assertThat(cottage.facts()).filteredOn(f -> f.rule().equals("ground-pin-without-ground")).as("one fact").hasSize(1);
    assertEach(COTTAGE_IF_NEW, cottage.surveyed().facts());
    assertEach(COTTAGE, cottage.surveyed().facts());
    assertThat(cottage.surveyed().facts()).filteredOn(f -> f.ofNewWork().isPresent()).as("old work binds nobody by itself")
        .allMatch(f -> f.severity() == wattle.finding.Severity.ADVICE);
  }

  @Test
  void aDuplexOnTwoLegsOfAWye() throws Exception {
    assertEach(DUPLEX, compile("duplex").facts());
  }

  @Test
  void anOutbuildingOnThreeWires() throws Exception {
    assertEach(OUTBUILDING, compile("outbuilding").facts());
  }

  @Test
  void aBlockOfFlats() throws Exception {
    Compilation flats = compile("flats");
    assertEach(ofEachFlat(), flats.facts());
    assertEach(List.of("interrupting-rating-below-fault H", "water-pipe-alone main"), flats.facts());
    assertThat(flats.facts()).filteredOn(f -> f.rule().equals("breaker-above-conductor")).as("one fact in twelve flats").hasSize(1);
    assertThat(flats.facts()).extracting(Finding::rule).as("the flats state their floor areas, which do for their risers")
        .doesNotContain("calculated-load-unknown");
  }

  @Test
  void aKitchenDoneAnew() throws Exception {
    assertEach(KITCHEN, compile("kitchen").facts());
  }

  /** One more mistake, of another kind, hides none of them. */
  @Test
  void anUnknownCableElsewhereHidesNothing() throws Exception {
    Path file = HOUSES.resolve("cottage.wattle");
    String text = Files.readString(file).replace("room attic", "branch shed by 14/2 NMQ existing { F --9 m-- shed.r }\nroom attic")
        + "room shed \"Shed\" existing { r: receptacle }\n";
    Compilation mistaken = new Compiler(SourceReader.FROM_DISK).compile(new Source(file.toString(), text), file);
    assertEach(List.of("cable-unknown"), mistaken.facts());
    // What flows in the house cannot be known while a branch of it is left out; everything else is judged.
    assertEach(COTTAGE, mistaken.facts());
  }
}
