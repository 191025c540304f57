package wattle.fuzz;

import com.code_intelligence.jazzer.api.BugDetectors;
import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import wattle.live.PageTarget;
import wattle.server.ProtocolTarget;

/** The language server and the live page under the coverage-guided fuzzer: {@code -Dfuzz.target=wattle.fuzz.ServerFuzz}. */
public final class ServerFuzz {
  private static final ProtocolTarget EDITOR;
  private static final PageTarget PAGE;

  static {
    try {
      List<String> texts = List.of(Files.readString(Path.of("examples/broken/unit-missing.wattle")),
          Files.readString(Path.of("examples/broken/pattern-unused.wattle")), "plan \"P\"\n");
      EDITOR = new ProtocolTarget(texts, Files.createTempDirectory("wattle-fuzz").toUri().toString());
      PAGE = new PageTarget(Path.of("examples/cottage/house.wattle"));
    } catch (IOException e) {
      throw new ExceptionInInitializerError(e);
    }
  }

  private ServerFuzz() {}

  /** Runs each once, since the first run loads all classes, each of which the fuzzer works on: that takes longer than an input may. */
  public static void fuzzerInitialize() throws IOException {
    BugDetectors.allowNetworkConnections((host, port) -> Set.of("127.0.0.1", "localhost").contains(host));
    for (int seed = 0; seed < 20; seed++) {
      EDITOR.take(new Random(seed));
      PAGE.take(new Random(seed));
    }
  }

  /** The entry that the fuzzer looks for. */
  public static void fuzzerTestOneInput(FuzzedDataProvider data) {
    try {
      if (data.consumeBoolean()) {
        EDITOR.take(new Random(data.consumeLong()));
      } else {
        PAGE.take(new Random(data.consumeLong()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
