package wattle.library;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import wattle.finding.Citation;
import wattle.model.DeviceKind;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Metal;
import wattle.model.Protection;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** Reads what {@link SnapshotWriter} wrote. Plain loops: this runs once in a process, before anything is warm. */
final class SnapshotReader {
  private final byte[] bytes;
  private final ByteBuffer in;

  SnapshotReader(byte[] bytes, int from) {
    this.bytes = bytes;
    this.in = ByteBuffer.wrap(bytes).position(from);
  }

  int number() {
    return in.getInt();
  }

  String text() {
    int length = in.getShort() & 0xFFFF;
    String text = new String(bytes, in.position(), length, StandardCharsets.UTF_8);
    in.position(in.position() + length);
    return text;
  }

  double real() {
    return in.getDouble();
  }

  boolean flag() {
    return in.get() != 0;
  }

  private List<String> texts() {
    List<String> texts = new ArrayList<>();
    for (int n = number(); n > 0; n--) {
      texts.add(text());
    }
    return texts;
  }

  Map<String, String> words() {
    Map<String, String> words = new LinkedHashMap<>();
    for (int n = number(); n > 0; n--) {
      String name = text();
      words.put(name, text());
    }
    return words;
  }

  /** Things that are read when they are asked for. */
  <V> Lazy<V> named(Function<SnapshotReader, V> read) {
    Map<String, Supplier<V>> makers = new LinkedHashMap<>();
    for (int n = number(); n > 0; n--) {
      String name = text();
      int length = number();
      int at = in.position();
      makers.put(name, () -> read.apply(new SnapshotReader(bytes, at)));
      in.position(at + length);
    }
    return new Lazy<>(makers);
  }

  private Unit unit() {
    String symbol = text();
    if (flag()) {
      return symbol.isEmpty() ? Units.ONE : Units.find(symbol).orElseThrow();
    }
    Dimension dimension = new Dimension(number(), number(), number(), number(), number());
    return new Unit(symbol, dimension, real(), real());
  }

  private Quantity quantity() {
    double si = real();
    return new Quantity(si, unit());
  }

  DeviceKind part() {
    return new DeviceKind(
        text(),
        DeviceKind.Family.values()[number()],
        members(DeviceKind.Need.values()),
        texts(),
        loadClass(number()),
        flag(),
        number(),
        flag() ? Optional.of(quantity()) : Optional.empty(),
        real(),
        real(),
        Load.Behavior.values()[number()],
        number(),
        members(Protection.values()),
        flag(),
        grid(number()));
  }

  private static Optional<DeviceKind.Grid> grid(int ordinal) {
    return ordinal < 0 ? Optional.empty() : Optional.of(DeviceKind.Grid.values()[ordinal]);
  }

  private static Optional<LoadClass> loadClass(int ordinal) {
    return ordinal < 0 ? Optional.empty() : Optional.of(LoadClass.values()[ordinal]);
  }

  private <E> Set<E> members(E[] all) {
    Set<E> members = new HashSet<>();
    for (int n = number(); n > 0; n--) {
      members.add(all[number()]);
    }
    return members;
  }

  CableKind cable() {
    return new CableKind(
        text(), text(), Metal.values()[number()], real(), text(), real(), flag(), text(), number(), flag(), texts(), text(),
        words(), new HashSet<>(texts()));
  }

  Limit limit() {
    return new Limit(text(), text(), quantity(), citations());
  }

  List<Citation> citations() {
    List<Citation> citations = new ArrayList<>();
    for (int n = number(); n > 0; n--) {
      citations.add(new Citation(text(), text(), flag()));
    }
    return citations;
  }

  Table table() {
    String name = text();
    String label = text();
    List<Citation> citations = citations();
    List<Table.Column> columns = new ArrayList<>();
    for (int n = number(); n > 0; n--) {
      columns.add(new Table.Column(text(), flag() ? Optional.of(unit()) : Optional.empty(), flag()));
    }
    List<Table.Row> rows = new ArrayList<>();
    for (int n = number(); n > 0; n--) {
      boolean fromMemory = flag();
      List<Cell> cells = new ArrayList<>();
      for (int c = 0; c < columns.size(); c++) {
        cells.add(cell());
      }
      rows.add(new Table.Row(cells, fromMemory));
    }
    return new Table(name, label, columns, rows, citations);
  }

  private Cell cell() {
    int kind = number();
    return switch (kind) {
      case SnapshotWriter.NONE -> new Cell.None();
      case SnapshotWriter.FIGURE -> new Cell.Figure(quantity());
      case SnapshotWriter.SIZE -> new Cell.Size(new WireSize(WireSize.Kind.values()[number()], real()));
      case SnapshotWriter.WORDS -> new Cell.Words(text());
      case SnapshotWriter.RANGE -> new Cell.Range(quantity(), quantity());
      default -> throw new AssertionError("no cell is of kind " + kind);
    };
  }
}
