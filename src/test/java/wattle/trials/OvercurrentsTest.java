package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Breakers that a trial would open are told, with the bounds of UL 489 (from memory) for when. */
class OvercurrentsTest {
  private static List<TrialResult.OvercurrentReading> over(String events) {
    return Plans.run(events).overcurrents();
  }

  /** 28 A on 20 A is 1.4 times the rating: an hour at 1.35 times, and no more of I² × t above. */
  @Test
  void anOverloadOpensWithinItsBounds() {
    TrialResult.OvercurrentReading over = over("kitchen.c1.upper draws 28 A current").get(0);
    assertThat(over.name()).isEqualTo("breaker P/2+4");
    assertThat(over.feeds()).isEqualTo("counter");
    assertThat(over.amps().si()).isCloseTo(28, within(1e-6));
    assertThat(over.opens().orElseThrow().most().orElseThrow()).isCloseTo(3600 * Math.pow(1.35 / 1.4, 2), within(1e-3));
  }

  @Test
  void betweenItsRatingAndTheFirstPointItNeedNotOpen() {
    List<TrialResult.OvercurrentReading> over = over("kitchen.c1.upper draws 25 A current");
    assertThat(over).hasSize(1);
    assertThat(over.get(0).opens().orElseThrow().most()).isEmpty();
    assertThat(over.get(0).share().si()).isCloseTo(1.25, within(1e-6));
  }

  @Test
  void atItsRatingOrOffItCarriesNoMoreThanThat() {
    assertThat(over("kitchen.c1.upper draws 20 A current\n kitchen.c1.lower draws 20 A current")).isEmpty();
    assertThat(over("kitchen.c1.upper draws 28 A\n open breaker P/2+4")).isEmpty();
  }

  /** A bolted fault trips its own breaker at once; the main may take its time over it. */
  @Test
  void aFaultTripsAtOnce() {
    List<TrialResult.OvercurrentReading> over = over("fault hot to neutral at laundry.washer");
    assertThat(over.get(0).name()).isEqualTo("breaker P/3");
    assertThat(over.get(0).opens().orElseThrow().most().orElseThrow()).isLessThanOrEqualTo(0.1);
    assertThat(over.get(0).amps().si()).isGreaterThan(20 * 20);
    assertThat(over).extracting(TrialResult.OvercurrentReading::name).contains("main of P");
  }

  /** Both hots of a shared breaker over their rating are one breaker, told by the worse. */
  @Test
  void polesAreToldOnce() {
    List<TrialResult.OvercurrentReading> over = over("kitchen.c1.upper draws 28 A current\n kitchen.c1.lower draws 31 A current");
    assertThat(over).hasSize(1);
    assertThat(over.get(0).amps().si()).isCloseTo(31, within(1e-6));
  }

  /** The readings of a trial are worked out once, however often they are asked for. */
  @Test
  void readingsAreKept() {
    TrialResult result = Plans.run("laundry.washer on");
    assertThat(result.outlets()).isSameAs(result.outlets());
    assertThat(result.conductors()).isSameAs(result.conductors());
    assertThat(result.overcurrents()).isSameAs(result.overcurrents());
  }
}
