package wattle.compiler;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Texts that the build lays beside this package. */
final class BuildText {
  private BuildText() {}

  /** A text by the name of its file; a build that lacks it is broken. */
  static String of(String name) {
    try (InputStream in = BuildText.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is missing from this build");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + name, e);
    }
  }
}
