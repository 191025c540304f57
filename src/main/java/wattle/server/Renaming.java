package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import wattle.compiler.Compiler;
import wattle.edit.Mender;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * Gives a thing another name wherever it is spoken of, in all files of the plan. The renamed plan is compiled before
 * anything is answered, and a name that would give it other findings is refused: it is taken, or means something else.
 */
final class Renaming {
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
        .orElseThrow(() -> refused("there is no name of the plan here; a panel, branch, room, device or the like has one"));
    if (!isName(name)) {
      throw refused("'" + name + "' is no name: a letter, then letters, digits and hyphens, and no unit or word with a meaning of its own");
    }
    List<Occurrence> all = question.analysis().derived().of(at.thing());
    hold(question.analysis(), at.thing(), all, name);
    Map<Path, List<TextEdit>> edits = new LinkedHashMap<>();
    for (Occurrence place : all) {
      question
          .analysis()
          .fileOf(place.span())
          .ifPresent(
              file -> edits
                  .computeIfAbsent(file, f -> new ArrayList<>())
                  .add(new TextEdit(question.analysis().range(file, place.span()), name)));
    }
    return QuickFixes.workspaceEdit(edits, question.analysis().buffers(), editor);
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

  private static void hold(Analysis analysis, Named thing, List<Occurrence> places, String name) {
    Map<Path, String> texts = new HashMap<>();
    analysis.files().forEach((path, tree) -> texts.put(path, tree.source().text()));
    texts.replaceAll(
        (path, text) -> Mender.apply(
            text,
            places.stream()
                .filter(o -> analysis.fileOf(o.span()).filter(path::equals).isPresent())
                .map(o -> new Edit(o.span(), name))
                .toList()));
    Compiler compiler = new Compiler(new SourceReader(texts, SourceReader.USUAL_MOST_BYTES));
    try {
      List<Finding> after = compiler.compile(analysis.plan()).findings();
      if (!rules(after).equals(rules(analysis.compilation().findings()))) {
        String why = after.stream().findFirst().map(f -> ": " + f.headline()).orElse("");
        throw refused("the " + thing.kind() + " '" + thing.name() + "' cannot be called '" + name + "'" + why);
      }
    } catch (SourceReader.Unreadable e) {
      throw refused(e.getMessage());
    }
  }

  private static Map<String, Long> rules(List<Finding> findings) {
    return findings.stream().collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
  }

  private static ResponseErrorException refused(String why) {
    return new ResponseErrorException(new ResponseError(ResponseErrorCode.RequestFailed, why, null));
  }
}
