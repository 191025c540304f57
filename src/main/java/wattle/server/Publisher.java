package wattle.server;

import java.lang.ref.WeakReference;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.services.LanguageClient;

/**
 * Tells the editor the findings of every plan that it has a file of open, also those in files that are not open, and takes
 * back what no longer holds. A file's findings are told only when they differ from what was told last.
 */
final class Publisher {
  private final LanguageClient client;
  private final LibraryTexts library;
  private final Map<Path, Part> parts = new LinkedHashMap<>();
  private final Map<String, Told> told = new HashMap<>();

  /** Findings as told, and for which version of the text; absent versions are those of files on disk. */
  private record Told(Integer version, List<Diagnostic> diagnostics) {}

  /** What one plan says of each of its files. It does not keep the plan, which may be forgotten to make room for another. */
  private record Part(WeakReference<Analysis> of, Map<String, Told> files) {}

  Publisher(LanguageClient client, LibraryTexts library) {
    this.client = client;
    this.library = library;
  }

  /** Tells what is known of one plan; what was told of others stands. */
  void publish(Analysis analysis, Editor editor) {
    Set<String> files = new LinkedHashSet<>();
    Optional.ofNullable(parts.get(analysis.plan())).ifPresent(p -> files.addAll(p.files.keySet()));
    files.addAll(part(analysis).files.keySet());
    tell(files, editor);
  }

  /**
   * Tells what is known of all open plans, and takes back what was told of others.
   *
   * @param looked the files that are looked at; of others that are open, what was told stands
   */
  void publish(List<Path> looked, Buffers buffers, Analyses analyses, Editor editor) {
    Set<Path> plans = new HashSet<>();
    for (Path file : looked) {
      analyses.of(file, buffers).filter(a -> plans.add(a.plan())).ifPresent(this::part);
    }
    buffers.open().keySet().stream().filter(f -> !looked.contains(f)).forEach(f -> plans.add(analyses.plans().planOf(f, buffers)));
    parts.keySet().retainAll(plans);
    Set<String> files = new LinkedHashSet<>();
    parts.values().forEach(p -> files.addAll(p.files.keySet()));
    files.addAll(told.keySet());
    tell(files, editor);
  }

  private Part part(Analysis analysis) {
    return parts.compute(analysis.plan(), (plan, known) -> known != null && known.of.get() == analysis ? known : made(analysis));
  }

  private Part made(Analysis analysis) {
    Map<Path, List<Diagnostic>> byFile = Diagnostics.of(analysis, library);
    Map<String, Told> files = new LinkedHashMap<>();
    for (Path file : analysis.files().keySet()) {
      Integer version = analysis.buffers().at(file).map(Buffer::version).orElse(null);
      files.put(analysis.buffers().uri(file), new Told(version, byFile.getOrDefault(file, List.of())));
    }
    return new Part(new WeakReference<>(analysis), files);
  }

  private void tell(Set<String> files, Editor editor) {
    boolean changed = false;
    for (String uri : files) {
      changed |= tell(uri, editor);
    }
    if (changed && editor.pulls()) {
      client.refreshDiagnostics();
    }
  }

  /** Whether there is something to tell of a file; an editor that asks for the findings of what is open is not told them. */
  private boolean tell(String uri, Editor editor) {
    Optional<Told> now = now(uri);
    Told before = now.isPresent() ? told.put(uri, now.get()) : told.remove(uri);
    Told said = before == null ? new Told(null, List.of()) : before;
    Told mine = now.orElse(new Told(null, List.of()));
    boolean known = now.isPresent() ? mine.equals(said) : said.diagnostics.isEmpty();
    boolean pulled = editor.pulls() && (mine.version != null || now.isEmpty() && said.version != null);
    if (!known && !pulled) {
      client.publishDiagnostics(new PublishDiagnosticsParams(uri, mine.diagnostics, mine.version));
    }
    return !known;
  }

  /** What all plans that use a file say of it in its latest version. */
  private Optional<Told> now(String uri) {
    Told all = null;
    for (Part part : parts.values()) {
      Told mine = part.files.get(uri);
      if (mine == null || all != null && isOlder(mine, all)) {
        continue;
      }
      all = all == null || isOlder(all, mine) ? mine : new Told(mine.version, joined(all.diagnostics, mine.diagnostics));
    }
    return Optional.ofNullable(all);
  }

  private static boolean isOlder(Told one, Told other) {
    return other.version != null && (one.version == null || one.version < other.version);
  }

  private static List<Diagnostic> joined(List<Diagnostic> some, List<Diagnostic> more) {
    List<Diagnostic> all = new ArrayList<>(new LinkedHashSet<>(some));
    more.stream().filter(d -> !all.contains(d)).forEach(all::add);
    return all;
  }
}
