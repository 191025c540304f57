package wattle.materials;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * One line of a list of materials.
 *
 * @param what in the trade's words, such as {@code 12/2 NM-B}
 * @param amount a length in meters where {@code inMeters}, else a count
 * @param places names of the branches, boxes or panels that it is for, in the order of the plan
 * @param derivation how a length was come by; absent for a count
 */
public record Material(
    Category category, String what, double amount, boolean inMeters, List<String> places, Optional<Derivation> derivation) {
  public Material {
    places = List.copyOf(places);
  }

  /** In the order in which lists have them. */
  public enum Category {
    CABLE("cable"), CONDUCTOR("single conductor"), RACEWAY("raceway"), PANEL("panel"), BREAKER("breaker or fuse"), BOX("box"), DEVICE(
        "device"), EQUIPMENT("equipment"), PLUG("receptacle or cord"), COVER("cover"), CONNECTOR("connector"), GROUNDING("grounding");

    private final String word;

    Category(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }
}
