package distribution;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;

/**
 * A package by deb(5): an ar of control and data. The program lies in {@code /usr/share/wattle} as it does in the zip, with a link to its
 * launcher on the path.
 */
final class DebianPackage {
  private static final String HOME = "usr/share/wattle";
  private static final String DOC = "usr/share/doc/wattle";

  private DebianPackage() {}

  static void write(Tree program, Path home, Path built, String version, Instant time, Path file) throws IOException {
    Tree data = new Tree();
    program.entries().forEach((name, entry) -> {
      boolean ofOtherShells = name.endsWith(".cmd") || name.startsWith("man/") || name.startsWith("completion/");
      if (!ofOtherShells && !name.equals("LICENSE") && !name.startsWith("licenses/") && !name.equals("NOTICE")) {
        data.add(HOME + "/" + name, entry.bytes(), entry.executable());
      }
    });
    data.link("usr/bin/wattle", "../share/wattle/bin/wattle");
    for (Map.Entry<String, Tree.Entry> page : new Tree().addAll("man1", built.resolve("man/man1")).entries().entrySet()) {
      data.add("usr/share/man/" + page.getKey() + ".gz", Archives.gzip(page.getValue().bytes()), false);
    }
    data.text("usr/share/bash-completion/completions/wattle",
        Files.readString(built.resolve("completion/wattle.bash")).replaceFirst("^#!.*\\R", ""));
    data.text("usr/share/lintian/overrides/wattle",
        "# The libraries lie beside the jar, as its manifest says.\nwattle: classpath-contains-relative-path *\n");
    data.text(DOC + "/copyright", copyright(home));
    data.addAll(DOC + "/licenses", built.resolve("licenses"));
    String date = DateTimeFormatter.RFC_1123_DATE_TIME.withLocale(Locale.ROOT).format(time.atOffset(ZoneOffset.UTC))
        .replaceFirst("^(\\w+), (\\d) ", "$1, 0$2 ").replace("GMT", "+0000");
    data.add(DOC + "/changelog.gz", Archives.gzip(("wattle (" + version + ") unstable; urgency=low\n\n  * Release " + version
        + ".\n\n -- " + MAINTAINER + "  " + date + "\n").getBytes(StandardCharsets.UTF_8)), false);
    Tree control = new Tree().text("control", control(data, version)).text("md5sums", sums(data));
    ByteArrayOutputStream ar = new ByteArrayOutputStream();
    ar.write("!<arch>\n".getBytes(StandardCharsets.US_ASCII));
    member(ar, "debian-binary", "2.0\n".getBytes(StandardCharsets.US_ASCII), time);
    member(ar, "control.tar.gz", Archives.tarGz(control, "./", time), time);
    member(ar, "data.tar.gz", Archives.tarGz(data, "./", time), time);
    Files.write(file, ar.toByteArray());
  }

  /** The format wants an address; the domain is one that never exists (RFC 2606). */
  private static final String MAINTAINER = "The authors of Wattle <maintainers@wattle.invalid>";

  private static String control(Tree data, String version) {
    long bytes = data.entries().values().stream().mapToLong(e -> e.bytes().length).sum();
    return """
        Package: wattle
        Version: %s
        Architecture: all
        Maintainer: %s
        Installed-Size: %d
        Depends: default-jre-headless (>= 2:1.17) | java17-runtime-headless | openjdk-17-jre-headless
        Section: science
        Priority: optional
        Description: text notation for the wiring of a house, and its compiler
         Wattle checks, draws and documents house wiring that is written as text:
         panel schedules, load calculations, voltage drop, fault currents, box fill
         and what to switch off before a box is opened.
         .
         Its figures are an aid: the adopted local code and a licensed person decide.
        """.formatted(version, MAINTAINER, (bytes + 1023) / 1024);
  }

  private static String copyright(Path home) throws IOException {
    return Files.readString(home.resolve("NOTICE")) + "\nThe Apache License, Version 2.0, is in /usr/share/common-licenses/Apache-2.0.\n"
        + "The license of each library is in /usr/share/doc/wattle/licenses.\n";
  }

  private static String sums(Tree data) {
    StringBuilder sums = new StringBuilder();
    data.entries().forEach((name, entry) -> {
      if (entry.link().isEmpty()) {
        sums.append(HexFormat.of().formatHex(digest("MD5", entry.bytes()))).append("  ").append(name).append('\n');
      }
    });
    return sums.toString();
  }

  static byte[] digest(String algorithm, byte[] bytes) {
    try {
      return MessageDigest.getInstance(algorithm).digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java machine has " + algorithm, e);
    }
  }

  private static void member(ByteArrayOutputStream ar, String name, byte[] bytes, Instant time) throws IOException {
    ar.write(String.format("%-16s%-12d%-6d%-6d%-8s%-10d`\n", name, time.getEpochSecond(), 0, 0, "100644", bytes.length)
        .getBytes(StandardCharsets.US_ASCII));
    ar.write(bytes);
    if (bytes.length % 2 == 1) {
      ar.write('\n');
    }
  }
}
