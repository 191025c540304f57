package wattle.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import wattle.compiler.Compilation;
import wattle.finding.Source;

/**
 * One side of a difference that git shows: the text that git gives, together with the files that it uses. Git gives a driver
 * the text and its id, and not the revision that it is from. So a revision is looked for that has this very text: HEAD if it
 * does, else the latest before it that does. Where none has, it was never committed, and the files beside it are read as
 * they are.
 *
 * @param from where the files that the text uses were read from, in words; empty where it uses none
 */
record PartsOfRevision(Compilation plan, String from) {
  private static final Pattern USES_FILE = Pattern.compile("^\\s*use\\s+\"", Pattern.MULTILINE);

  /** @param id of the text in git; all zeros where it is that of the working folder */
  static PartsOfRevision of(Source text, String path, String id, PlanInput input) {
    if (!USES_FILE.matcher(text.text()).find()) {
      return new PartsOfRevision(input.compile(text, path), "");
    }
    Optional<String> commit = id.matches("0+") ? Optional.empty() : commit(path, id);
    if (commit.isEmpty()) {
      return new PartsOfRevision(input.compile(text, path), "as they are in the working folder");
    }
    try (Revision revision = Revision.of(commit.get(), Path.of(path))) {
      return new PartsOfRevision(input.compile(text, revision.plan().toString()), "as in " + commit.get().substring(0, 10));
    }
  }

  private static Optional<String> commit(String path, String id) {
    return commit("HEAD", path, id).or(() -> {
      List<String> candidates = Revision.lines(here(), "log", "--format=%H", "--full-history", "--find-object=" + id, "HEAD", "--", path);
      // Where a text went away is listed too, and the revision before that is one that has it.
      return candidates.stream().flatMap(c -> Stream.of(c, c + "^")).flatMap(c -> commit(c, path, id).stream()).findFirst();
    });
  }

  /** The commit of a revision, where that has the text. */
  private static Optional<String> commit(String revision, String path, String id) {
    List<String> ids = Revision.lines(here(), "rev-parse", revision + ":" + path, revision + "^{commit}");
    return ids.size() == 2 && ids.get(0).equals(id) ? Optional.of(ids.get(1)) : Optional.empty();
  }

  private static Path here() {
    return Path.of("").toAbsolutePath();
  }
}
