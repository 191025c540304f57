package wattle;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.Charset;

/** Which names files can have for the Java machine that runs the tests: in the locale C none but those of ASCII. */
public final class FileNames {
  private FileNames() {}

  /** Skips a test whose files cannot have the names that it gives them. */
  public static void assumeCanBe(String name) {
    String encoding = System.getProperty("sun.jnu.encoding", Charset.defaultCharset().name());
    assumeTrue(Charset.forName(encoding).newEncoder().canEncode(name),
        "a file cannot be called " + name + " in this locale (" + encoding + "): run the tests in one of UTF-8");
  }
}
