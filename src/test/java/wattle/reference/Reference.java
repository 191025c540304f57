package wattle.reference;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Published figures that tests compare with; each row names its source. */
public final class Reference {
  private Reference() {}

  /** All rows of a file, each a map from column to text. */
  public static List<Map<String, String>> rows(String file) {
    List<List<String>> lines = text(file).lines().filter(line -> !line.isBlank()).map(Reference::cells).toList();
    List<Map<String, String>> rows = new ArrayList<>();
    for (List<String> line : lines.subList(1, lines.size())) {
      if (line.size() != lines.get(0).size()) {
        throw new IllegalStateException(file + ": " + line);
      }
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < line.size(); i++) {
        row.put(lines.get(0).get(i), line.get(i));
      }
      rows.add(row);
    }
    if (rows.isEmpty()) {
      throw new IllegalStateException(file + " has no rows");
    }
    return rows;
  }

  private static String text(String file) {
    try (InputStream in = Reference.class.getResourceAsStream("/reference/" + file)) {
      if (in == null) {
        throw new IllegalStateException("no reference file is called " + file);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (char c : line.toCharArray()) {
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}
