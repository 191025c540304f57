package wattle.emit.document.permit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import wattle.emit.media.page.Markup;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetText;

/**
 * A part of the summary: facts, a list, or a table, for a page and for a terminal alike.
 *
 * @param title absent where it goes on with the part before it
 */
sealed interface PermitPart {
  Optional<String> title();

  /** What it contains on a page, under its title. */
  void toPage(Markup body);

  /** The same as lines. */
  String toText(OptionalInt columns);

  /** Names with their values. */
  record Facts(Optional<String> title, List<Fact> facts) implements PermitPart {
    /** One of them. */
    record Fact(String name, String value) {
      public Fact {
        name = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
      }
    }

    public Facts {
      facts = List.copyOf(facts);
    }

    @Override
    public void toPage(Markup body) {
      body.open("table", "class", "facts-table");
      facts.forEach(
          f -> body.open("tr").element("th", f.name, "scope", "row", "class", "label").element("td", f.value).close());
      body.close();
    }

    @Override
    public String toText(OptionalInt columns) {
      StringBuilder text = new StringBuilder();
      facts.forEach(f -> text.append(f.name).append(": ").append(f.value).append('\n'));
      return text.toString();
    }
  }

  /** Sentences, one below the other. */
  record Items(Optional<String> title, List<String> items) implements PermitPart {
    public Items {
      items = List.copyOf(items);
    }

    @Override
    public void toPage(Markup body) {
      body.list(items);
    }

    @Override
    public String toText(OptionalInt columns) {
      StringBuilder text = new StringBuilder();
      items.forEach(i -> text.append("- ").append(i).append('\n'));
      return text.toString();
    }
  }

  /** Rows under heads. */
  record Grid(Optional<String> title, List<String> heads, List<List<String>> rows) implements PermitPart {
    public Grid {
      heads = List.copyOf(heads);
      rows = List.copyOf(rows);
    }

    @Override
    public void toPage(Markup body) {
      body.open("table", "class", "facts-table");
      body.row("th", heads.toArray(String[]::new));
      rows.forEach(r -> body.row("td", r.toArray(String[]::new)));
      body.close();
    }

    @Override
    public String toText(OptionalInt columns) {
      List<Column> named = heads.stream().map(h -> Column.words(h.toLowerCase(Locale.ROOT), h)).toList();
      List<Row> cells = new ArrayList<>();
      rows.forEach(r -> cells.add(Row.of(r.stream().map(Cell::of).toArray(Cell[]::new))));
      return SheetText.plain(List.of(new Sheet("part", "", named, cells, List.of())), columns);
    }
  }
}
