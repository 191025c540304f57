package wattle.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** The version that the build put into the jar, and the commit in what is handed out. */
final class Version implements IVersionProvider {
  /** Stands where classes are run without a jar. */
  private static final String UNPACKAGED = "unpackaged";

  static String number() {
    String version = Version.class.getPackage().getImplementationVersion();
    return version == null ? UNPACKAGED : version;
  }

  /** What it was made of; absent where it was built from sources that may have been changed since. */
  private static Optional<String> commit() {
    try (InputStream in = Version.class.getResourceAsStream("/META-INF/wattle.commit")) {
      return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8).strip());
    } catch (IOException e) {
      throw new UncheckedIOException("the jar cannot be read", e);
    }
  }

  @Override
  public String[] getVersion() {
    return new String[]{"wattle " + number() + commit().map(c -> " (commit " + c + ")").orElse("")};
  }
}
