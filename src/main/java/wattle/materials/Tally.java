package wattle.materials;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Counts things by what they are, and keeps where each is needed. */
final class Tally {
  private record Key(Material.Category category, String what) {}

  private final Map<Key, Integer> counts = new LinkedHashMap<>();
  private final Map<Key, Set<String>> places = new LinkedHashMap<>();

  void add(Material.Category category, String what, String place) {
    Key key = new Key(category, what);
    counts.merge(key, 1, Integer::sum);
    places.computeIfAbsent(key, k -> new LinkedHashSet<>()).add(place);
  }

  List<Material> items() {
    List<Material> items = new ArrayList<>();
    counts.forEach(
        (key, count) -> items.add(new Material(key.category, key.what, count, false, List.copyOf(places.get(key)), Optional.empty())));
    return items;
  }
}
