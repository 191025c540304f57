package wattle.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** What is downloaded is always the same, and is looked at: pinned versions, digests that are compared, a bill of materials. */
class DependenciesTest {
  private static Document pom;
  private static final Map<String, String> PROPERTIES = new HashMap<>();

  @BeforeAll
  static void read() throws Exception {
    pom = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(Path.of("pom.xml").toFile());
    NodeList properties = pom.getElementsByTagName("properties");
    for (int i = 0; i < properties.getLength(); i++) {
      for (Node child = properties.item(i).getFirstChild(); child != null; child = child.getNextSibling()) {
        PROPERTIES.put("${" + child.getNodeName() + "}", child.getTextContent());
      }
    }
  }

  private static String child(Element of, String name) {
    for (Node child = of.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child.getNodeName().equals(name)) {
        return child.getTextContent().strip();
      }
    }
    return "";
  }

  /** Maven only warns of a digest that is wrong unless it is told otherwise. */
  @Test
  void aWrongDigestEndsTheBuild() throws IOException {
    assertThat(Files.readAllLines(Path.of(".mvn", "maven.config"))).contains("--strict-checksums");
  }

  @Test
  void everyVersionIsPinned() {
    for (String kind : new String[]{"dependency", "plugin"}) {
      Set<String> pinned = new HashSet<>();
      Set<String> named = new HashSet<>();
      NodeList all = pom.getElementsByTagName(kind);
      for (int i = 0; i < all.getLength(); i++) {
        Element one = (Element) all.item(i);
        String name = child(one, "artifactId");
        String stated = child(one, "version");
        String version = PROPERTIES.getOrDefault(stated, stated);
        named.add(name);
        if (!version.isEmpty()) {
          assertThat(version).as(name).matches("[0-9][0-9A-Za-z.-]*").doesNotContain("SNAPSHOT");
          pinned.add(name);
        }
      }
      assertThat(named).as(kind).hasSizeGreaterThan(3);
      assertThat(pinned).as(kind).containsAll(named);
    }
  }

  /** Both who asks for it and what is handed out get the bill, of what runs and not of the tests. */
  @Test
  void theBillOfMaterialsIsOfWhatIsBundled() {
    NodeList plugins = pom.getElementsByTagName("plugin");
    int bills = 0;
    for (int i = 0; i < plugins.getLength(); i++) {
      Element plugin = (Element) plugins.item(i);
      if (child(plugin, "artifactId").equals("cyclonedx-maven-plugin")) {
        assertThat(plugin.getTextContent()).contains("bill-of-materials", "makeBom", "json");
        assertThat(plugin.getElementsByTagName("includeTestScope").item(0).getTextContent()).isEqualTo("false");
        bills++;
      }
    }
    assertThat(bills).isEqualTo(2);
  }
}
