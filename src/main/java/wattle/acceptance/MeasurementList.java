package wattle.acceptance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.library.Limit;

/** The measurements so far, with keys that no two share. */
final class MeasurementList {
  private final Library library;
  private final List<Measurement> list = new ArrayList<>();

  MeasurementList(Library library) {
    this.library = library;
  }

  /** @param which tells measurements of one kind at one place apart, such as the color of a conductor; empty where one is enough */
  void add(
      String of, String breakers, Measurement.Kind kind, String at, String which, String between, Expected expected) {
    String base = of + "/" + at + "/" + kind.word().replace(' ', '-') + (which.isEmpty() ? "" : "/" + which);
    // An appliance has a part across both hots and one on a leg: two voltages at one place.
    long same = list.stream().filter(m -> m.key().equals(base) || m.key().startsWith(base + "/")).count();
    String key = same == 0 ? base : base + "/" + (same + 1);
    list.add(
        new Measurement(
            key, kind, of, breakers, at, between, expected.words(), expected.unit(), expected.least(), expected.most(),
            expected.derivation()));
  }

  /** What is written on every sheet must not be made up where the library lacks it. */
  Limit limit(String name) {
    return maybe(name).orElseThrow(() -> new IllegalStateException("the library has no limit '" + name + "'"));
  }

  /** What only some codes have. */
  Optional<Limit> maybe(String name) {
    return library.limit(name);
  }

  /** A conductor by its role, {@code ground} as the code in force calls it. */
  String called(String role) {
    return role.equals("ground") ? library.groundTerm() : role;
  }

  List<Measurement> all() {
    return List.copyOf(list);
  }
}
