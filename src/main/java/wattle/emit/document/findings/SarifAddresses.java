package wattle.emit.document.findings;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import wattle.finding.Span;

/**
 * Addresses of files as a code host finds them: relative to the root of the repository, whose own address stands once in the log
 * (SARIF 2.1.0, 3.14.14 and 3.4.4). What lies outside of it has its whole address; what is no file, such as standard input, its name.
 *
 * @param working folder that names of files are relative to
 * @param root folder that addresses are relative to
 */
record SarifAddresses(Path working, Path root) {
  private static final String BASE = "REPOSITORY";

  SarifAddresses {
    working = working.toAbsolutePath().normalize();
    root = root.toAbsolutePath().normalize();
  }

  /** The addresses that others are relative to. */
  void bases(ObjectNode bases) {
    String folder = uri("file", root.toUri().getPath());
    bases.putObject(BASE).put("uri", folder.endsWith("/") ? folder : folder + "/");
  }

  void address(ObjectNode location, Span span) {
    ObjectNode artifact = location.putObject("artifactLocation");
    String name = span.source().name();
    Path file;
    try {
      file = working.resolve(name).normalize();
    } catch (InvalidPathException e) {
      // A name that this machine cannot have for a file is that of a text which came from elsewhere.
      artifact.put("uri", uri(null, name));
      return;
    }
    if (file.startsWith(root)) {
      artifact.put("uri", uri(null, root.relativize(file).toString().replace('\\', '/'))).put("uriBaseId", BASE);
    } else {
      artifact.put("uri", uri("file", file.toUri().getPath()));
    }
  }

  private static String uri(String scheme, String path) {
    try {
      // A colon in the first part of a path would be read as the end of a scheme.
      boolean colon = scheme == null && path.indexOf(':') >= 0;
      return new URI(scheme, scheme == null ? null : "", colon ? "./" + path : path, null).toASCIIString();
    } catch (URISyntaxException e) {
      throw new IllegalStateException("a file name that is not a path: " + path, e);
    }
  }
}
