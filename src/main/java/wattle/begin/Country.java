package wattle.begin;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Where a house is, from which its code pack follows. */
public enum Country {
  UNITED_STATES("us", "us-2023"), CANADA("ca", "ca-2021"), OTHER("other", "none");

  private final String word;
  private final String code;

  Country(String word, String code) {
    this.word = word;
    this.code = code;
  }

  /** As it is asked for. */
  public String word() {
    return word;
  }

  /** Its code pack; {@code none} where the library has none. */
  public String code() {
    return code;
  }

  /** The country of a word, in any case. */
  public static Optional<Country> of(String word) {
    return Arrays.stream(values()).filter(c -> c.word.equals(word.strip().toLowerCase(Locale.ROOT))).findFirst();
  }
}
