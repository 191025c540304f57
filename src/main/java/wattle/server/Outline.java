package wattle.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import wattle.finding.Span;
import wattle.syntax.Tree;

/** The things of a document as a tree: panels with their slots, rooms with boxes and devices, branches, trials. */
final class Outline {
  private final Question question;

  private Outline(Question question) {
    this.question = question;
  }

  /** In the form that the editor takes. */
  static List<Either<SymbolInformation, DocumentSymbol>> answer(Question question, boolean nested) {
    List<DocumentSymbol> symbols = new Outline(question).symbols(question.tree().items());
    List<Either<SymbolInformation, DocumentSymbol>> answer = new ArrayList<>();
    for (DocumentSymbol symbol : symbols) {
      if (nested) {
        answer.add(Either.forRight(symbol));
      } else {
        flatten(symbol, "", question.analysis().buffers().uri(question.file()), answer);
      }
    }
    return answer;
  }

  // Editors without a tree are old ones, and the type for them is old with them.
  @SuppressWarnings("deprecation")
  private static void flatten(
      DocumentSymbol symbol, String container, String uri, List<Either<SymbolInformation, DocumentSymbol>> into) {
    into.add(
        Either.forLeft(
            new SymbolInformation(symbol.getName(), symbol.getKind(), new Location(uri, symbol.getRange()), container)));
    if (symbol.getChildren() != null) {
      symbol.getChildren().forEach(child -> flatten(child, symbol.getName(), uri, into));
    }
  }

  private List<DocumentSymbol> symbols(List<Tree.Item> items) {
    return items.stream().flatMap(item -> symbol(item).stream()).toList();
  }

  private Optional<DocumentSymbol> symbol(Tree.Item item) {
    if (item instanceof Tree.Panel panel) {
      List<DocumentSymbol> slots = panel.statements().stream()
          .filter(Tree.Slot.class::isInstance)
          .map(Tree.Slot.class::cast)
          .map(this::slot)
          .toList();
      return Optional.of(named(panel.name(), panel.label(), "panel", SymbolKind.Class, panel.span(), slots));
    }
    if (item instanceof Tree.Room room) {
      List<DocumentSymbol> inside = new ArrayList<>();
      room.boxes().forEach(b -> inside.add(named(b.name(), Optional.empty(), "box", SymbolKind.Object, b.span(), devices(b.devices()))));
      inside.addAll(devices(room.devices()));
      return Optional.of(named(room.name(), room.label(), "room", SymbolKind.Namespace, room.span(), inside));
    }
    if (item instanceof Tree.Branch branch) {
      return Optional.of(named(branch.name(), branch.label(), "branch", SymbolKind.Function, branch.span(), List.of()));
    }
    if (item instanceof Tree.Pattern pattern) {
      return Optional.of(
          named(pattern.name(), Optional.empty(), "pattern", SymbolKind.Class, pattern.span(), symbols(pattern.items())));
    }
    if (item instanceof Tree.Overriding own) {
      return Optional.of(
          named(own.placement(), Optional.empty(), "override", SymbolKind.Namespace, own.span(), symbols(own.items())));
    }
    if (item instanceof Tree.Placing placing) {
      return Optional.of(
          named(placing.name(), Optional.empty(), "of " + placing.pattern(), SymbolKind.Namespace, placing.span(), List.of()));
    }
    return plain(item);
  }

  private Optional<DocumentSymbol> plain(Tree.Item item) {
    if (item instanceof Tree.Service service) {
      return Optional.of(named(service.name(), service.label(), "service", SymbolKind.Interface, service.span(), List.of()));
    }
    if (item instanceof Tree.Raceway raceway) {
      return Optional.of(named(raceway.name(), raceway.label(), "raceway", SymbolKind.Object, raceway.span(), List.of()));
    }
    if (item instanceof Tree.Trial trial) {
      return Optional.of(named(trial.name(), trial.label(), "trial", SymbolKind.Event, trial.span(), List.of()));
    }
    if (item instanceof Tree.Let let) {
      return Optional.of(named(let.name(), Optional.empty(), "constant", SymbolKind.Constant, let.span(), List.of()));
    }
    if (item instanceof Tree.Part part) {
      String name = String.join(" ", part.name().stream().map(Tree.Word::text).toList());
      Span words = part.name().get(0).span().to(part.name().get(part.name().size() - 1).span());
      return Optional.of(symbol(name, "part", SymbolKind.Struct, part.span(), words, List.of()));
    }
    if (item instanceof Tree.CableType cable) {
      return Optional.of(named(cable.name(), cable.label(), "cable", SymbolKind.Struct, cable.span(), List.of()));
    }
    if (item instanceof Tree.Table table) {
      return Optional.of(named(table.name(), table.label(), "table", SymbolKind.Array, table.span(), List.of()));
    }
    if (item instanceof Tree.Limit limit) {
      return Optional.of(named(limit.name(), limit.label(), "limit", SymbolKind.Constant, limit.span(), List.of()));
    }
    return Optional.empty(); // a heading, a use line, a dwelling, an expectation, a silence: nothing that has a name
  }

  private DocumentSymbol slot(Tree.Slot slot) {
    String target = String.join(" ", slot.words().stream().map(Tree.Word::text).toList());
    String name = slot.slots().span().text() + (target.isEmpty() ? "" : " " + target);
    return symbol(
        name, slot.label().map(Tree.Text::value).orElse("slot"), SymbolKind.Field, slot.span(), slot.slots().span(), List.of());
  }

  private List<DocumentSymbol> devices(List<Tree.Device> devices) {
    return devices.stream()
        .map(d -> named(d.name(), d.label(), words(d), SymbolKind.Field, d.span(), List.of()))
        .toList();
  }

  private static String words(Tree.Device device) {
    return String.join(" ", device.words().stream().map(Tree.Word::text).toList());
  }

  private DocumentSymbol named(
      Tree.Word name, Optional<Tree.Text> label, String kind, SymbolKind symbolKind, Span whole, List<DocumentSymbol> children) {
    return symbol(name.text(), label.map(Tree.Text::value).orElse(kind), symbolKind, whole, name.span(), children);
  }

  private DocumentSymbol symbol(
      String name, String detail, SymbolKind kind, Span whole, Span caret, List<DocumentSymbol> children) {
    // The protocol allows no empty name, and the whole must hold the caret.
    String shown = name.isBlank() ? "?" : name;
    return new DocumentSymbol(shown, kind, question.range(whole.to(caret)), question.range(caret), detail, children);
  }
}
