package wattle.library;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/** The step of the build that compiles the standard library. */
public final class SnapshotFile {
  private SnapshotFile() {}

  /**
   * Compiles the packs on the class path.
   *
   * @param arguments the file to write; it is left alone where nothing changed
   */
  public static void main(String[] arguments) throws IOException {
    byte[] snapshot = Snapshot.write(packs());
    Path file = Path.of(arguments[0]);
    if (!Files.exists(file) || !Arrays.equals(Files.readAllBytes(file), snapshot)) {
      Files.createDirectories(file.getParent());
      Files.write(file, snapshot);
    }
  }

  /** Every pack of the standard library, read from its text. */
  static List<Snapshot.Pack> packs() {
    List<Snapshot.Pack> packs = new ArrayList<>();
    for (String name : StandardLibrary.writtenNames()) {
      List<PlanTree> files = good(StandardLibrary.filesOf(name));
      String base = "";
      for (PlanTree file : files) {
        for (Tree.Item item : file.items()) {
          if (item instanceof Tree.Pack pack && pack.base().isPresent()) {
            base = pack.base().get().text();
          }
        }
      }
      packs.add(new Snapshot.Pack(name, base, good(LibraryLoader.load(files))));
    }
    return packs;
  }

  private static <T> T good(Checked<T> read) {
    if (!read.findings().isEmpty()) {
      throw new IllegalStateException(
          "the standard library has mistakes: " + read.findings().stream().map(Finding::toString).toList());
    }
    return read.value();
  }
}
