package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import wattle.compiler.Compiler;
import wattle.read.SourceReader;

/** The colors that the server gives a plan, for tests outside of it. */
public final class ColorsOfPlans {
  /** A piece of the text and its class. */
  public record Token(int start, int end, String type, boolean declares) {}

  private ColorsOfPlans() {}

  /** The tokens of a file, as it is checked by itself. */
  public static List<Token> of(Path file) throws SourceReader.Unreadable {
    Path path = file.toAbsolutePath().normalize();
    Analysis analysis = new Analysis(path, Buffers.NONE, new Compiler(SourceReader.FROM_DISK).compile(path));
    LineIndex lines = analysis.lines(path);
    List<Integer> data = TokenColors.of(new Question(analysis, path, analysis.tree(path).orElseThrow(), lines)).getData();
    List<String> types = TokenColors.legend().getTokenTypes();
    List<Token> tokens = new ArrayList<>();
    int line = 0;
    int column = 0;
    for (int i = 0; i < data.size(); i += 5) {
      column = data.get(i) == 0 ? column + data.get(i + 1) : data.get(i + 1);
      line += data.get(i);
      int start = lines.offset(new org.eclipse.lsp4j.Position(line, column));
      tokens.add(new Token(start, start + data.get(i + 2), types.get(data.get(i + 3)), (data.get(i + 4) & 1) == 1));
    }
    return tokens;
  }
}
