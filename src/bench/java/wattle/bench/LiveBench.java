package wattle.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.net.HttpURLConnection;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import wattle.cli.Main;

/**
 * The live page of Alder Court, asked over its own server: from a click to all that the page shows anew (pictures, dangers,
 * tables, controls), and from a save to the same, with the time in which the file is noticed.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 5, time = 5)
public class LiveBench {
  private static final String LENGTH = "kitchen-drop = ";

  private final HttpClient client = HttpClient.newHttpClient();
  private Path plan;
  private String text;
  private URI address;
  private Thread command;
  private BufferedReader versions;
  private int clicks;
  private int saves;

  /** Starts the command as a person does, on a copy of the house. */
  @Setup
  public void open() throws IOException {
    Path folder = Files.createTempDirectory("wattle-live");
    for (String file : new String[]{"house.wattle", "rooms.wattle", "garage.wattle"}) {
      Files.copy(Path.of("examples/alder-court", file), folder.resolve(file));
    }
    plan = folder.resolve("house.wattle");
    text = Files.readString(plan);
    PipedWriter out = new PipedWriter();
    BufferedReader said = new BufferedReader(new PipedReader(out));
    command = new Thread(() -> Main.run(new String[]{"live", plan.toString()}, new PrintWriter(out), new PrintWriter(System.err)),
        "command");
    command.setDaemon(true);
    command.start();
    address = URI.create(said.readLine());
    HttpURLConnection connection = (HttpURLConnection) address.resolve("versions").toURL().openConnection();
    versions = new BufferedReader(new InputStreamReader(connection.getInputStream(), StandardCharsets.UTF_8));
    while (version() < 3) {
      // The start is told twice: as it was read first, and as the watcher of files read it.
    }
  }

  private int version() throws IOException {
    String line = versions.readLine();
    while (!line.startsWith("data: ")) {
      line = versions.readLine();
    }
    return Integer.parseInt(line.substring(6));
  }

  private String look(String asked) throws IOException, InterruptedException {
    HttpRequest request = HttpRequest.newBuilder(address.resolve("look")).header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(asked)).build();
    HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != 200) {
      throw new IllegalStateException(answer.body());
    }
    return answer.body();
  }

  /** A neutral is lost and joined again, with two loads on. */
  @Benchmark
  public String click() throws IOException, InterruptedException {
    String neutral = clicks++ % 2 == 0 ? ",\"open neutral of counter\"" : "";
    return look("{\"branch\":\"counter\",\"events\":[\"kitchen.c1.upper draws 1200 W\",\"kitchen.c1.lower draws 400 W\"" + neutral + "]}");
  }

  /** The beginning in which all loads of the house are on. */
  @Benchmark
  public String everythingOn() throws IOException, InterruptedException {
    return look("{\"branch\":\"counter\",\"start\":\"stated\"}");
  }

  /** A length is changed and saved, until the picture with the new length is there. */
  @Benchmark
  public String save() throws IOException, InterruptedException {
    int meters = 10 + saves++ % 20;
    Files.writeString(plan, text.replace(LENGTH + "9 m", LENGTH + meters + " m"));
    String shown = "";
    while (!shown.contains("12/3 NM-B, " + meters + " m")) {
      version();
      shown = look("{\"branch\":\"counter\",\"events\":[\"kitchen.c1.upper draws 1200 W\"]}");
    }
    return shown;
  }

  /** Interrupts it, as Ctrl-C does. */
  @TearDown
  public void close() throws InterruptedException, IOException {
    command.interrupt();
    command.join();
    for (String file : new String[]{"house.wattle", "rooms.wattle", "garage.wattle"}) {
      Files.delete(plan.resolveSibling(file));
    }
    Files.delete(plan.getParent());
  }
}
