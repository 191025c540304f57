package wattle.materials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wattle.library.Library;
import wattle.model.House;

/**
 * Everything new in a house that has to be bought.
 *
 * @param items by category, each in the order in which the plan first needs it
 * @param open what the plan leaves out, so that something may be missing from the list
 */
public record Materials(List<Material> items, List<String> open) {
  public Materials {
    items = List.copyOf(items);
    open = List.copyOf(open);
  }

  /** Counts the materials of a house. Pure. */
  public static Materials of(House house, Library library) {
    List<String> open = new ArrayList<>();
    List<Material> items = new ArrayList<>();
    items.addAll(new CableLengths(house, library, open).items());
    Tally tally = new Tally();
    new PanelParts(house, open).count(tally);
    new BoxParts(house, open).count(tally);
    new Joints(house).count(tally);
    items.addAll(tally.items());
    items.sort(Comparator.comparing(Material::category));
    return new Materials(items, open);
  }
}
