package wattle.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import wattle.npm.NodePackages;

/** The accessibility engine axe-core, as its package registry has it, on the page that a browser shows. */
final class Accessibility {
  private final Path folder;

  /** @param folder that may be filled */
  Accessibility(Path folder) {
    this.folder = folder;
  }

  private String engine() throws IOException, InterruptedException {
    Assumptions.assumeTrue(NodePackages.canBeFetched(), "no npm is installed, so the pages were not judged by the accessibility engine");
    Path packages = folder.resolve("packages");
    if (!Files.exists(packages)) {
      NodePackages.fetch(Path.of("src/test/browser"), Files.createDirectory(packages));
    }
    return Files.readString(packages.resolve("node_modules/axe-core/axe.min.js"));
  }

  /**
   * Rules of WCAG 2.2, levels A and AA, and the good practices that the engine knows.
   *
   * @param rules of the engine that are set otherwise
   */
  List<String> violations(Browser browser, String rules) throws IOException, InterruptedException {
    browser.run(engine());
    JsonNode result = browser.run("axe.run(document, {resultTypes: ['violations'], rules: " + rules + "}).then(r => "
        + "({passes: r.passes.length, violations: r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)"
        + " + ' ' + n.failureSummary).join(' | '))}))");
    assertThat(result.get("passes").asInt()).as("rules that had something to look at").isGreaterThan(20);
    List<String> violations = new ArrayList<>();
    result.get("violations").forEach(v -> violations.add(v.asText()));
    return violations;
  }
}
