package wattle.emit.media.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Writes results. All of a command's outputs are given at once: each is looked at, then each is written beside its
 * target under another name, and only when all of that went well, and nobody wrote there meanwhile, are they renamed. A
 * reader sees the old file or the new one and never half of it.
 *
 * <p>A file that exists is replaced without being asked only if it is ours: it has the {@link Mark}, or the file
 * system has a {@link Digest} of what we wrote noted at it, and nobody wrote into it since; or it is empty. A file that
 * somebody wrote and that is revised, such as a plan set in order, must still hold the text that was revised.
 */
public final class OutputFiles {

  /**
   * Writes all outputs or none.
   *
   * @param force whether files that are not ours are replaced too
   * @return what became of each, in the same order
   * @throws OutputException if one cannot be written; then the disk is as it was, unless a renaming itself failed
   */
  public static List<Written> write(List<Output> outputs, boolean force) throws OutputException {
    List<Placement> placements = new ArrayList<>();
    for (Output output : outputs) {
      placements.add(Placement.of(output, force));
    }
    try {
      for (Placement placement : placements) {
        placement.prepare();
      }
      // In the order of their names, so that no two commands wait for each other.
      for (Placement placement : placements.stream().sorted(Comparator.comparing(Placement::place)).toList()) {
        placement.lookAgain();
      }
      List<Written> written = new ArrayList<>();
      for (Placement placement : placements) {
        written.add(placement.finish());
      }
      return written;
    } finally {
      placements.forEach(Placement::discard);
    }
  }

  /** Writes one output. */
  public static Written write(Output output, boolean force) throws OutputException {
    return write(List.of(output), force).get(0);
  }

  private OutputFiles() {}
}
