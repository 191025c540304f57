package wattle.emit.media.picture;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes PNG (W3C recommendation, third edition). Java's own writer takes a third of a second to find itself among the
 * plug-ins, and writes neither the resolution nor the note that says whose file it is without a tree of metadata.
 */
final class PngEncoder {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final byte UP = 2;

  /** @param image of the type {@link BufferedImage#TYPE_INT_RGB} */
  static byte[] encode(BufferedImage image, int pixelsPerInch) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.write(SIGNATURE);
      chunk(out, "IHDR", header(image));
      chunk(out, "pHYs", resolution(pixelsPerInch));
      chunk(out, "tEXt", ("Software\0" + Producer.NAME).getBytes(StandardCharsets.ISO_8859_1));
      chunk(out, "IDAT", pixels(image));
      chunk(out, "IEND", new byte[0]);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory failed", e);
    }
    return bytes.toByteArray();
  }

  private static void chunk(DataOutputStream out, String type, byte[] content) throws IOException {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 sum = new CRC32();
    sum.update(name);
    sum.update(content);
    out.writeInt(content.length);
    out.write(name);
    out.write(content);
    out.writeInt((int) sum.getValue());
  }

  private static byte[] header(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.writeInt(image.getWidth());
    out.writeInt(image.getHeight());
    out.write(new byte[]{8, 2, 0, 0, 0}); // 8 bits a channel, RGB, not interlaced
    return bytes.toByteArray();
  }

  private static byte[] resolution(int pixelsPerInch) throws IOException {
    int pixelsPerMeter = (int) Math.round(pixelsPerInch / 0.0254);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.writeInt(pixelsPerMeter);
    out.writeInt(pixelsPerMeter);
    out.write(1);
    return bytes.toByteArray();
  }

  /** Each row as its difference from the one above: drawings repeat from row to row, so most of it becomes zeros. */
  private static byte[] pixels(BufferedImage image) throws IOException {
    int width = image.getWidth();
    int[] row = new int[width];
    int[] above = new int[width];
    byte[] line = new byte[1 + 3 * width];
    line[0] = UP;
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
    Deflater deflater = new Deflater(6);
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater, 1 << 16)) {
      for (int y = 0; y < image.getHeight(); y++) {
        image.getRaster().getDataElements(0, y, width, 1, row);
        for (int x = 0, at = 1; x < width; x++) {
          int now = row[x];
          int before = above[x];
          line[at++] = (byte) ((now >> 16) - (before >> 16));
          line[at++] = (byte) ((now >> 8) - (before >> 8));
          line[at++] = (byte) (now - before);
        }
        out.write(line);
        int[] spare = above;
        above = row;
        row = spare;
      }
    } finally {
      deflater.end();
    }
    return bytes.toByteArray();
  }

  private PngEncoder() {}
}
