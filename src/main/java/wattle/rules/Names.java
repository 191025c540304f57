package wattle.rules;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** What a rule has named: for each name its type and its place among the values at run time. */
final class Names {
  private final Map<String, Type> types = new LinkedHashMap<>();
  private final Map<String, Integer> places = new LinkedHashMap<>();
  private final Set<Integer> asked = new HashSet<>();
  private int most;

  /** Names a value; of two with one name the later holds. */
  int add(String name, Type type) {
    types.put(name, type);
    places.put(name, most);
    return most++;
  }

  /** Lets a name go that held within a quantifier only. */
  void remove(String name, Names before) {
    types.remove(name);
    places.remove(name);
    if (before.types.containsKey(name)) {
      types.put(name, before.types.get(name));
      places.put(name, before.places.get(name));
    }
  }

  Names copy() {
    Names copy = new Names();
    copy.types.putAll(types);
    copy.places.putAll(places);
    copy.most = most;
    return copy;
  }

  boolean has(String name) {
    return types.containsKey(name);
  }

  Type typeOf(String name) {
    return types.get(name);
  }

  int placeOf(String name) {
    int place = places.get(name);
    asked.add(place);
    return place;
  }

  /** Whether a place has been asked for since {@link #askAnew}. */
  boolean isAsked(int place) {
    return asked.contains(place);
  }

  /** What was asked for until now no longer counts. */
  void askAnew() {
    asked.clear();
  }

  Set<String> known() {
    return types.keySet();
  }

  /** How many places the values need. */
  int size() {
    return most;
  }
}
