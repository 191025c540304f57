package wattle.lockout;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.House;
import wattle.read.SourceReader;

/** What a sheet says in cases whose answer is known: common practice. */
class LockoutTest {
  private static final String HOUSE = """
      service main 120/240 V 200 A { source available 10 kA }
      panel P from main {
        bus 200 A  slots 20  bonded
        main breaker 200 A
        1      15 A  hall
        2      20 A  counter
        4      20 A  counter
        3a     15 A  bed
        3b     15 A  den
        5+7    30 A  two-pole back-fed  sun
        6+8    60 A  two-pole           G
        9+11   30 A  two-pole back-fed  spare
      }
      panel G from P/6 by 10 m of 6/3 NM-B {
        bus 100 A  slots 8
        1+3  40 A  two-pole  store
      }
      branch hall by 14/2 NM-B { P --3 m-- hall.sw --2 m-- hall.l }
      branch counter by 12/3 NM-B { P --3 m-- hall.c }
      branch bed by 14/2 NM-B through chase { P --3 m-- hall.b }
      branch den by 14/2 NM-B through chase { P --3 m-- hall.d }
      branch sun by 10/2 NM-B { P --8 m-- roof.pv }
      branch store by 8/3 NM-B { G --8 m-- roof.cells }
      raceway chase
      room hall {
        box b1 2-gang { sw: switch for l   c: split receptacle }
        l: light 10 W
        b: receptacle
        d: receptacle
      }
      room roof { pv: solar inverter 5 kW   cells: storage battery 5 kW }
      """;

  private static House house(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle")).house();
  }

  private static Lockout lockout(String text, String place) {
    House house = house(text);
    List<Place> places = Places.named(house, place);
    assertThat(places).hasSize(1);
    return Lockout.of(house, places.get(0));
  }

  private static List<String> tags(Lockout lockout) {
    return lockout.handles().stream().map(h -> h.part().tag()).toList();
  }

  @Test
  void twoBranchesInABoxAreThreeHandlesWhereOneSharesANeutral() {
    Lockout lockout = lockout(HOUSE, "hall.sw");
    assertThat(tags(lockout)).containsExactly("P/1", "P/2", "P/4");
    assertThat(lockout.warnings()).anyMatch(w -> w.startsWith("2 branches meet in hall.b1"))
        .anyMatch(w -> w.contains("separate handles, P/2 and P/4"));
    assertThat(lockout.goesDead()).singleElement().satisfies(d -> assertThat(d.devices()).containsExactly("light hall.l"));
    assertThat(lockout.staysLive()).anyMatch(l -> l.what().startsWith("hall.b ") && l.near().equals("same room"));
  }

  @Test
  void readingsBetweenBranchesTellLegsApart() {
    Lockout.Proof proof = lockout(HOUSE, "hall.b1").proofs().get(0);
    assertThat(proof.readings())
        .contains(new Lockout.Reading("black (cable to P) hot A of hall", "black (cable to P) hot A of counter (P/2)",
            java.util.Optional.of(0.0)));
    assertThat(proof.readings())
        .contains(new Lockout.Reading("black (cable to P) hot A of hall", "red hot B of counter (P/4)", java.util.Optional.of(240.0)));
    assertThat(proof.readings()).contains(new Lockout.Reading("red hot B of counter (P/4)", "ground", java.util.Optional.of(120.0)));
  }

  @Test
  void aSourceIsAHandleOfItsOwn() {
    Lockout lockout = lockout(HOUSE, "roof.pv");
    assertThat(tags(lockout)).containsExactly("P/5+7", "roof.pv");
    assertThat(lockout.warnings()).anyMatch(w -> w.contains("keeps its own voltage")).anyMatch(w -> w.contains("start automatically"));
  }

  @Test
  void aPanelCountsEverythingThatFeedsItsBus() {
    Lockout lockout = lockout(HOUSE, "P");
    assertThat(tags(lockout)).containsExactly("P/main", "P/5+7", "P/6+8", "P/9+11", "roof.cells", "roof.pv");
    assertThat(lockout.unknown()).singleElement().asString().contains("P/9+11 is back-fed");
    assertThat(lockout.staysLive()).anyMatch(l -> l.what().contains("service conductors"));
    assertThat(tags(lockout(HOUSE, "G"))).containsExactly("P/6+8", "G/1+3", "roof.cells");
  }

  @Test
  void halfSizeBreakersAndSharedRacewaysStayLive() {
    List<Lockout.Live> live = lockout(HOUSE, "hall.b").staysLive();
    assertThat(live).anyMatch(l -> l.what().equals("breaker P/3b") && l.near().equals("same slot"));
    assertThat(live).anyMatch(l -> l.near().equals("same raceway chase") && l.from().contains("P/3b"));
  }

