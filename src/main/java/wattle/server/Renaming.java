package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import wattle.compare.Likeness;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Mender;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.model.Room;
import wattle.model.RoomKind;
import wattle.read.SourceReader;
import wattle.rules.Coverage;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * Gives a thing another name wherever it is spoken of, in all files of the plan. The renamed plan is compiled before
 * anything is answered, and a name that would give it other findings is refused: it is taken, or means something else.
 */
final class Renaming {
  private static final Pattern HOLE = Pattern.compile("\\{[^}]*\\}");

  private Renaming() {}

  /** What would be renamed at a position; absent where nothing can be. */
  static Optional<PrepareRenameResult> prepare(Question question, Position position) {
    return renamable(question, position)
        .map(o -> new PrepareRenameResult(question.lines().range(o.span()), o.span().text()));
  }

  private static Optional<Occurrence> renamable(Question question, Position position) {
    Derived derived = question.analysis().derived();
    return derived
        .nameAt(question.source(), question.offset(position))
        .filter(o -> o.thing().isOfThePlan() && derived.declaration(o.thing()).isPresent());
  }

  static WorkspaceEdit rename(Question question, Position position, String name, Editor editor) {
    Occurrence at = renamable(question, position)
        .orElseThrow(() -> refused("nothing of the plan is named here; a panel, branch, room or device has one"));
    if (!isName(name)) {
      throw refused(
          "'" + name + "' is not a name: a letter, then letters, digits and hyphens, and no unit or word with a meaning of its own");
    }
    List<Occurrence> all = question.analysis().derived().of(at.thing());
    Analysis analysis = question.analysis();
    Map<Path, List<Edit>> edits = edits(analysis, at.thing(), all, name);
    hold(analysis, at.thing(), edits, name);
    Map<Path, List<TextEdit>> sent = new LinkedHashMap<>();
    edits.forEach((file, list) -> sent.put(file,
        list.stream().map(e -> new TextEdit(analysis.range(file, e.span()), e.text())).toList()));
    return QuickFixes.workspaceEdit(sent, analysis.buffers(), editor);
  }

  /** The new name wherever the old one stands, and what kind of room it is where only its old name says so. */
  private static Map<Path, List<Edit>> edits(Analysis analysis, Named thing, List<Occurrence> all, String name) {
    Map<Path, List<Edit>> edits = new LinkedHashMap<>();
    for (Occurrence place : all) {
      add(edits, analysis, new Edit(place.span(), filled(thing.word(), place.span().text(), name)));
    }
    if (thing.kind() == Named.Kind.ROOM) {
      for (PlanTree tree : analysis.files().values()) {
        for (Tree.Item item : tree.items()) {
          rooms(item, "", thing).forEach(room -> kind(analysis, thing, room, name).ifPresent(edit -> add(edits, analysis, edit)));
        }
      }
    }
    return edits;
  }

  /** {@code flat3} of a placement {@code flat{n}} that is to be called {@code unit{n}}: unit3. */
  private static String filled(String old, String stands, String name) {
    if (stands.equals(old) || old.indexOf('{') < 0) {
      return name;
    }
    List<String> holes = HOLE.matcher(old).results().map(MatchResult::group).toList();
    StringBuilder shape = new StringBuilder();
    int from = 0;
    for (String hole : holes) {
      int at = old.indexOf(hole, from);
      shape.append(Pattern.quote(old.substring(from, at))).append("([\\p{L}\\d_-]+)");
      from = at + hole.length();
    }
    Matcher filled = Pattern.compile(shape + Pattern.quote(old.substring(from))).matcher(stands);
    String made = name;
    if (filled.matches()) {
      for (int i = 0; i < holes.size(); i++) {
        made = made.replace(holes.get(i), filled.group(i + 1));
      }
    }
    return made;
  }

  private static void add(Map<Path, List<Edit>> edits, Analysis analysis, Edit edit) {
    analysis.fileOf(edit.span()).ifPresent(file -> edits.computeIfAbsent(file, f -> new ArrayList<>()).add(edit));
  }

