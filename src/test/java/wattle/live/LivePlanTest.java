package wattle.live;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.HttpURLConnection;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.hostile.HostilePlan;

/** A plan that is saved, broken, deleted and brought back while pages look at it. */
class LivePlanTest {
  private static final String GARAGE = "room garage { lamp: light 60 W }\n";

  @TempDir
  private Path folder;
  private Path plan;
  private LiveServer server;

  private static String house(String lampBranch) {
    return "plan \"Shed\"\nuse code us-2023\nuse \"garage.wattle\"\nservice main 120/240 V 100 A { source available 10 kA  run 10 m"
        + " of 2 Al triplex  earth rods by 6 Cu 25 ohm }\n"
        + "panel P from main {\n  bus 100 A  slots 8  bonded\n  main breaker 100 A 10 kA\n  1  15 A  lamp\n  3  20 A  tap\n}\n" + lampBranch
        + "branch tap by 12/2 NM-B { P --4 m-- hall.tap }\nroom hall { tap: receptacle tamper-resistant }\n";
  }

  private static final String LAMP = "branch lamp by 14/2 NM-B { P --6 m-- garage.lamp }\n";

  @BeforeEach
  void open() throws IOException {
    plan = folder.resolve("shed.wattle");
    Files.writeString(folder.resolve("garage.wattle"), GARAGE);
    Files.writeString(plan, house(LAMP));
    server = new LiveServer(plan);
  }

  @AfterEach
  void close() {
    server.close();
    assertThat(server.complaints).isEmpty();
  }

  private void save(String text) throws IOException {
    Files.writeString(plan, text);
    server.saved();
  }

  private JsonNode lit() {
    return server.look("garage.lamp on");
  }

  @Test
  void aSaveIsShownWithItsFindings() throws IOException {
    JsonNode before = lit();
    assertThat(before.path("trouble").asText()).isEmpty();
    save(house(LAMP.replace("14/2", "12/2").replace("6 m", "60 m")).replace("20 A  tap", "30 A  tap"));
    JsonNode after = lit();
    assertThat(after.path("version").asInt()).isGreaterThan(before.path("version").asInt());
    assertThat(after.at("/parts/branches").asText()).contains("12/2 NM-B, 60 m").doesNotContain("14/2 NM-B");
    assertThat(after.at("/parts/findings").asText()).contains("30 A").contains("finding error");
    assertThat(after.path("trouble").asText()).isEmpty();
  }

  @Test
  void aBrokenTextKeepsTheLastPictureAndShowsItsFindings() throws IOException {
    JsonNode before = lit();
    save(house("branch lamp by 14/2 NM-B { P --6 m-- garage.lam }\n").replace("20 A  tap", "20  tap"));
    JsonNode broken = lit();
    assertThat(broken.at("/parts/branches").asText()).isEqualTo(before.at("/parts/branches").asText());
    assertThat(broken.at("/parts/panels").asText()).isEqualTo(before.at("/parts/panels").asText());
    assertThat(broken.path("told").asText()).isEqualTo(before.path("told").asText());
    assertThat(broken.path("trouble").asText()).contains("the page shows the last version that could be");
    assertThat(broken.at("/parts/findings").asText()).contains("garage.lam").contains("unit");
    // What is clicked meanwhile is still answered, with figures of that text.
    assertThat(server.look("garage.lamp on", "open breaker P/1").at("/parts/panels").asText()).contains("OPEN");
    save(house(LAMP));
    JsonNode mended = lit();
    assertThat(mended.path("trouble").asText()).isEmpty();
    assertThat(mended.at("/parts/findings").asText()).doesNotContain("garage.lam&#39;");
  }

  @Test
  void aDeletedFileKeepsThePictureAndOneThatComesBackIsRead() throws IOException {
    JsonNode before = lit();
    Files.delete(plan);
    server.saved();
    JsonNode gone = lit();
    assertThat(gone.path("trouble").asText()).contains("no such file").contains("The page shows the plan as last read");
    assertThat(gone.at("/parts/branches").asText()).isEqualTo(before.at("/parts/branches").asText());
    save(house(LAMP.replace("6 m", "9 m")));
    assertThat(lit().path("trouble").asText()).isEmpty();
    assertThat(lit().at("/parts/branches").asText()).contains("14/2 NM-B, 9 m");
    Files.delete(folder.resolve("garage.wattle"));
    server.saved();
    assertThat(lit().at("/parts/findings").asText()).contains("garage.wattle");
    assertThat(lit().at("/parts/branches").asText()).as("of the last text that was whole").contains("14/2 NM-B, 9 m");
  }

  /** Figures are of what could be read, and the page says so. */
  @Test
  void aPlanThatIsInPiecesFromTheStartIsShownInPieces() throws IOException {
    server.close();
    Files.writeString(plan, house("branch lamp by nonsense { P --6 m-- }\n"));
    server = new LiveServer(plan);
    JsonNode look = server.look("hall.tap draws 5 A");
    assertThat(look.path("trouble").asText()).contains("is left out; the figures are for the rest");
    assertThat(look.path("branch").asText()).isEqualTo("tap");
    assertThat(look.at("/parts/branches").asText()).contains("draws 5 A");
    save("");
    assertThat(server.look().path("trouble").asText()).isNotEmpty();
    save(house(LAMP));
    assertThat(lit().path("trouble").asText()).isEmpty();
  }

