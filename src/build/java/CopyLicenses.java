import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Puts the license of each library beside it, in a folder of its name: the files that its jar holds, and where it holds none the text that
 * {@code licenses/jars.txt} names, with the copyright line there. A library that has neither ends the build.
 *
 * <p>Arguments: folder of the jars, folder of the texts, the license of Wattle, which is the Apache License, folder to write to.
 */
public final class CopyLicenses {
  private static final Pattern OWN = Pattern.compile("(?:META-INF/)?(?:LICENSE|NOTICE|COPYING)[^/]*", Pattern.CASE_INSENSITIVE);

  /** What stands for a library whose jar has no text. */
  private record Stated(String license, String copyright) {}

  private CopyLicenses() {}

  public static void main(String[] arguments) throws IOException {
    Path texts = Path.of(arguments[1]);
    Map<String, Stated> stated = stated(texts.resolve("jars.txt"));
    TreeSet<String> without = new TreeSet<>();
    try (Stream<Path> jars = Files.list(Path.of(arguments[0]))) {
      for (Path jar : jars.filter(j -> j.toString().endsWith(".jar")).sorted().toList()) {
        String name = jar.getFileName().toString().replaceFirst("-[0-9][^/]*\\.jar$", "");
        Path folder = Path.of(arguments[3]).resolve(name);
        Stated known = stated.get(name);
        if (known != null) {
          Path text = known.license.equals("Apache-2.0") ? Path.of(arguments[2]) : texts.resolve(known.license + ".txt");
          write(folder.resolve(known.license + ".txt"), known.copyright + "\n\n" + Files.readString(text));
        } else if (!own(jar, folder)) {
          without.add(name);
        }
      }
    }
    if (!without.isEmpty()) {
      throw new IOException("no license in the jar, and none in " + texts.resolve("jars.txt") + ": " + without);
    }
  }

  private static Map<String, Stated> stated(Path list) throws IOException {
    Map<String, Stated> stated = new LinkedHashMap<>();
    for (String line : Files.readAllLines(list)) {
      List<String> parts = Stream.of(line.split("\\|", -1)).map(String::strip).toList();
      stated.put(parts.get(0), new Stated(parts.get(1), parts.get(2)));
    }
    return stated;
  }

  private static boolean own(Path jar, Path folder) throws IOException {
    boolean found = false;
    try (JarFile file = new JarFile(jar.toFile())) {
      for (JarEntry entry : file.stream().filter(e -> !e.isDirectory() && OWN.matcher(e.getName()).matches()).toList()) {
        String name = entry.getName().substring(entry.getName().lastIndexOf('/') + 1);
        write(folder.resolve(name), new String(file.getInputStream(entry).readAllBytes(), java.nio.charset.StandardCharsets.UTF_8));
        found |= name.toUpperCase(java.util.Locale.ROOT).startsWith("LICENSE");
      }
    }
    return found;
  }

  private static void write(Path file, String text) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }
}
