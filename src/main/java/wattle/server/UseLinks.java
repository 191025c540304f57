package wattle.server;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.FileRename;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import wattle.finding.Span;
import wattle.syntax.Tree;

/** The files that {@code use} lines name: as links, and named anew where a file moves. */
final class UseLinks {
  private UseLinks() {}

  static List<DocumentLink> of(Question question) {
    List<DocumentLink> links = new ArrayList<>();
    for (Tree.Use use : quoted(question.tree().items())) {
      try {
        Path target = question.file().resolveSibling(use.target().text()).normalize();
        links.add(new DocumentLink(question.range(use.target().span()), target.toUri().toString()));
      } catch (InvalidPathException e) {
        continue; // no path at all; the compiler has a finding for it
      }
    }
    return links;
  }

  /** Edits that keep every {@code use} line of the known plans at the file it names, for files that are about to move. */
  static WorkspaceEdit moved(List<FileRename> renames, List<Analysis> plans, Editor editor) {
    Map<Path, Path> moves = new LinkedHashMap<>();
    renames.forEach(r -> moves.put(Uris.path(r.getOldUri()), Uris.path(r.getNewUri())));
    Map<Path, List<TextEdit>> edits = new LinkedHashMap<>();
    Buffers buffers = Buffers.NONE;
    for (Analysis plan : plans) {
      buffers = plan.buffers();
      plan.files().forEach((file, tree) -> {
        for (Tree.Use use : quoted(tree.items())) {
          edit(plan, file, use, moves).ifPresent(e -> {
            List<TextEdit> list = edits.computeIfAbsent(file, f -> new ArrayList<>());
            if (!list.contains(e)) {
              list.add(e); // a file that two plans use is edited once
            }
          });
        }
      });
    }
    return QuickFixes.workspaceEdit(edits, buffers, editor);
  }

  private static java.util.Optional<TextEdit> edit(Analysis plan, Path file, Tree.Use use, Map<Path, Path> moves) {
    try {
      Path target = file.resolveSibling(use.target().text()).normalize();
      Path to = after(target, moves);
      Path from = after(file, moves);
      if (to.equals(target) && from.equals(file) || from.getParent() == null) {
        return java.util.Optional.empty();
      }
      String name = from.getParent().relativize(to).toString().replace('\\', '/');
      Span span = use.target().span();
      return name.equals(use.target().text())
          ? java.util.Optional.empty()
          : java.util.Optional.of(new TextEdit(plan.range(file, span), span.text().startsWith("\"") ? '"' + name + '"' : name));
    } catch (IllegalArgumentException e) {
      return java.util.Optional.empty(); // no path at all, or on another drive: there is no name for it that a plan may use
    }
  }

  /** Where a file will be: it may move itself, or with a folder above it. */
  private static Path after(Path file, Map<Path, Path> moves) {
    for (Map.Entry<Path, Path> move : moves.entrySet()) {
      if (file.startsWith(move.getKey())) {
        return move.getValue().resolve(move.getKey().relativize(file)).normalize();
      }
    }
    return file;
  }

  private static List<Tree.Use> quoted(List<Tree.Item> items) {
    return items.stream().filter(i -> i instanceof Tree.Use use && use.quoted()).map(i -> (Tree.Use) i).toList();
  }
}
