import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Takes Graphviz's WebAssembly module out of the JavaScript file in which the viz package ships it, so that no binary
 * is committed. Run by the build as a single source file:
 *
 * <pre>java ExtractGraphviz.java BACKEND-JS SHA-256 WASM-OUT NAMES-OUT</pre>
 *
 * <p>The module is the one string given to {@code binaryDecode(}; each of its characters c stands for the byte
 * {@code (~c >> 8) & c}. Its imports and exports have letters for names, given anew by the minifier of each release, so
 * the tables that the same file keeps of them are written to NAMES-OUT as {@code import.NAME} and {@code export.NAME}.
 */
final class ExtractGraphviz {
  private static final Pattern EXPORT = Pattern.compile("(?<![\\w$\"])_*(\\w+)=(?:Module\\[\"\\w+\"\\]=)?wasmExports\\[\"([^\"]+)\"\\]");
  private static final Pattern IMPORT = Pattern.compile("([\\w$]+):_*(\\w+)");

  public static void main(String[] args) throws IOException, GeneralSecurityException {
    String script = Files.readString(Path.of(args[0]), StandardCharsets.UTF_8);
    byte[] wasm = decode(literalAfter(script, "binaryDecode('"));
    String found = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(wasm));
    if (!found.equals(args[1])) {
      throw new IOException(args[0] + ": the WebAssembly module in it has SHA-256 " + found + ", expected " + args[1]);
    }
    Map<String, String> names = new TreeMap<>();
    collect(names, "export.", EXPORT.matcher(between(script, "function assignWasmExports(", "}")), 1, 2);
    names.put("export.constructors", callIn(between(script, "function initRuntime(", "}")));
    collect(names, "import.", IMPORT.matcher(between(script, "wasmImports={", "}")), 2, 1);
    StringBuilder lines = new StringBuilder();
    names.forEach((name, letter) -> lines.append(name).append('=').append(letter).append('\n'));
    Files.createDirectories(Path.of(args[3]).getParent());
    Files.writeString(Path.of(args[3]), lines, StandardCharsets.ISO_8859_1);
    Files.createDirectories(Path.of(args[2]).getParent());
    Files.write(Path.of(args[2]), wasm);
  }

  private static void collect(Map<String, String> names, String prefix, Matcher entries, int name, int letter)
      throws IOException {
    int before = names.size();
    while (entries.find()) {
      names.put(prefix + entries.group(name), entries.group(letter));
    }
    if (names.size() == before) {
      throw new IOException("no table of WebAssembly " + prefix + "s where this release of viz should keep one");
    }
  }

  private static String callIn(String body) throws IOException {
    Matcher call = Pattern.compile("wasmExports\\[\"([^\"]+)\"\\]\\(\\)").matcher(body);
    if (!call.find()) {
      throw new IOException("initRuntime does not call the module's constructors in this release of viz");
    }
    return call.group(1);
  }

  private static String between(String script, String start, String end) throws IOException {
    int from = script.indexOf(start);
    if (from < 0) {
      throw new IOException("'" + start + "' is not in the script; this release of viz is laid out differently");
    }
    int open = script.indexOf('{', from);
    return script.substring(open + 1, script.indexOf(end, open));
  }

  /** The single-quoted literal that starts at the end of {@code lead}, its escapes undone. */
  private static String literalAfter(String script, String lead) throws IOException {
    int start = script.indexOf(lead);
    if (start < 0 || script.indexOf(lead, start + 1) >= 0) {
      throw new IOException("expected '" + lead + "' exactly once; this release of viz is laid out differently");
    }
    StringBuilder text = new StringBuilder(1 << 20);
    for (int i = start + lead.length(); script.charAt(i) != '\''; i++) {
      char c = script.charAt(i);
      if (c != '\\') {
        text.append(c);
        continue;
      }
      char escape = script.charAt(++i);
      switch (escape) {
        case 'n' -> text.append('\n');
        case 'r' -> text.append('\r');
        case 't' -> text.append('\t');
        case 'b' -> text.append('\b');
        case 'f' -> text.append('\f');
        case 'v' -> text.append('\u000B');
        case '0' -> text.append('\0');
        case 'x' -> {
          text.append((char) Integer.parseInt(script, i + 1, i + 3, 16));
          i += 2;
        }
        case 'u' -> {
          text.append((char) Integer.parseInt(script, i + 1, i + 5, 16));
          i += 4;
        }
        default -> text.append(escape);
      }
    }
    return text.toString();
  }

  private static byte[] decode(String text) {
    byte[] bytes = new byte[text.length()];
    for (int i = 0; i < bytes.length; i++) {
      int c = text.charAt(i);
      bytes[i] = (byte) ((~c >> 8) & c);
    }
    return bytes;
  }

  private ExtractGraphviz() {}
}
