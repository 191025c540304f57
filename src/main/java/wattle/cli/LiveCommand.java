package wattle.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.live.LivePage;
import wattle.read.SourceReader;

/** {@code live}: a plan in a browser, until interrupted. */
@Command(
    name = "live",
    description = {
        "Shows a plan in a browser on this computer and redraws it on each save. Click to open breakers, switch loads on, lose neutrals",
        "and loosen joints, and see the volts, amperes and watts that result. Prints the address; ends when interrupted.",
    },
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle live examples/alder-court/house.wattle",
        "  wattle live examples/classroom/lessons.wattle --port 8765",
        "",
        "The address contains a token. Anyone on this computer who has it can see the plan; other computers cannot.",
    })
final class LiveCommand implements Callable<Integer> {
  private static final int HIGHEST_PORT = 65535;
  private static final int MOST_SECONDS = 86400;
  private static final long LOOK_MILLIS = 200;

  @Parameters(paramLabel = "FILE", description = "The plan.")
  private String file;

  @Option(names = "--port", paramLabel = "PORT", defaultValue = "0", description = "Listen on this port (default: any that is free).")
  private int port;

  @Option(names = "--until-closed", paramLabel = "SECONDS", description = "End when no page has been open for this many seconds.")
  private Integer untilClosed;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    if (file.equals("-")) {
      throw new Failure("standard input cannot be watched; name a file");
    }
    if (port < 0 || port > HIGHEST_PORT) {
      throw new Failure("--port takes 1 to " + HIGHEST_PORT);
    }
    if (untilClosed != null && (untilClosed < 1 || untilClosed > MOST_SECONDS)) {
      throw new Failure("--until-closed takes 1 to " + MOST_SECONDS + " seconds");
    }
    PrintWriter out = spec.commandLine().getOut();
    try (LivePage page = open(ResultOutput.path(file))) {
      out.println(page.address());
      out.flush();
      spec.commandLine().getErr().println("wattle: open this address in a browser on this computer; Ctrl-C ends it");
      if (untilClosed != null) {
        endWhenClosed(page, Thread.currentThread());
      }
      endWithParent(Thread.currentThread());
      new WatchLoop(out).run(new Watched(page, ResultOutput.path(file)));
    }
    return ExitCode.FINE;
  }

  private LivePage open(Path plan) {
    try {
      return LivePage.open(plan, input.reader(), input.reading(), port, m -> spec.commandLine().getErr().println("wattle: " + m));
    } catch (SourceReader.Unreadable e) {
      throw new Failure(e.getMessage());
    } catch (IOException e) {
      throw new Failure("cannot listen" + (port == 0 ? "" : " on port " + port) + ": " + e.getMessage()
          + (port == 0 ? "" : "; leave --port out for any that is free"));
    }
  }

  /** A page that nobody can end any more, since the shell or program that started it is gone, would listen on. */
  private static void endWithParent(Thread watching) {
    ProcessHandle.current().parent().ifPresent(parent -> parent.onExit().thenRun(watching::interrupt));
  }

  private void endWhenClosed(LivePage page, Thread watching) {
    Thread looking = new Thread(
        () -> {
          try {
            while (page.idleMillis() < untilClosed * 1000L) {
              Thread.sleep(LOOK_MILLIS);
            }
            watching.interrupt();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        },
        "closed pages");
    looking.setDaemon(true);
    looking.start();
  }

  /** The plan as it is looked at again and again; one that is gone for the moment is told, and its files are still looked at. */
  private static final class Watched implements WatchLoop.Check {
    private final LivePage page;
    private final Path plan;

    Watched(LivePage page, Path plan) {
      this.page = page;
      this.plan = plan;
    }

    @Override
    public Set<Path> read() {
      Set<Path> files = new LinkedHashSet<>(PlanFiles.of(page.reread()));
      files.add(plan);
      return files;
    }

    @Override
    public void tell() {
      page.tell();
    }
  }
}
