package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Findings in pictures: a number at the thing, its headline under the picture, and a link between them. */
class DrawFindingsTest {
  private static final String HOUSE = """
      use code us-2023
      dwelling { floor-area 100 m2 }
      service main 120/240 V 100 A { source available 9 kA
        run 10 m of 4 Cu triplex
        earth rods by 6 Cu
      }
      panel P from main { bus 125 A slots 12 bonded
        main breaker 100 A 10 kA
        1 20 A arc-fault hall "Hall"
        5 15 A arc-fault den "Den"
      }
      branch hall by 14/2 NM-B { P --3 m-- hall.sw --2 m-- hall.l }
      branch den by 14/2 NM-B { P --3 m-- den.a }
      room hall { box b1 8 in3 { sw: switch for l   r: receptacle tamper-resistant } l: light 10 W }
      room den { a: receptacle tamper-resistant }
      """;
  private static final String OVERFILLED = "error: box hall.b1 is overfilled: needs 18 in³, has 8 in³";
  private static final String TOO_SMALL = "error: circuit &apos;hall&apos; is too small for its breaker: 14 AWG copper on 20 A";

  @TempDir
  private Path folder;
  private Path plan;

  @BeforeEach
  void write() throws Exception {
    plan = folder.resolve("house.wattle");
    Files.writeString(plan, HOUSE);
  }

  private String svg(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] all = new String[arguments.length + 4];
    all[0] = "draw";
    all[1] = "--format";
    all[2] = "svg";
    System.arraycopy(arguments, 0, all, 3, arguments.length);
    all[all.length - 1] = plan.toString();
    int code = Main.run(all, new PrintWriter(out), new PrintWriter(err));
    assertThat(code).as(err.toString()).isEqualTo(ExitCode.FOUND);
    return out.toString().replace("&#39;", "&apos;");
  }

  /** The overfilled box and the breaker above its wire stand in the wiring of the branch, each with a link to its words. */
  @Test
  void theBranchShowsItsBoxAndItsBreaker() {
    String svg = svg("--view", "branch", "--of", "hall");
    assertThat(svg).contains(">Findings</text>", OVERFILLED, "href=\"#finding-1\"", "id=\"finding-1\"", "href=\"#finding-2\"",
        "id=\"finding-2\"");
    assertThat(svg.replace("'", "&apos;")).contains(TOO_SMALL);
    assertThat(svg("--view", "branch", "--of", "den")).doesNotContain(OVERFILLED);
  }

  /** At its way in the panel and the one-line diagram, at its row in the room; a finding of another thing is in none of them. */
  @Test
  void everyViewMarksWhatIsInIt() {
    for (String view : new String[]{"panel", "one-line"}) {
      assertThat(svg("--view", view).replace("'", "&apos;")).as(view).contains(TOO_SMALL, "href=\"#finding-1\"").doesNotContain(OVERFILLED);
    }
    assertThat(svg("--view", "rooms", "--of", "hall")).contains(OVERFILLED, "href=\"#finding-1\"");
    assertThat(svg("--view", "rooms", "--of", "den")).doesNotContain(">Findings</text>");
  }

  @Test
  void aPlainPictureHasNone() {
    for (String view : new String[]{"panel", "one-line", "rooms"}) {
      assertThat(svg("--view", view, "--plain")).as(view).doesNotContain(">Findings</text>", "#finding-", OVERFILLED);
    }
  }

  /** A finding that the plan silences with its reason is not marked. */
  @Test
  void whatIsSilencedIsNotMarked() throws Exception {
    Files.writeString(plan, HOUSE + "silence box-overfilled at hall.b1 because \"box extender agreed with the inspector\"\n");
    assertThat(svg("--view", "branch", "--of", "hall")).doesNotContain(OVERFILLED);
  }
}