  @Test
  void whatThePlanDoesNotSayIsSaid() {
    Lockout lockout = lockout(
        "panel P { bus 100 A slots 8 }\nbranch a by 14/2 NM-B { P --2 m-- hall.o }\nroom hall { o: receptacle\nj: junction }\n", "hall.o");
    assertThat(lockout.handles()).isEmpty();
    assertThat(lockout.unknown()).singleElement().asString().contains("which breaker feeds branch a");
    House house = house("room hall { j: junction }\n");
    assertThat(Lockout.of(house, new Place.AtBox("hall.j")).unknown()).singleElement().asString().contains("hall.j");
  }

  private static final String FUSES = """
      service main 120/240 V 60 A { source available 10 kA }
      panel F from main {
        bus 60 A  slots 4  bonded  order one-column
        main fuse 60 A
        3  20 A  fuse leg A  wet    "Washer"
        4  20 A  fuse leg A  wet    "Heater"
        1  15 A  fuse leg A  front  "Front room"
      }
      branch wet   by 12/3 NM { F --5 m-- bath.heater --4 m-- bath.machine }
      branch front by 14/2 NM { F --3 m-- bath.sw --2 m-- bath.l }
      room bath {
        box b1 2-gang { heater: wall heater 1 kW 120 V on red   sw: switch for l }
        machine: washer 10 A on black
        l: light 10 W
      }
      """;

  /** Of three blacks in one box each is named by the box or panel that its cable goes to, in the list and in the tests. */
  @Test
  void conductorsOfOneColorAreToldApartByTheirCables() {
    Lockout.Proof proof = lockout(FUSES, "bath.b1").proofs().get(0);
    assertThat(proof.conductors()).filteredOn(c -> c.color().equals("black")).extracting(Lockout.Conductor::cables)
        .containsExactlyInAnyOrder(List.of("F", "bath.machine"), List.of("F"), List.of("bath.l"));
    assertThat(proof.conductorTexts()).contains(
        "black (cables to F and bath.machine), hot A of wet", "black (cable to F), hot A of front",
        "black (cable to bath.l), switch leg of bath.sw of front", "red (cable to F), hot A of wet",
        "red (cable to bath.machine), spare of wet");
    assertThat(proof.readings()).extracting(Lockout.Reading::from)
        .contains("black (cable to F) hot A of front", "black (cables to F and bath.machine) hot A of wet (F/3)",
            "red (cable to F) hot A of wet (F/4)");
    assertThat(proof.readings()).extracting(r -> r.from() + " to " + r.to()).doesNotHaveDuplicates();
    Lockout.Proof alone = lockout(FUSES, "bath.machine").proofs().get(0);
    assertThat(alone.conductorTexts()).as("one of each color").allMatch(t -> !t.contains("cable"));
  }

  /** Conductors in a raceway come in no cable. */
  @Test
  void conductorsInARacewayAreToldByIt() {
    String conduit = FUSES.replace("branch front by 14/2 NM", "branch front by 1/2 in EMT with 14 Cu THWN-2 hot, 14 Cu THWN-2 neutral");
    assertThat(lockout(conduit, "bath.b1").proofs().get(0).conductorTexts()).contains("black (raceway to F), hot A of front");
  }

  /** Two fuses are no breakers, and nobody can lock them. */
  @Test
  void fusesAreCalledFuses() {
    Lockout lockout = lockout(FUSES.replace("machine: washer", "machine: receptacle"), "bath.b1");
    assertThat(lockout.handles()).flatExtracting(Handle::reasons)
        .contains("feeds Washer (wet), which shares one neutral over 2 fuses");
    assertThat(lockout.warnings()).anyMatch(w -> w.contains("Its hots have separate fuses, F/3 and F/4: take every one out."));
    String breakers = FUSES.replace("20 A  fuse leg", "20 A  leg");
    assertThat(lockout(breakers, "bath.b1").handles()).flatExtracting(Handle::reasons)
        .contains("feeds Washer (wet), which shares one neutral over 2 breakers");
  }

  @Test
  void aSwitchLoopAndFusesAreWarnedOf() throws SourceReader.Unreadable {
    House cottage = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/cottage/house.wattle")).house();
    Lockout lockout = Lockout.of(cottage, Places.named(cottage, "bunkroom.sw").get(0));
    assertThat(tags(lockout)).containsExactly("F/2");
    assertThat(lockout.warnings()).anyMatch(w -> w.contains("is not a neutral")).anyMatch(w -> w.contains("Fuses cannot be locked"));
    assertThat(lockout.proofs().get(0).readings()).allMatch(r -> !r.to().equals("ground"));
  }
}
