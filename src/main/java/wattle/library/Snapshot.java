package wattle.library;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The packs of the standard library as the build has compiled them, in a form that takes no time to open: each thing is
 * found by its name and read when it is asked for. The text in {@code stdlib/} stays the one definition; the build makes
 * this of it, and a test holds the two against each other.
 */
final class Snapshot {
  /**
   * A pack.
   *
   * @param base the pack that it extends; empty for none
   * @param library what stands in its own files
   */
  record Pack(String name, String base, Library library) {}

  private Snapshot() {}

  /** The packs, in the order given, as bytes; the same packs give the same bytes. */
  static byte[] write(List<Pack> packs) {
    SnapshotWriter out = new SnapshotWriter();
    out.number(packs.size());
    for (Pack pack : packs) {
      Library library = pack.library;
      out.text(pack.name);
      out.text(pack.base);
      out.words(library.packs());
      out.named(library.parts(), SnapshotWriter::part);
      out.named(library.cables(), SnapshotWriter::cable);
      out.named(library.tables(), SnapshotWriter::table);
      out.named(library.limits(), SnapshotWriter::limit);
      out.named(library.rules(), RuleSnapshot::write);
    }
    return out.bytes();
  }

  /** The packs, by name, in the order written. */
  static Map<String, Pack> read(byte[] bytes) {
    SnapshotReader in = new SnapshotReader(bytes, 0);
    Map<String, Pack> packs = new LinkedHashMap<>();
    for (int n = in.number(); n > 0; n--) {
      String name = in.text();
      String base = in.text();
      Library library = new Library(
          in.words(),
          in.named(SnapshotReader::part),
          in.named(SnapshotReader::cable),
          in.named(SnapshotReader::table),
          in.named(SnapshotReader::limit),
          in.named(RuleSnapshot::read));
      packs.put(name, new Pack(name, base, library));
    }
    return packs;
  }

  /** These packs and those they extend as one library, base first; a name that is no pack is passed over. */
  static Library join(Map<String, Pack> all, List<String> names) {
    Map<String, Pack> chosen = new LinkedHashMap<>();
    names.stream().filter(all::containsKey).forEach(name -> choose(all, name, chosen));
    Library joined = Library.EMPTY;
    for (Pack pack : chosen.values()) {
      joined = joined.with(pack.library);
    }
    return joined;
  }

  private static void choose(Map<String, Pack> all, String name, Map<String, Pack> chosen) {
    List<Pack> line = new ArrayList<>();
    for (Pack pack = all.get(name); pack != null; pack = all.get(pack.base)) {
      line.add(0, pack);
    }
    line.forEach(pack -> chosen.putIfAbsent(pack.name, pack));
  }
}
