package wattle.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The phrases that {@code docs/wording.md} has replaced are in nothing that people read. */
class WordingTest {
  private static final Path WORDING = Path.of("docs/wording.md");
  private static final Pattern BLOCK = Pattern.compile("\"\"\"(.*?)\"\"\"", Pattern.DOTALL);
  private static final Pattern STRING = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*)\"");

  private static List<String> phrases() throws IOException {
    List<String> phrases = new ArrayList<>();
    String text = Files.readString(WORDING);
    for (String line : text.substring(text.indexOf("| --- | --- |")).lines().skip(1).toList()) {
      phrases.addAll(Arrays.asList(line.split("\\|")[1].strip().split("; ")));
    }
    return phrases;
  }

  /** What people read of a file: all of a document, the strings of a program or a library. */
  private static String read(Path file) throws IOException {
    String text = Files.readString(file);
    if (file.toString().endsWith(".md") || file.toString().endsWith(".txt")) {
      return text.replaceAll("\\s+", " ");
    }
    // A comment is for who changes the file.
    String bare = text.replaceAll("(?m)^\\s*(//|\\*|/\\*).*$", "").replaceAll("\"\\s*\\+\\s*\"", "");
    StringBuilder strings = new StringBuilder();
    Matcher block = BLOCK.matcher(bare);
    while (block.find()) {
      strings.append(block.group(1)).append('\n');
    }
    Matcher string = STRING.matcher(BLOCK.matcher(bare).replaceAll(""));
    while (string.find()) {
      strings.append(string.group(1)).append('\n');
    }
    return strings.toString();
  }

  private static List<Path> files() throws IOException {
    List<Path> files = new ArrayList<>();
    for (String folder : List.of("README.md", "docs", "grammar", "stdlib", "examples", "editors", "src/main/java",
        "src/main/resources/wattle")) {
      try (Stream<Path> walked = Files.walk(Path.of(folder))) {
        walked.filter(f -> f.toString().matches(".*\\.(md|txt|java|wattle)") && !f.equals(WORDING)).forEach(files::add);
      }
    }
    return files;
  }

  @Test
  void whatWasReplacedDoesNotComeBack() throws IOException {
    List<String> phrases = phrases();
    assertThat(phrases).hasSizeGreaterThan(30).doesNotHaveDuplicates();
    List<Path> files = files();
    assertThat(files).hasSizeGreaterThan(800);
    TreeSet<String> found = new TreeSet<>();
    for (Path file : files) {
      String text = read(file);
      for (String phrase : phrases) {
        Matcher there = Pattern.compile("(?i)(?<![\\w])" + Pattern.quote(phrase) + "(?!\\w)").matcher(text);
        if (there.find()) {
          found.add(
              file + ": " + phrase + ": " + text.substring(Math.max(0, there.start() - 30), Math.min(text.length(), there.end() + 30)));
        }
      }
    }
    assertThat(found).isEmpty();
  }

  /** The test sees a phrase in a string that is broken over lines, and none in a comment. */
  @Test
  void stringsAreReadAndCommentsAreNot() throws IOException {
    Path file = Files.createTempFile("wording", ".java");
    Files.writeString(file, "// it hangs on this\nString a = \"it hangs\"\n    + \" on that\";\n");
    assertThat(read(file)).contains("it hangs on that").doesNotContain("this");
    Files.delete(file);
  }
}
