package wattle.syntax;

import java.util.Optional;
import wattle.syntax.grammar.WattleParser.*;

/** Reads packs, parts, cable types, tables and limits. */
final class LibraryReader {
  private final Pieces pieces;

  LibraryReader(Pieces pieces) {
    this.pieces = pieces;
  }

  Optional<Tree.Item> pack(PackContext context) {
    return context.word().isEmpty()
        ? Optional.empty()
        : pieces
            .word(context.word(0))
            .map(
                name -> new Tree.Pack(
                    name,
                    pieces.text(context.STRING()),
                    context.word().size() > 1 ? pieces.word(context.word(1)) : Optional.empty(),
                    pieces.span(context)));
  }

  Optional<Tree.Item> part(PartContext context) {
    return Optional.of(
        new Tree.Part(
            partName(context),
            Pieces.each(context.property(), this::property),
            Pieces.each(context.citation(), pieces::citation),
            pieces.span(context)));
  }

  private java.util.List<Tree.Word> partName(PartContext context) {
    return context.children.stream()
        .filter(c -> c instanceof WordContext || c instanceof BreakerTraitContext)
        .flatMap(c -> pieces.word((org.antlr.v4.runtime.ParserRuleContext) c).stream())
        .toList();
  }

  Optional<Tree.Item> cable(CableContext context) {
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.CableType(
                name,
                pieces.text(context.STRING()),
                Pieces.each(context.property(), this::property),
                Pieces.each(context.citation(), pieces::citation),
                pieces.span(context)));
  }

  private Optional<Tree.Property> property(PropertyContext context) {
    return pieces
        .word(context.word())
        .map(name -> new Tree.Property(name, Pieces.each(context.propertyValue(), this::value), pieces.span(context)));
  }

  private Optional<Tree.Value> value(PropertyValueContext context) {
    Tree.Value value = new Tree.Value(
        pieces.amount(context.amount()),
        context.word() == null ? pieces.word(context.breakerTrait()) : pieces.word(context.word()), pieces.text(context.STRING()),
        pieces.span(context));
    boolean comma = value.amount().isEmpty() && value.word().isEmpty() && value.text().isEmpty();
    return comma ? Optional.empty() : Optional.of(value);
  }

  Optional<Tree.Item> table(TableContext context) {
    return pieces
        .word(context.word())
        .map(
            name -> new Tree.Table(
                name,
                pieces.text(context.STRING()),
                context.columns().stream().flatMap(c -> Pieces.each(c.column(), this::column).stream()).toList(),
                Pieces.each(context.row(), this::row),
                Pieces.each(context.citation(), pieces::citation),
                pieces.span(context)));
  }

  private Optional<Tree.Column> column(ColumnContext context) {
    Optional<Tree.Word> unit = Optional.ofNullable(context.unit()).map(pieces::spanned);
    return pieces.word(context.word()).map(name -> new Tree.Column(name, unit, pieces.span(context)));
  }

  private Optional<Tree.Row> row(RowContext context) {
    return Optional.of(
        new Tree.Row(
            Pieces.each(context.cell(), this::cell), Pieces.hasToken(context, "memory"), pieces.span(context)));
  }

  private Optional<Tree.Cell> cell(CellContext context) {
    if (context.STRING() != null) {
      return pieces.text(context.STRING()).map(t -> new Tree.Cell(t.value(), Optional.empty(), true, t.span()));
    }
    boolean figure = context.NUMBER().size() == 1 && context.getChildCount() == 1;
    var span = pieces.span(context);
    return Optional.of(
        new Tree.Cell(
            context.getText(),
            figure ? Optional.of(Pieces.number(context.NUMBER(0))) : Optional.empty(),
            false,
            span));
  }

  Optional<Tree.Item> limit(LimitContext context) {
    Optional<Tree.Word> name = pieces.word(context.word());
    Optional<Tree.Expression> value = pieces.amount(context.amount());
    return name.isPresent() && value.isPresent()
        ? Optional.of(
            new Tree.Limit(
                name.get(), pieces.text(context.STRING()), value.get(),
                Pieces.each(context.citation(), pieces::citation), pieces.span(context)))
        : Optional.empty();
  }
}
