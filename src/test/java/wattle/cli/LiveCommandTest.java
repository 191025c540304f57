package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** {@code live} as a process of its own: it prints an address, follows saves, and ends when it should. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the process is ended by a POSIX signal")
class LiveCommandTest {
  private static final String PLAN = "plan \"Shed\"\nservice main 120/240 V 100 A { earth rods by 6 Cu }\n";

  @TempDir
  private Path folder;
  private Process process;

  private URI start(String... options) throws IOException {
    Files.writeString(folder.resolve("shed.wattle"), PLAN);
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    List<String> command = new ArrayList<>(
        List.of(java, "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), "wattle.cli.Main", "live",
            folder.resolve("shed.wattle").toString()));
    command.addAll(List.of(options));
    process = new ProcessBuilder(command).redirectError(folder.resolve("err").toFile()).start();
    BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    assertThat(line).as(Files.readString(folder.resolve("err"))).matches("http://127\\.0\\.0\\.1:\\d+/[A-Za-z0-9_-]{32}/");
    return URI.create(line);
  }

  @AfterEach
  void end() {
    if (process != null) {
      process.destroyForcibly();
    }
  }

  private static BufferedReader versions(URI address) throws IOException {
    HttpURLConnection connection = (HttpURLConnection) address.resolve("versions").toURL().openConnection();
    connection.setReadTimeout(60_000);
    return new BufferedReader(new InputStreamReader(connection.getInputStream(), StandardCharsets.UTF_8));
  }

  private static int next(BufferedReader versions) throws IOException {
    String line = versions.readLine();
    while (!line.startsWith("data: ")) {
      line = versions.readLine();
    }
    return Integer.parseInt(line.substring(6));
  }

  @Test
  void followsSavesAndEndsOnInterrupt() throws Exception {
    Interrupts.assumeNotIgnored();
    URI address = start();
    BufferedReader versions = versions(address);
    int before = next(versions);
    while (before < 3) { // what was read at the start is told, and then what was judged of it
      before = next(versions);
    }
    Files.writeString(folder.resolve("shed.wattle"), PLAN.replace("Shed", "Barn"));
    assertThat(next(versions)).isGreaterThan(before);
    assertThat(new String(address.toURL().openStream().readAllBytes(), StandardCharsets.UTF_8)).contains("<title>Barn</title>");
    assertThat(new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start().waitFor()).isZero();
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isEqualTo(130);
    assertThat(Files.readString(folder.resolve("err"))).doesNotContain("Exception").doesNotContain("\tat ");
    try (var files = Files.list(folder)) {
      assertThat(files).as("nothing is left behind").hasSize(2);
    }
  }

  @Test
  void endsWhenNoPageHasBeenOpenForAWhile() throws Exception {
    URI address = start("--until-closed", "5");
    BufferedReader versions = versions(address);
    next(versions);
    assertThat(process.waitFor(6, TimeUnit.SECONDS)).as("a page is open").isFalse();
    versions.close();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isZero();
    assertThat(Files.readString(folder.resolve("err"))).doesNotContain("Exception");
  }

  private static String refused(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).isEqualTo(ExitCode.USAGE);
    assertThat(out.toString()).isEmpty();
    return err.toString();
  }

  @Test
  void whatCannotBeServedIsBadUsage() throws IOException {
    Path plan = Files.writeString(folder.resolve("shed.wattle"), PLAN);
    assertThat(refused("live", "-")).contains("standard input cannot be watched");
    assertThat(refused("live", folder.resolve("no.wattle").toString())).contains("no such file");
    assertThat(refused("live", plan.toString(), "--port", "70000")).contains("--port takes 1 to 65535");
    assertThat(refused("live", plan.toString(), "--until-closed", "0")).contains("--until-closed takes");
    assertThat(refused("live", plan.toString(), "--code", "nosuch")).contains("no code pack is called 'nosuch'");
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      assertThat(refused("live", plan.toString(), "--port", String.valueOf(taken.getLocalPort())))
          .contains("cannot listen on port " + taken.getLocalPort()).contains("leave --port out");
    }
  }
}
