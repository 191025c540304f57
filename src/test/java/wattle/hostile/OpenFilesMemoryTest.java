package wattle.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An editor with more files open than the language server has memory for: it says so, and goes on answering. */
class OpenFilesMemoryTest {
  private static final int FILES = 24;
  private static final int ROOMS = 700;

  private static String plan(int number) {
    StringBuilder text = new StringBuilder("plan \"House " + number + "\"\nuse code us-2023\nservice main 120/240 V 100 A\n");
    for (int i = 0; i < ROOMS; i++) {
      text.append("branch b" + i + " by 14/2 NM-B { P --5 m-- r" + i + ".o }\nroom r" + i + " { o: receptacle }\n");
    }
    return text.toString();
  }

  @Test
  @Timeout(120)
  void whatFitsIsChecked(@TempDir Path folder) throws Exception {
    Process server = BoundedProcess.begin(folder, "-Xmx96m", "language-server");
    try (OutputStream to = server.getOutputStream(); DataInputStream from = new DataInputStream(server.getInputStream())) {
      send(to, "{'jsonrpc':'2.0','id':1,'method':'initialize','params':{'capabilities':{}}}");
      send(to, "{'jsonrpc':'2.0','method':'initialized','params':{}}");
      for (int i = 0; i < FILES; i++) {
        JsonObject opened = JsonParser.parseString("{'jsonrpc':'2.0','method':'textDocument/didOpen','params':{'textDocument':"
            + "{'uri':'" + folder.resolve(i + ".wattle").toUri() + "','languageId':'wattle','version':1}}}").getAsJsonObject();
        opened.getAsJsonObject("params").getAsJsonObject("textDocument").addProperty("text", plan(i));
        send(to, opened.toString());
      }
      await(from, said -> said.contains("more files are open than there is memory for"));
      String first = folder.resolve("0.wattle").toUri().toString();
      send(to, "{'jsonrpc':'2.0','method':'textDocument/didChange','params':{'textDocument':{'uri':'" + first
          + "','version':2},'contentChanges':[{'text':'room hall { lamp: lihgt }'}]}}");
      await(from, said -> said.contains("publishDiagnostics") && said.contains(first) && said.contains("lihgt"));
      send(to, "{'jsonrpc':'2.0','id':2,'method':'shutdown','params':null}");
      await(from, said -> said.contains("\"id\":2"));
      send(to, "{'jsonrpc':'2.0','method':'exit'}");
      assertThat(server.waitFor()).isZero();
    } finally {
      server.destroy();
    }
  }

  private static void send(OutputStream to, String message) throws IOException {
    byte[] bytes = JsonParser.parseString(message).toString().getBytes(StandardCharsets.UTF_8);
    to.write(("Content-Length: " + bytes.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
    to.write(bytes);
    to.flush();
  }

  private static void await(DataInputStream from, Predicate<String> wanted) throws IOException {
    String message = next(from);
    while (!wanted.test(message)) {
      message = next(from);
    }
  }

  private static String next(DataInputStream from) throws IOException {
    StringBuilder header = new StringBuilder();
    while (header.indexOf("\r\n\r\n") < 0) {
      header.append((char) from.readUnsignedByte());
    }
    String length = header.toString().replaceAll("(?s).*Content-Length: (\\d+).*", "$1");
    return new String(from.readNBytes(Integer.parseInt(length)), StandardCharsets.UTF_8);
  }
}
