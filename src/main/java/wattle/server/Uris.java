package wattle.server;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;

/** Paths for the names that editors give to documents. */
final class Uris {
  private Uris() {}

  /** Where a document lies; one that is no file yet is taken to lie in the folder that the server was started in. */
  static Path path(String uri) {
    try {
      URI parsed = new URI(uri);
      if ("file".equals(parsed.getScheme())) {
        return Path.of(parsed).toAbsolutePath().normalize();
      }
    } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException e) {
      return unsaved(uri); // a name that is no address is still a name
    }
    return unsaved(uri);
  }

  private static Path unsaved(String uri) {
    return Path.of(uri.replaceAll("[^A-Za-z0-9.-]", "_")).toAbsolutePath().normalize();
  }
}