  @Test
  void whatIsClickedOutlivesTheThingsItIsAbout() throws IOException {
    save(house("").replace("  1  15 A  lamp\n", "").replace("use \"garage.wattle\"\n", ""));
    JsonNode look = server.look("garage.lamp on", "open breaker P/1", "hall.tap draws 5 A");
    assertThat(look.path("events")).hasSize(3);
    assertThat(look.at("/parts/events").asText()).contains("no device is called &#39;garage.lamp&#39;").contains("no breaker in slot 1");
    assertThat(look.at("/parts/branches").asText()).contains("draws 5 A");
  }

  /** Reads a stream of versions. */
  private final class Stream implements AutoCloseable {
    private final HttpURLConnection connection;
    private final BufferedReader in;

    Stream() throws IOException {
      connection = (HttpURLConnection) server.address().resolve("versions").toURL().openConnection();
      connection.setReadTimeout(30_000);
      assertThat(connection.getResponseCode()).isEqualTo(200);
      assertThat(connection.getContentType()).startsWith("text/event-stream");
      in = new BufferedReader(new InputStreamReader(connection.getInputStream(), StandardCharsets.UTF_8));
    }

    int next() throws IOException {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        if (line.startsWith("data: ")) {
          return Integer.parseInt(line.substring(6));
        }
      }
      throw new IOException("the stream has ended");
    }

    @Override
    public void close() {
      connection.disconnect();
    }
  }

  @Test
  void allOpenPagesAreToldOfASave() throws IOException, InterruptedException {
    List<Stream> pages = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      Stream page = new Stream();
      pages.add(page);
      assertThat(page.next()).isEqualTo(1);
    }
    assertThat(server.page().idleMillis()).isZero();
    save(house(LAMP.replace("6 m", "7 m")));
    for (Stream page : pages) {
      int told = page.next();
      assertThat(told).isGreaterThan(1);
      // The house comes at once, what is judged of it behind it; whoever is late is told of the latest alone.
      assertThat(told < 3 ? page.next() : told).isEqualTo(3);
      page.close();
    }
    long end = System.nanoTime() + 60_000_000_000L;
    while (server.page().idleMillis() == 0 && System.nanoTime() < end) {
      Thread.sleep(50);
    }
    assertThat(server.page().idleMillis()).as("closed pages are noticed").isPositive();
  }

  @Test
  void thereAreOnlySoManyPages() throws IOException {
    List<Stream> pages = new ArrayList<>();
    for (int i = 0; i < Listeners.MOST; i++) {
      Stream page = new Stream();
      pages.add(page);
      page.next();
    }
    assertThat(server.get("versions").statusCode()).isEqualTo(503);
    assertThat(lit().path("version").asInt()).isEqualTo(1);
    pages.forEach(Stream::close);
  }

  @Test
  void hostileNamesStayText() throws IOException {
    save(HostilePlan.text());
    JsonNode look = server.look("r1.c draws 2 A", "<script>window.harmed = 1</script>", "r2.c on", "open neutral of b3");
    String page = server.get("").body() + look.path("parts");
    assertThat(page).doesNotContain("<script>window").doesNotContain("<img src=x").doesNotContain("<b>bold").contains("&lt;script&gt;");
    for (String branch : List.of("b0", "b2", "b7")) {
      JsonNode one = server.look(LiveServer.object().put("branch", branch).put("place", "r" + branch.substring(1) + ".c"));
      assertThat(one.at("/parts/branches").asText()).contains("box-title").doesNotContain("<script").doesNotContain("<img")
          .doesNotContain("<b>");
    }
    assertThat(
        server.look(LiveServer.object().put("branch", "<script>").put("place", "<script>").put("panel", "<b>").put("start", "trial <b>"))
            .path("parts").toString())
        .doesNotContain("<script").doesNotContain("<b>");
  }

  /** A figure opens to its formula, and what it links to opens in turn. */
  @Test
  void figuresUnfold() {
    JsonNode look = lit();
    String body = "{\"look\":" + look.path("look").asLong() + ",\"";
    int figures = look.at("/parts/figures").asText().split("data-figure").length - 1;
    assertThat(figures).isGreaterThan(6);
    String told = "";
    for (int f = 0; f < figures; f++) {
      told += server.post("unfold", body + "figure\":" + f + "}").body();
    }
    assertThat(told).contains("voltage at garage.lamp = |U_n − Σ ΔU|");
    List<String> steps = java.util.regex.Pattern.compile("#s(\\d+)").matcher(told).results().map(m -> m.group(1)).distinct().toList();
    assertThat(steps).isNotEmpty();
    for (String step : steps) {
      assertThat(server.post("unfold", body + "step\":" + step + "}").body()).contains(" = ").contains("<li>");
    }
  }
}
