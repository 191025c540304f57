package wattle.emit.document.lockout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wattle.emit.media.page.Page;
import wattle.lockout.Handle;
import wattle.lockout.Lockout;
import wattle.lockout.Place;
import wattle.model.BreakerId;
import wattle.model.Slot;

/** What a sheet says to somebody who stands before the panel: common practice of locking out and proving dead. */
class LockoutTextTest {
  private static final Handle COUNTER = new Handle(
      new Handle.Part.OfBreaker(new BreakerId("P", List.of(new Slot(2, Optional.empty()), new Slot(4, Optional.empty())))),
      "panel P", "two-pole 20 A breaker", List.of("feeds counter"));

  private static Lockout lockout(List<Handle> handles, List<String> unknown, Lockout.Reading... readings) {
    Lockout.Proof proof = new Lockout.Proof(
        "box kitchen.c1", List.of(new Lockout.Conductor("counter", "white", "hot B", true, List.of("P"), false)), List.of(readings));
    return new Lockout(
        new Place.AtBox("kitchen.c1"), "Counter box", handles, unknown, List.of(new Lockout.Dead("Counter", List.of("Sink outlet"))),
        List.of(new Lockout.Live("branch hall", "P/1", "in the same box")), List.of(proof), List.of("a neutral is shared"));
  }

  private static List<String> lines(Lockout lockout, long errors) {
    return LockoutText.render(lockout, new SheetHead("Mill Row, revision 2", errors)).lines().toList();
  }

  /** Open, beware, prove, sign: in the order of the work. */
  @Test
  void theSheetFollowsTheWork() {
    List<String> lines = lines(lockout(List.of(COUNTER), List.of(), new Lockout.Reading("black", "white", Optional.of(240.0))), 0);
    assertThat(lines).containsSubsequence(
        "LOCKOUT SHEET: box kitchen.c1", "Counter box; plan Mill Row, revision 2", "OPEN AND LOCK, ALL OF THEM",
        "[ ] P/2+4  panel P: two-pole 20 A breaker", "      feeds counter", "BEWARE", "- a neutral is shared", "STAYS LIVE",
        "- branch hall (in the same box): from P/1", "ALSO GOES DEAD", "- Counter: Sink outlet",
        "PROVE DEAD (prove the tester on a live source before and after)", "box kitchen.c1",
        "    conductor: white, hot B of counter (a white conductor that is not a neutral)",
        "    [ ] black to white: 0 V; with everything on: 240 V", "SIGN", Page.CAUTION);
    assertThat(lines).noneMatch(l -> l.startsWith("!"));
  }

  /** A tester that shows nothing must be told from a dead box. */
  @Test
  void aReadingThatProvesNothingSaysSo() {
    List<String> lines = lines(
        lockout(List.of(COUNTER), List.of(), new Lockout.Reading("black", "red", Optional.of(0.0)),
            new Lockout.Reading("red", "white", Optional.empty())),
        0);
    assertThat(lines).contains(
        "    [ ] black to red: 0 V; reads 0 V even when live, so it proves nothing by itself",
        "    [ ] red to white: 0 V; with everything on: not known");
  }

  @Test
  void whatIsNotKnownStandsAtTheTop() {
    List<String> lines = lines(lockout(List.of(), List.of("nothing says what feeds den")), 1);
    assertThat(lines.get(2)).startsWith("! The plan has 1 error (wattle check)").contains("may be wrong or incomplete");
    assertThat(lines.get(3)).isEqualTo("! NOT COMPLETE: nothing says what feeds den");
    assertThat(lines).contains("the plan shows none: treat everything here as live");
    assertThat(lines(lockout(List.of(), List.of()), 2).get(2)).contains("2 errors");
  }
}
