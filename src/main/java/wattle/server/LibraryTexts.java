package wattle.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Range;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.library.RuleText;
import wattle.library.StandardLibrary;
import wattle.server.Named.Kind;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * The standard library as files that an editor can open, to read what a part, a cable, a table or a rule is. A file is
 * written, read-only, when something in it is first asked for, to a folder that goes with the session. For one thread.
 */
final class LibraryTexts implements AutoCloseable {
  private final Map<List<String>, List<PlanTree>> files = new HashMap<>();
  private final Map<String, Optional<String>> links = new HashMap<>();
  private Optional<Path> folder = Optional.empty();

  /** Where a thing of the standard library is written down; absent where it has none, or no file can be written. */
  Optional<Location> find(Named thing, Library library) {
    for (PlanTree tree : files(library)) {
      for (Tree.Item item : tree.items()) {
        Optional<Span> name = name(item, thing);
        if (name.isPresent()) {
          Range range = new LineIndex(tree.source().text()).range(name.get());
          return written(tree.source()).map(path -> new Location(path.toUri().toString(), range));
        }
      }
    }
    return Optional.empty();
  }

  private List<PlanTree> files(Library library) {
    return files.computeIfAbsent(List.copyOf(library.packs().keySet()), packs -> StandardLibrary.files(packs).value());
  }

  /** A rule with its title, reason and samples, of the plan's own files or of the library. */
  Optional<Tree.Rule> rule(String name, Library library) {
    RuleText known = library.rules().get(name);
    if (known == null || known.tree().reason().isPresent()) {
      return Optional.ofNullable(known).map(RuleText::tree);
    }
    return files(library).stream()
        .flatMap(f -> f.items().stream())
        .filter(i -> i instanceof Tree.Rule rule && rule.name().text().equals(name))
        .map(Tree.Rule.class::cast)
        .findFirst();
  }

  /** An address at which the text of a rule of the library can be opened; absent for what no rule of it has found. */
  Optional<String> link(String rule, Library library) {
    if (!library.rules().containsKey(rule)) {
      return Optional.empty();
    }
    return links.computeIfAbsent(
        rule,
        r -> find(new Named(Kind.RULE, r), library).map(at -> at.getUri() + "#L" + (at.getRange().getStart().getLine() + 1)));
  }

  private static Optional<Span> name(Tree.Item item, Named thing) {
    if (item instanceof Tree.Part part && thing.kind() == Kind.PART) {
      String words = String.join(" ", part.name().stream().map(Tree.Word::text).toList());
      return words.equals(thing.name()) ? Optional.of(part.name().get(0).span()) : Optional.empty();
    }
    Optional<Tree.Word> word = Optional.empty();
    if (item instanceof Tree.CableType cable && thing.kind() == Kind.CABLE) {
      word = Optional.of(cable.name());
    } else if (item instanceof Tree.Pack pack && thing.kind() == Kind.PACK) {
      word = Optional.of(pack.name());
    } else if (item instanceof Tree.Table table && thing.kind() == Kind.TABLE) {
      word = Optional.of(table.name());
    } else if (item instanceof Tree.Limit limit && thing.kind() == Kind.LIMIT) {
      word = Optional.of(limit.name());
    } else if (item instanceof Tree.Rule rule && thing.kind() == Kind.RULE) {
      word = Optional.of(rule.name());
    }
    return word.filter(w -> w.text().equals(thing.name())).map(Tree.Word::span);
  }

  private Optional<Path> written(Source source) {
    try {
      if (folder.isEmpty()) {
        folder = Optional.of(Files.createTempDirectory("wattle-library"));
      }
      Path file = folder.get().resolve(source.name());
      if (!Files.exists(file)) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, source.text(), StandardCharsets.UTF_8);
        file.toFile().setReadOnly();
      }
      return Optional.of(file);
    } catch (IOException e) {
      return Optional.empty(); // no room for it; the hover still tells what the thing is
    }
  }

  @Override
  public void close() throws IOException {
    if (folder.isEmpty()) {
      return;
    }
    List<Path> files = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder.get())) {
      all.sorted(Comparator.reverseOrder()).forEach(files::add);
    }
    for (Path file : files) {
      Files.deleteIfExists(file);
    }
  }
}
