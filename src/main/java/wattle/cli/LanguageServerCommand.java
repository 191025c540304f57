package wattle.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import wattle.server.LanguageServerProcess;

/** {@code language-server}: serves an editor until the editor ends it or goes away. */
@Command(
    name = "language-server",
    description = "Serves an editor over standard input and output with the Language Server Protocol.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "An editor starts it for files that end in .wattle; it ends when the editor closes its input. For example, in Neovim:",
        "  vim.lsp.start({ name = 'wattle', cmd = { 'wattle', 'language-server' } })",
    })
final class LanguageServerCommand implements Callable<Integer> {
  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    // Not System.out: what any library prints there by mistake would break the protocol.
    StandardStream out = new StandardStream(new FileOutputStream(FileDescriptor.out), "standard output");
    return out.codeAfter(LanguageServerProcess.serve(System.in, out, Version.number()), spec.commandLine().getErr());
  }
}