  private static List<Tree.Room> rooms(Tree.Item item, String in, Named thing) {
    if (item instanceof Tree.Pattern pattern) {
      return pattern.items().stream().flatMap(inside -> rooms(inside, pattern.name().text(), thing).stream()).toList();
    }
    return item instanceof Tree.Room room && room.name().text().equals(thing.name()) && in.equals(thing.pattern())
        ? List.of(room)
        : List.of();
  }

  /** A room called kitchen is one without saying so; under another name it has to be said. */
  private static Optional<Edit> kind(Analysis analysis, Named thing, Tree.Room room, String name) {
    Optional<String> kind = analysis.inHouse(thing).flatMap(n -> Optional.ofNullable(analysis.house().rooms().get(n))).flatMap(Room::kind);
    if (kind.isEmpty() || room.kind().isPresent()) {
      return Optional.empty();
    }
    Span after = analysis.placed(room.label().map(Tree.Text::span).orElse(room.name().span()));
    Optional<String> byName = RoomKind.named(name).or(() -> room.label().flatMap(l -> RoomKind.named(l.value()))).map(RoomKind::word);
    return byName.equals(kind)
        ? Optional.empty()
        : Optional.of(new Edit(after.source().span(after.end(), after.end()), " is " + kind.get()));
  }

  /** Whether the notation takes it as a name, by its own grammar. */
  private static boolean isName(String name) {
    var read = PlanParser.parse(new Source("", "room " + name + " { " + name + ": light }"));
    PlanTree tree = read.value();
    return read.findings().isEmpty()
        && tree.items().size() == 1
        && tree.items().get(0) instanceof Tree.Room room
        && room.name().text().equals(name)
        && room.devices().size() == 1;
  }

  /** Compiles the plan as it would be, and refuses what would be another house or have other findings. */
  private static void hold(Analysis analysis, Named thing, Map<Path, List<Edit>> edits, String name) {
    Map<Path, String> texts = new HashMap<>();
    analysis.files().forEach((path, tree) -> texts.put(path, tree.source().text()));
    try {
      // Compiled anew: of the text as it stands, not all may have been judged yet.
      Compilation before = compile(texts, analysis.plan());
      texts.replaceAll((path, text) -> Mender.apply(text, edits.getOrDefault(path, List.of())));
      Compilation after = compile(texts, analysis.plan());
      Optional<String> why = otherFinding(before.findings(), after.findings())
          .or(() -> Likeness.difference(before.house(), after.house()))
          .or(() -> otherCoverage(before.coverage(), after.coverage()));
      if (why.isPresent()) {
        throw refused("the " + thing.kind() + " '" + thing.name() + "' cannot be called '" + name + "': " + why.get());
      }
    } catch (SourceReader.Unreadable e) {
      throw refused(e.getMessage());
    }
  }

  private static Compilation compile(Map<Path, String> texts, Path plan) throws SourceReader.Unreadable {
    return new Compiler(new SourceReader(texts, SourceReader.USUAL_MOST_BYTES)).compile(plan);
  }

  /** A finding of a rule that has more of them after, or else fewer. */
  private static Optional<String> otherFinding(List<Finding> before, List<Finding> after) {
    Map<String, Long> was = rules(before);
    Map<String, Long> is = rules(after);
    return after.stream().filter(f -> is.get(f.rule()) > was.getOrDefault(f.rule(), 0L)).findFirst().map(Finding::headline)
        .or(() -> before.stream().filter(f -> is.getOrDefault(f.rule(), 0L) < was.get(f.rule())).findFirst()
            .map(f -> "a finding would no longer be there: " + f.headline()));
  }

  private static Optional<String> otherCoverage(Coverage before, Coverage after) {
    return before.told() == after.told() && before.open() == after.open()
        ? Optional.empty()
        : Optional.of("rules would be checked at " + after.told() + " places and not at " + before.told());
  }

  private static Map<String, Long> rules(List<Finding> findings) {
    return findings.stream().collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
  }

  private static ResponseErrorException refused(String why) {
    return new ResponseErrorException(new ResponseError(ResponseErrorCode.RequestFailed, why, null));
  }
}
