package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
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
  private Map<String, Told> told = new HashMap<>();

  /** Findings as told, and for which version of the text; absent versions are those of files on disk. */
  private record Told(Integer version, List<Diagnostic> diagnostics) {}

  Publisher(LanguageClient client, LibraryTexts library) {
    this.client = client;
    this.library = library;
  }

  /** Tells what is known of all open plans. */
  void publish(Buffers buffers, Analyses analyses, Editor editor) {
    Map<String, Told> now = new LinkedHashMap<>();
    Set<Path> done = new HashSet<>();
    for (Path file : new LinkedHashSet<>(buffers.open().keySet())) {
      analyses.of(file, buffers).filter(a -> done.add(a.plan())).ifPresent(a -> add(a, now));
    }
    boolean asks = editor.pulls() && !now.equals(told);
    now.forEach(
        (uri, mine) -> {
          boolean pulled = editor.pulls() && mine.version != null;
          boolean known = mine.equals(told.get(uri)) || mine.diagnostics.isEmpty() && mine.version == null && !told.containsKey(uri);
          if (!pulled && !known) {
            client.publishDiagnostics(new PublishDiagnosticsParams(uri, mine.diagnostics, mine.version));
          }
        });
    told.forEach(
        (uri, before) -> {
          boolean pulled = editor.pulls() && before.version != null;
          if (!pulled && !now.containsKey(uri) && !before.diagnostics.isEmpty()) {
            client.publishDiagnostics(new PublishDiagnosticsParams(uri, List.of()));
          }
        });
    told = now;
    if (asks) {
      client.refreshDiagnostics();
    }
  }

  private void add(Analysis analysis, Map<String, Told> now) {
    Map<Path, List<Diagnostic>> byFile = Diagnostics.of(analysis, library);
    for (Path file : analysis.files().keySet()) {
      String uri = analysis.buffers().uri(file);
      Integer version = analysis.buffers().at(file).map(Buffer::version).orElse(null);
      List<Diagnostic> mine = byFile.getOrDefault(file, List.of());
      // A file that two open plans use has the findings of both.
      now.merge(uri, new Told(version, mine), (a, b) -> new Told(a.version, joined(a.diagnostics, b.diagnostics)));
    }
  }

  private static List<Diagnostic> joined(List<Diagnostic> some, List<Diagnostic> more) {
    List<Diagnostic> all = new ArrayList<>(new LinkedHashSet<>(some));
    more.stream().filter(d -> !all.contains(d)).forEach(all::add);
    return all;
  }
}
