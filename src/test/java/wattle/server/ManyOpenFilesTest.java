package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.ClientCapabilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An editor that comes back with many files open: the one that somebody works on is looked at first, and the rest follows. */
class ManyOpenFilesTest {
  private static final int FILES = 60;

  private static String plan(int number) {
    StringBuilder text = new StringBuilder("plan \"House " + number + "\"\nuse code us-2023\n"
        + "service main 120/240 V 100 A { source transformer 25 kVA 2 %   run 20 m of 2 Al triplex   earth rods by 6 Cu }\n"
        + "panel P from main { bus 100 A   slots 20   bonded\n  main breaker 100 A 22 kA\n");
    for (int i = 1; i < 8; i++) {
      text.append("  " + i + "  15 A 22 kA arc-fault  b" + i + "\n");
    }
    text.append("}\n");
    for (int i = 1; i < 8; i++) {
      text.append("branch b" + i + " by 14/2 NM-B { P --5 m-- r" + i + ".o }\nroom r" + i + " { o: receptacle }\n");
    }
    return text.toString();
  }

  @Test
  void theOneAtHandComesFirst(@TempDir Path folder) throws Exception {
    List<String> uris = new ArrayList<>();
    for (int i = 0; i < FILES; i++) {
      uris.add(Files.writeString(folder.resolve("house" + i + ".wattle"), plan(i)).toUri().toString());
    }
    try (ScriptedEditor editor = new ScriptedEditor()) {
      editor.start(new ClientCapabilities(), folder);
      for (int i = 0; i < FILES; i++) {
        editor.open(uris.get(i), plan(i));
      }
      String last = uris.get(FILES - 1);
      editor.await(last, p -> !p.getDiagnostics().isEmpty());
      assertThat(editor.toldInOrder().indexOf(last)).as("place of the last one opened among those told").isLessThan(FILES / 2);
      for (String uri : uris) {
        editor.await(uri, p -> !p.getDiagnostics().isEmpty());
      }
      assertThat(editor.toldInOrder()).containsAll(uris);
      assertThat(editor.complaints()).isEmpty();
    }
  }
}
