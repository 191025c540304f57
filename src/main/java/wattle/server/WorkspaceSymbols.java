package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolLocation;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Named things of every plan in the editor's folders and of those that are open. */
final class WorkspaceSymbols {
  /** Most answers; an editor asks again as the query grows. */
  private static final int MOST = 500;

  private WorkspaceSymbols() {}

  /** Things whose name has the letters of the query in their order, whatever their case; all for an empty query. */
  static List<WorkspaceSymbol> find(String query, Buffers buffers, Analyses analyses) {
    Set<Path> files = new LinkedHashSet<>(buffers.open().keySet());
    analyses.plans().folders().forEach(folder -> files.addAll(Plans.plansIn(folder)));
    Set<Path> done = new LinkedHashSet<>();
    List<WorkspaceSymbol> symbols = new ArrayList<>();
    for (Path file : files) {
      analyses.of(file, buffers).filter(a -> done.add(a.plan())).ifPresent(a -> add(query, a, symbols));
    }
    return symbols.size() > MOST ? symbols.subList(0, MOST) : symbols;
  }

  private static void add(String query, Analysis analysis, List<WorkspaceSymbol> symbols) {
    for (Occurrence name : analysis.derived().names()) {
      if (name.declares() && matches(query.toLowerCase(Locale.ROOT), name.thing().name().toLowerCase(Locale.ROOT))) {
        analysis
            .location(name.span())
            .ifPresent(
                place -> symbols.add(
                    new WorkspaceSymbol(
                        name.thing().name(), kind(name.thing().kind()),
                        Either.<org.eclipse.lsp4j.Location, WorkspaceSymbolLocation>forLeft(place), name.thing().kind().toString())));
      }
    }
  }

  private static boolean matches(String query, String name) {
    int at = 0;
    for (int i = 0; i < query.length(); i++) {
      at = name.indexOf(query.charAt(i), at) + 1;
      if (at == 0) {
        return false;
      }
    }
    return true;
  }

  static SymbolKind kind(Named.Kind kind) {
    return switch (kind) {
      case BRANCH -> SymbolKind.Function;
      case PANEL -> SymbolKind.Class;
      case SERVICE -> SymbolKind.Interface;
      case DWELLING -> SymbolKind.Module;
      case ROOM -> SymbolKind.Namespace;
      case DEVICE -> SymbolKind.Field;
      case RACEWAY -> SymbolKind.Object;
      case PATTERN -> SymbolKind.Class;
      case PLACEMENT -> SymbolKind.Namespace;
      case PARAMETER -> SymbolKind.Variable;
      case CONSTANT, LIMIT -> SymbolKind.Constant;
      case TRIAL -> SymbolKind.Event;
      case PART, CABLE -> SymbolKind.Struct;
      case TABLE -> SymbolKind.Array;
      case PACK -> SymbolKind.Package;
      case RULE -> SymbolKind.Key;
    };
  }
}
