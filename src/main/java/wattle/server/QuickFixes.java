package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.ResourceOperation;
import org.eclipse.lsp4j.TextDocumentEdit;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import wattle.finding.Edit;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Span;

/** The fixes of findings that touch a range, as edits; a fix that is an order to a person is in the message only. */
final class QuickFixes {
  private QuickFixes() {}

  static List<Either<Command, CodeAction>> answer(Question question, CodeActionParams params, Editor editor) {
    List<String> only = params.getContext() == null ? null : params.getContext().getOnly();
    if (only != null && only.stream().noneMatch(k -> k.isEmpty() || k.equals(CodeActionKind.QuickFix))) {
      return List.of();
    }
    int from = question.offset(params.getRange().getStart());
    int to = question.offset(params.getRange().getEnd());
    List<Either<Command, CodeAction>> actions = new ArrayList<>();
    for (Finding finding : question.analysis().findingsIn(question.file())) {
      Span at = finding.place().orElseThrow().span();
      if (finding.silenced().isPresent() || at.start() > to || at.end() < from) {
        continue;
      }
      boolean alone = finding.fixes().stream().filter(f -> !f.edits().isEmpty()).count() == 1;
      for (Fix fix : finding.fixes()) {
        // Several findings may have one cause, such as a breaker that is too large for each of its runs.
        edit(fix, question.analysis(), editor)
            .filter(edit -> FixOnTrial.stands(fix, List.of(finding), question.analysis()))
            .ifPresent(edit -> add(actions, action(finding, fix, edit, alone && fix.safety() == Fix.Safety.SAFE, params)));
      }
      ManyFixes.ofAllLike(finding, question.analysis())
          .flatMap(fix -> edit(fix, question.analysis(), editor).map(edit -> action(finding, fix, edit, false, params)))
          .ifPresent(action -> add(actions, action));
      SilenceFix.of(finding, question.analysis())
          .flatMap(fix -> edit(fix, question.analysis(), editor).map(edit -> action(finding, fix, edit, false, params)))
          .ifPresent(action -> add(actions, action));
    }
    return actions;
  }

  private static void add(List<Either<Command, CodeAction>> actions, CodeAction action) {
    if (actions.stream().noneMatch(a -> a.getRight().getEdit().equals(action.getEdit()))) {
      actions.add(Either.forRight(action));
    }
  }

  private static CodeAction action(
      Finding finding, Fix fix, WorkspaceEdit edit, boolean preferred, CodeActionParams params) {
    CodeAction action = new CodeAction(fix.order());
    action.setKind(CodeActionKind.QuickFix);
    action.setEdit(edit);
    action.setIsPreferred(preferred);
    action.setDiagnostics(diagnostics(finding, params));
    return action;
  }

  /** Those of the editor's own diagnostics that this finding is. */
  private static List<Diagnostic> diagnostics(Finding finding, CodeActionParams params) {
    if (params.getContext() == null || params.getContext().getDiagnostics() == null) {
      return List.of();
    }
    return params.getContext().getDiagnostics().stream()
        .filter(d -> d.getCode() != null && d.getCode().isLeft() && finding.rule().equals(d.getCode().getLeft()))
        .toList();
  }

  /** Absent where there is nothing to edit, or where some of it lies outside the plan's own files. */
  private static Optional<WorkspaceEdit> edit(Fix fix, Analysis analysis, Editor editor) {
    if (fix.edits().isEmpty() || !fix.edits().stream().allMatch(e -> analysis.fileOf(e.span()).isPresent())) {
      return Optional.empty();
    }
    Map<Path, List<TextEdit>> edits = new LinkedHashMap<>();
    for (Edit edit : fix.edits()) {
      Path file = analysis.fileOf(edit.span()).orElseThrow();
      edits
          .computeIfAbsent(file, f -> new ArrayList<>())
          .add(new TextEdit(analysis.range(file, edit.span()), edit.text()));
    }
    return Optional.of(workspaceEdit(edits, analysis.buffers(), editor));
  }

  /** Edits by file, tied to the versions that they are for where the editor can take that. */
  static WorkspaceEdit workspaceEdit(Map<Path, List<TextEdit>> edits, Buffers buffers, Editor editor) {
    if (!editor.versionedEdits()) {
      Map<String, List<TextEdit>> byUri = new LinkedHashMap<>();
      edits.forEach((file, list) -> byUri.put(buffers.uri(file), list));
      return new WorkspaceEdit(byUri);
    }
    List<Either<TextDocumentEdit, ResourceOperation>> changes = new ArrayList<>();
    edits.forEach(
        (file, list) -> changes.add(
            Either.forLeft(
                new TextDocumentEdit(
                    new VersionedTextDocumentIdentifier(
                        buffers.uri(file), buffers.at(file).map(Buffer::version).orElse(null)),
                    list))));
    return new WorkspaceEdit(changes);
  }
}
