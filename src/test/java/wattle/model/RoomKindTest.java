package wattle.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** What rooms are taken for by their names. */
class RoomKindTest {
  private static String kind(String name) {
    return RoomKind.named(name).map(RoomKind::word).orElse("none");
  }

  @Test
  void namesSayWhatRoomsAre() {
    Map<String, String> told = Map.ofEntries(
        Map.entry("bath2", "bathroom"), Map.entry("upbath", "bathroom"), Map.entry("bed", "bedroom"), Map.entry("bed-3", "bedroom"),
        Map.entry("back-yard", "yard"), Map.entry("backyard", "yard"), Map.entry("garden", "outdoors"), Map.entry("driveway", "outdoors"),
        Map.entry("Wet bar", "wet-bar"), Map.entry("Rear deck", "deck"), Map.entry("Dining room", "dining"), Map.entry("den", "family"),
        Map.entry("Furnace room", "utility"), Map.entry("crawlspace", "crawl-space"), Map.entry("cellar", "cellar"),
        Map.entry("Laundry", "laundry"), Map.entry("entry", "foyer"), Map.entry("barn", "workshop"), Map.entry("rooftop", "roof"),
        Map.entry("sun room", "sunroom"), Map.entry("walk-in closet", "closet"), Map.entry("Powder room", "bathroom"));
    told.forEach((name, kind) -> assertThat(kind(name)).as(name).isEqualTo(kind));
  }

  @Test
  void otherNamesSayNothing() {
    for (String name : new String[]{"front", "small", "r1", "x", "north", "back", "room"}) {
      assertThat(kind(name)).as(name).isEqualTo("none");
    }
  }

  @Test
  void aPlaceBelongsToWiderPlaces() {
    assertThat(RoomKind.YARD.places()).contains("yard", "outdoors");
    assertThat(RoomKind.CELLAR.places()).contains("basement");
    assertThat(RoomKind.SUNROOM.places()).contains("habitable", "living-space", "wall-spaced");
    assertThat(RoomKind.allWords()).allSatisfy(w -> assertThat(RoomKind.of(w)).as(w).isPresent());
  }
}
