package wattle.server;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** What may be written at a place, in the order in which it is offered; a word is offered once. */
final class Proposals {
  private final Range replaced;
  private final Set<String> seen = new HashSet<>();
  private final List<CompletionItem> items = new ArrayList<>();

  /**
   * @param replaced the word begun, which a proposal takes the place of
   */
  Proposals(Range replaced) {
    this.replaced = replaced;
  }

  Proposals add(String text, String detail, CompletionItemKind kind) {
    if (seen.add(text)) {
      CompletionItem item = new CompletionItem(text);
      item.setKind(kind);
      item.setDetail(detail);
      item.setSortText(String.format(java.util.Locale.ROOT, "%05d", items.size()));
      item.setTextEdit(Either.forLeft(new TextEdit(replaced, text)));
      items.add(item);
    }
    return this;
  }

  /** Words of the notation. */
  Proposals words(String detail, String... words) {
    for (String word : words) {
      add(word, detail, CompletionItemKind.Keyword);
    }
    return this;
  }

  Proposals units(String... units) {
    for (String unit : units) {
      add(unit, "unit", CompletionItemKind.Unit);
    }
    return this;
  }

  /** Takes back what could not be read at this place. */
  void keep(Predicate<String> readable) {
    items.removeIf(item -> !readable.test(item.getTextEdit().getLeft().getNewText()));
  }

  List<CompletionItem> items() {
    return items;
  }
}
