package distribution;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Archives whose bytes follow from their files alone: one order, one time, one owner. */
final class Archives {
  private static final int BLOCK = 512;
  private static final int NAME = 100;
  /** RFC 1952: the byte that tells how hard it was tried, which the library leaves 0 and checkers of packages look at. */
  private static final int EXTRA_FLAGS = 8;
  private static final byte SLOWEST = 2;

  private Archives() {}

  private static final class Smallest extends GZIPOutputStream {
    Smallest(OutputStream to) throws IOException {
      super(to);
      def.setLevel(Deflater.BEST_COMPRESSION);
    }
  }

  /** A zip that keeps which files can be run, for shells that unpack it. */
  static void zip(Tree tree, Instant time, Path file) throws IOException {
    Files.deleteIfExists(file);
    URI uri = URI.create("jar:" + file.toUri());
    try (FileSystem zip = FileSystems.newFileSystem(uri, Map.of("create", "true", "enablePosixFileAttributes", "true"))) {
      for (String folder : tree.folders()) {
        Path made = Files.createDirectory(zip.getPath(folder));
        stamp(made, true, time);
      }
      for (Map.Entry<String, Tree.Entry> each : tree.entries().entrySet()) {
        Path made = Files.write(zip.getPath(each.getKey()), each.getValue().bytes());
        stamp(made, each.getValue().executable(), time);
      }
      // Writing into a folder changes its time.
      for (String folder : tree.folders()) {
        stamp(zip.getPath(folder), true, time);
      }
    }
  }

  private static void stamp(Path file, boolean executable, Instant time) throws IOException {
    Files.setAttribute(file, "zip:permissions", PosixFilePermissions.fromString(executable ? "rwxr-xr-x" : "rw-r--r--"));
    FileTime at = FileTime.from(time);
    Files.getFileAttributeView(file, BasicFileAttributeView.class).setTimes(at, at, at);
  }

  /** A jar: its manifest first, and no more of times than the build says. */
  static void jar(Tree tree, Instant time, Path file) throws IOException {
    try (ZipOutputStream jar = new ZipOutputStream(Files.newOutputStream(file))) {
      Tree.Entry manifest = tree.entries().get("META-INF/MANIFEST.MF");
      if (manifest != null) {
        put(jar, "META-INF/MANIFEST.MF", manifest.bytes(), time);
      }
      for (Map.Entry<String, Tree.Entry> each : tree.entries().entrySet()) {
        if (!each.getKey().equals("META-INF/MANIFEST.MF")) {
          put(jar, each.getKey(), each.getValue().bytes(), time);
        }
      }
    }
  }

  private static void put(ZipOutputStream jar, String name, byte[] bytes, Instant time) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(time.atOffset(ZoneOffset.UTC).toLocalDateTime());
    jar.putNextEntry(entry);
    jar.write(bytes);
    jar.closeEntry();
  }

  /** A tar, packed with gzip. Each path begins with {@code prefix}. */
  static byte[] tarGz(Tree tree, String prefix, Instant time) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream tar = new Smallest(bytes)) {
      if (!prefix.isEmpty()) {
        header(tar, prefix, 0, "0755", '5', "", time);
      }
      for (String folder : tree.folders()) {
        header(tar, prefix + folder + "/", 0, "0755", '5', "", time);
      }
      for (Map.Entry<String, Tree.Entry> each : tree.entries().entrySet()) {
        Tree.Entry entry = each.getValue();
        boolean link = !entry.link().isEmpty();
        header(tar, prefix + each.getKey(), link ? 0 : entry.bytes().length, link ? "0777" : entry.executable() ? "0755" : "0644",
            link ? '2' : '0', entry.link(), time);
        tar.write(entry.bytes());
        tar.write(new byte[(BLOCK - entry.bytes().length % BLOCK) % BLOCK]);
      }
      tar.write(new byte[2 * BLOCK]);
    }
    return bytes.toByteArray();
  }

  /** One header of POSIX.1-1988 (ustar). */
  private static void header(GZIPOutputStream tar, String path, long size, String mode, char type, String link, Instant time)
      throws IOException {
    byte[] block = new byte[BLOCK];
    int cut = path.length() <= NAME ? -1 : path.indexOf('/', path.length() - NAME - 1);
    if (path.length() > NAME && (cut < 0 || cut > 155)) {
      throw new IOException("a path too long for a tar: " + path);
    }
    put(block, 0, NAME, cut < 0 ? path : path.substring(cut + 1));
    put(block, 100, 8, "0" + "00" + mode);
    put(block, 108, 8, "0000000");
    put(block, 116, 8, "0000000");
    put(block, 124, 12, String.format("%011o", size));
    put(block, 136, 12, String.format("%011o", time.getEpochSecond()));
    put(block, 148, 8, "        ");
    block[156] = (byte) type;
    put(block, 157, NAME, link);
    put(block, 257, 6, "ustar");
    put(block, 263, 2, "00");
    put(block, 265, 32, "root");
    put(block, 297, 32, "root");
    put(block, 345, 155, cut < 0 ? "" : path.substring(0, cut));
    int sum = 0;
    for (byte b : block) {
      sum += b & 0xFF;
    }
    put(block, 148, 8, String.format("%06o\0 ", sum));
    tar.write(block);
  }

  private static void put(byte[] block, int at, int length, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    if (bytes.length > length) {
      throw new IOException("too long for a tar: " + text);
    }
    System.arraycopy(bytes, 0, block, at, bytes.length);
  }

  static byte[] gzip(byte[] bytes) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new Smallest(packed)) {
      gzip.write(bytes);
    }
    byte[] made = packed.toByteArray();
    made[EXTRA_FLAGS] = SLOWEST;
    return made;
  }
}
