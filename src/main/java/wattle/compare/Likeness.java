package wattle.compare;

import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import wattle.model.House;

/** Whether two houses differ in nothing but the names that are given in them. */
public final class Likeness {
  private Likeness() {}

  /**
   * What else differs first, in words; absent where nothing does. Things are matched by the order in which they stand, as in two
   * texts of which one has other names in the same places.
   *
   * @return such as {@code room cuisine: kind is 'kitchen' before and not stated after}
   */
  public static Optional<String> difference(House before, House after) {
    List<Described> old = Described.of(before, Renames.inOrder(before, after));
    List<Described> now = Described.of(after, Renames.none());
    Iterator<Described> later = now.iterator();
    for (Described was : old) {
      if (!later.hasNext()) {
        return Optional.of(was.own() + " would be gone");
      }
      Described is = later.next();
      if (!was.matched().equals(is.own())) {
        return Optional.of("where " + was.own() + " was, " + is.own() + " would be");
      }
      Optional<String> property = property(was.comparable(), is.comparable());
      if (property.isPresent()) {
        return property.map(p -> is.own() + ": " + p);
      }
    }
    return later.hasNext() ? Optional.of(later.next().own() + " would be new") : Optional.empty();
  }

  private static Optional<String> property(Map<String, String> was, Map<String, String> is) {
    TreeSet<String> names = new TreeSet<>(was.keySet());
    names.addAll(is.keySet());
    return names.stream().filter(n -> !was.getOrDefault(n, "").equals(is.getOrDefault(n, ""))).findFirst()
        .map(n -> n + " is " + said(was.get(n)) + " before and " + said(is.get(n)) + " after");
  }

  private static String said(String value) {
    return value == null || value.isEmpty() ? "not stated" : "'" + value + "'";
  }
}
