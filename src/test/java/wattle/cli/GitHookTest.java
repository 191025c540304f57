package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The hook that checks what is staged, in a repository of its own. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the hook is a POSIX shell script")
class GitHookTest {
  private static final String HOUSE = "plan \"Finch Row\" revision \"A\"\nuse \"rooms.wattle\"\n"
      + "service main 120/240 V 100 A { earth rods by 6 Cu }\n";

  @TempDir
  private Path folder;
  private Path repository;

  @BeforeEach
  void aRepositoryWithTheHook() throws IOException, InterruptedException {
    repository = Files.createDirectory(folder.resolve("a plan's repository"));
    Path wattle = folder.resolve("wattle");
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Files.writeString(wattle, "#!/bin/sh\nexec '" + java + "' -XX:TieredStopAtLevel=1 -cp '" + classPath() + "' wattle.cli.Main \"$@\"\n");
    assertThat(wattle.toFile().setExecutable(true)).isTrue();
    git(0, "init", "-q");
    Path hook = Files.copy(Path.of("hooks/pre-commit"), repository.resolve(".git/hooks/pre-commit"));
    assertThat(hook.toFile().setExecutable(true)).isTrue();
    Files.writeString(repository.resolve("house.wattle"), HOUSE);
    Files.writeString(repository.resolve("rooms.wattle"), "room hall { }\n");
  }

  /** The process may stand in another folder than this one. */
  private static String classPath() {
    List<String> absolute = new ArrayList<>();
    for (String entry : System.getProperty("java.class.path").split(java.io.File.pathSeparator)) {
      absolute.add(Path.of(entry).toAbsolutePath().toString());
    }
    return String.join(java.io.File.pathSeparator, absolute);
  }

  private String git(int expected, String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("git", "-c", "user.name=Test", "-c", "user.email=test@example.org"));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).directory(repository.toFile()).redirectErrorStream(true);
    builder.environment().put("WATTLE", folder.resolve("wattle").toString());
    Process git = builder.start();
    String said = new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(git.waitFor()).as(said).isEqualTo(expected);
    return said;
  }

  @Test
  void whatIsStagedIsCheckedAndNotWhatLiesInTheFolder() throws IOException, InterruptedException {
    git(0, "add", ".");
    // Not staged: an error in the folder alone stops nothing.
    Files.writeString(repository.resolve("rooms.wattle"), "room hall { lamp: light 12 W }\n");
    assertThat(git(0, "commit", "-m", "one")).contains("nothing found in house.wattle");
    // Staged in a file that the plan uses, and mended in the folder: the commit would bring it in.
    git(0, "add", "rooms.wattle");
    Files.writeString(repository.resolve("rooms.wattle"), "room hall { }\n");
    assertThat(git(1, "commit", "-m", "two")).contains("[device-unfed]", "rooms.wattle:1", "pre-commit: not committed");
    assertThat(git(0, "log", "--oneline")).contains("one").doesNotContain("two");
    git(0, "commit", "-m", "two", "--no-verify");
  }

  @Test
  void aCommitWithoutPlansCostsNothingAndNamedPlansAreTheOnesChecked() throws IOException, InterruptedException {
    Files.writeString(repository.resolve("notes.txt"), "panel ordered\n");
    git(0, "add", "notes.txt");
    assertThat(git(0, "commit", "-m", "notes")).doesNotContain("nothing found");
    Files.writeString(repository.resolve("old.wattle"), "plan \"Old\" revision \"0\"\nroom hall { lamp: light 12 W }\n");
    git(0, "add", ".");
    assertThat(git(1, "commit", "-m", "all")).contains("old.wattle:2");
    git(0, "config", "--add", "wattle.plan", "house.wattle");
    assertThat(git(0, "commit", "-m", "all")).contains("nothing found in house.wattle").doesNotContain("old.wattle:2");
  }
}
