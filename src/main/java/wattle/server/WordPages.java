package wattle.server;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What words of the trade say that stand in a plan and name nothing: traits, places, facts. */
final class WordPages {
  private static final Map<String, String> MEANINGS = read();

  private WordPages() {}

  /** Absent for a word that has no page. */
  static Optional<Page> of(String word) {
    String key = word.startsWith("code-") ? "code letter" : word;
    return key.equals("code letter")
        ? Optional.of(new Page().title(word, "code letter of a motor, its locked-rotor kVA for each horsepower"))
        : Optional.ofNullable(MEANINGS.get(key)).map(m -> new Page().title(word, m));
  }

  private static Map<String, String> read() {
    try (InputStream in = WordPages.class.getResourceAsStream("words.txt");
        BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().map(l -> l.split(": ", 2)).collect(Collectors.toUnmodifiableMap(w -> w[0], w -> w[1]));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
