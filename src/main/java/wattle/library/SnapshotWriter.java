package wattle.library;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import wattle.finding.Citation;
import wattle.model.DeviceKind;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** Writes what {@link SnapshotReader} reads. */
final class SnapshotWriter {
  static final int NONE = 0;
  static final int FIGURE = 1;
  static final int SIZE = 2;
  static final int WORDS = 3;
  static final int RANGE = 4;

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final DataOutputStream out = new DataOutputStream(bytes);

  byte[] bytes() {
    return bytes.toByteArray();
  }

  void number(int number) {
    run(() -> out.writeInt(number));
  }

  void text(String text) {
    run(() -> out.writeUTF(text));
  }

  void real(double number) {
    run(() -> out.writeDouble(number));
  }

  void flag(boolean flag) {
    run(() -> out.writeBoolean(flag));
  }

  private void texts(Collection<String> texts) {
    number(texts.size());
    texts.forEach(this::text);
  }

  void words(Map<String, String> words) {
    number(words.size());
    words.forEach((name, value) -> {
      text(name);
      text(value);
    });
  }

  /** Each thing behind its name and its length, so that it can be passed over. */
  <V> void named(Map<String, V> things, BiConsumer<SnapshotWriter, V> write) {
    number(things.size());
    things.forEach((name, value) -> {
      SnapshotWriter body = new SnapshotWriter();
      write.accept(body, value);
      text(name);
      number(body.bytes().length);
      run(() -> out.write(body.bytes()));
    });
  }

  private void unit(Unit unit) {
    text(unit.symbol());
    boolean known = Units.find(unit.symbol()).filter(unit::equals).isPresent();
    flag(known);
    if (!known) {
      Dimension d = unit.dimension();
      List.of(d.meter(), d.kilogram(), d.second(), d.ampere(), d.kelvin()).forEach(this::number);
      real(unit.factor());
      real(unit.offset());
    }
  }

  private void quantity(Quantity quantity) {
    real(quantity.si());
    unit(quantity.unit());
  }

  private void quantity(Optional<Quantity> quantity) {
    flag(quantity.isPresent());
    quantity.ifPresent(this::quantity);
  }

  void part(DeviceKind kind) {
    text(kind.name());
    number(kind.family().ordinal());
    ordinals(kind.needs());
    texts(kind.halves());
    number(kind.loadClass().map(Enum::ordinal).orElse(-1));
    flag(kind.outlet());
    number(kind.yokes());
    quantity(kind.rating());
    real(kind.shareOnLegs());
    real(kind.powerFactor());
    number(kind.behavior().ordinal());
    number(kind.ways());
    ordinals(kind.protections());
    flag(kind.motor());
    number(kind.grid().map(Enum::ordinal).orElse(-1));
  }

  private void ordinals(Collection<? extends Enum<?>> members) {
    number(members.size());
    members.stream().map(Enum::ordinal).sorted().forEach(this::number);
  }

  void cable(CableKind kind) {
    text(kind.name());
    text(kind.label());
    number(kind.metal().ordinal());
    real(kind.insulationCelsius());
    text(kind.material());
    real(kind.ampacityCelsius());
    flag(kind.single());
    text(kind.ground());
    number(kind.hots());
    flag(kind.neutral());
    texts(kind.colors());
    text(kind.neutralColor());
    words(new TreeMap<>(kind.groundSizes()));
    texts(new TreeSet<>(kind.places()));
  }

  void limit(Limit limit) {
    text(limit.name());
    text(limit.label());
    quantity(limit.value());
    citations(limit.citations());
  }

  void citations(List<Citation> citations) {
    number(citations.size());
    for (Citation citation : citations) {
      text(citation.work());
      text(citation.place());
      flag(citation.verify());
    }
  }

  void table(Table table) {
    text(table.name());
    text(table.label());
    citations(table.citations());
    number(table.columns().size());
    for (Table.Column column : table.columns()) {
      text(column.name());
      flag(column.unit().isPresent());
      column.unit().ifPresent(this::unit);
      flag(column.sizes());
    }
    number(table.rows().size());
    for (Table.Row row : table.rows()) {
      flag(row.fromMemory());
      row.cells().forEach(this::cell);
    }
  }

  private void cell(Cell cell) {
    if (cell instanceof Cell.None) {
      number(NONE);
    } else if (cell instanceof Cell.Figure figure) {
      number(FIGURE);
      quantity(figure.quantity());
    } else if (cell instanceof Cell.Size size) {
      number(SIZE);
      size(size.size());
    } else if (cell instanceof Cell.Words words) {
      number(WORDS);
      text(words.text());
    } else if (cell instanceof Cell.Range range) {
      number(RANGE);
      quantity(range.least());
      quantity(range.most());
    } else {
      throw new AssertionError(cell);
    }
  }

  private void size(WireSize size) {
    number(size.kind().ordinal());
    real(size.number());
  }

  private interface Write {
    void run() throws IOException;
  }

  private static void run(Write write) {
    try {
      write.run();
    } catch (IOException e) {
      throw new UncheckedIOException("memory cannot be written", e);
    }
  }
}
