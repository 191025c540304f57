package wattle.emit.media.graphviz;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Properties;

/**
 * The C names behind the letters by which the module exports and imports its functions. Each release deals the letters
 * anew; the build reads the table out of the same file as the module itself.
 */
final class ModuleNames {
  private final Map<String, String> letterOfExport = new HashMap<>();
  private final Map<String, String> nameOfImport = new HashMap<>();

  private ModuleNames(Properties table) {
    table.forEach((key, value) -> {
      String name = (String) key;
      if (name.startsWith("export.")) {
        letterOfExport.put(name.substring("export.".length()), (String) value);
      } else {
        nameOfImport.put((String) value, name.substring("import.".length()));
      }
    });
  }

  static ModuleNames load() {
    Properties table = new Properties();
    try (InputStream in = ModuleNames.class.getResourceAsStream("names.properties")) {
      table.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the table of Graphviz's functions", e);
    }
    return new ModuleNames(table);
  }

  /** The letter under which the C function of this name is exported. */
  String export(String name) {
    String letter = letterOfExport.get(name);
    if (letter == null) {
      throw new IllegalStateException("this build of Graphviz exports no function " + name);
    }
    return letter;
  }

  /** The C function that is imported under this letter. */
  String importOf(String letter) {
    String name = nameOfImport.get(letter);
    if (name == null) {
      throw new IllegalStateException("this build of Graphviz imports a function '" + letter + "' without a name");
    }
    return name;
  }
}
