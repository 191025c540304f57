package wattle.materials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.conductors.Conductors;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetText;
import wattle.emit.sheet.schedule.BoxSchedule;
import wattle.emit.sheet.schedule.RunSchedule;
import wattle.finding.Source;
import wattle.model.DeviceKind;
import wattle.model.Status;
import wattle.read.SourceReader;

/** Lists of materials, added up by another route. */
class MaterialsTest {
  private static final Compiler COMPILER = new Compiler(SourceReader.FROM_DISK);

  private static Compilation compiled(String text) {
    return COMPILER.compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  private static Materials materials(Compilation plan) {
    return Materials.of(plan.house(), plan.library());
  }

  private static Optional<Material> item(Materials materials, String what) {
    return materials.items().stream().filter(m -> m.what().equals(what)).findFirst();
  }

  private static double count(Materials materials, Material.Category category) {
    return materials.items().stream().filter(m -> m.category() == category).mapToDouble(Material::amount).sum();
  }

  /** Cable to buy by type, from the rows of the run table as a spreadsheet would have them. */
  private static Map<String, Double> fromRunTable(Compilation plan) {
    String csv = SheetText.csv(List.of(RunSchedule.of(plan.house(), Conductors.of(plan.house(), plan.library()))));
    List<String> lines = csv.lines().toList();
    List<String> heads = Arrays.asList(lines.get(0).split(","));
    Map<String, Double> meters = new TreeMap<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", heads.size());
      if (cells.length < heads.size() || !cells[heads.indexOf("status")].equals("new")) {
        continue;
      }
      String from = cells[heads.indexOf("from")];
      String to = cells[heads.indexOf("to")];
      double slack = 0;
      for (String end : List.of(from, to)) {
        // A box is room.name; a breaker P/9 and a panel P are a panel's end; the supplier's end gets nothing.
        slack += end.contains(".") ? 0.3 : end.equals("supply") ? 0 : 1.5;
      }
      meters.merge(cells[heads.indexOf("wiring")], (Double.parseDouble(cells[heads.indexOf("length-m")]) + slack) * 1.1, Double::sum);
    }
    return meters;
  }

  @Test
  void cableOfAlderCourtIsTheSumOfItsRuns() throws SourceReader.Unreadable {
    Compilation plan = COMPILER.compile(Path.of("examples/alder-court/house.wattle"));
    Map<String, Double> expected = fromRunTable(plan);
    Map<String, Double> found = materials(plan).items().stream()
        .filter(m -> m.category() == Material.Category.CABLE)
        .collect(Collectors.toMap(Material::what, Material::amount));
    assertThat(expected).hasSizeGreaterThan(8);
    assertThat(found.keySet()).isEqualTo(expected.keySet());
    // The run table shows tenths of a meter; one counter run is 4 ft.
    expected.forEach((what, meters) -> assertThat(found.get(what)).as(what).isCloseTo(meters, within(0.1)));
  }

  @Test
  void countsOfAlderCourtAreThoseOfThePlan() throws SourceReader.Unreadable {
    Compilation plan = COMPILER.compile(Path.of("examples/alder-court/house.wattle"));
    Materials materials = materials(plan);
    assertThat(count(materials, Material.Category.BOX)).isEqualTo(plan.house().boxes().size());
    assertThat(count(materials, Material.Category.BREAKER))
        .isEqualTo(plan.house().panels().values().stream().mapToInt(p -> p.breakers().size()).sum());
    long devices = plan.house().devices().values().stream().filter(d -> d.kind().family() != DeviceKind.Family.JUNCTION).count();
    assertThat(count(materials, Material.Category.DEVICE) + count(materials, Material.Category.EQUIPMENT)).isEqualTo(devices);
    assertThat(plan.house().boxes().values()).allMatch(b -> b.status() == Status.NEW);
  }

  private static List<Map<String, String>> rows(Sheet sheet) {
    try {
      return CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
          .parse(new StringReader(SheetText.csv(List.of(sheet)))).stream().map(CSVRecord::toMap).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** From the tables of runs and of boxes, as a spreadsheet would have them. */
  @ParameterizedTest
  @ValueSource(strings = {"alder-court", "apartment", "duplex", "longcroft"})
  void connectorsCoversAndElectrodesByAnotherRoute(String example) throws SourceReader.Unreadable {
    Compilation plan = COMPILER.compile(Path.of("examples/" + example + "/house.wattle"));
    Materials materials = materials(plan);
    List<Map<String, String>> runs = rows(RunSchedule.of(plan.house(), Conductors.of(plan.house(), plan.library())));
    List<Map<String, String>> boxes = rows(BoxSchedule.of(plan.house(), plan.figures().boxFill()));
    long feeders = runs.stream().filter(r -> r.get("row").equals("feeder") && r.get("from").contains("/")).count();
    long entries = 2 * (feeders + runs.stream().filter(r -> r.get("row").equals("branch")).count());
    assertThat(boxes).noneMatch(b -> b.get("make").contains("plastic") || b.get("make").contains("clamps"));
    double connectors = materials.items().stream().filter(m -> m.what().startsWith("cable connector")).mapToDouble(Material::amount).sum();
    assertThat(connectors).as("each cable enters at its two ends").isEqualTo(entries);

    long straps = boxes.stream().filter(b -> b.get("devices").matches(".*\\b(receptacle|switch)\\b.*")).count();
    double plates = materials.items().stream().filter(m -> m.category() == Material.Category.COVER && !m.what().contains("blank"))
        .mapToDouble(Material::amount).sum();
    assertThat(plates).isEqualTo(straps);

    // Rods are two at least (NFPA 70 250.53(A)(2)), each with its clamp.
    long electrodes = plan.house().services().values().stream().flatMap(s -> s.electrodes().stream())
        .mapToLong(e -> e.kind().equals("rods") ? 2 : 1).sum();
    double clamps = materials.items().stream().filter(m -> m.what().startsWith("ground clamp")).mapToDouble(Material::amount).sum();
    assertThat(clamps).isEqualTo(electrodes).isPositive();
  }

  @Test
  void nothingExistingIsBought() throws SourceReader.Unreadable {
    assertThat(materials(COMPILER.compile(Path.of("examples/cottage/house.wattle"))).items()).isEmpty();
  }

  @Test
  void aNewRunOfAnExistingBranchIsBought() {
    Materials materials = materials(
        compiled(
            """
                panel P existing { bus 100 A slots 12
                  1  15 A       hall
                  2  20 A new   den  }
                branch hall by 14/2 NM-B existing { P --5 m-- hall.a1 --4 m new-- hall.b1 --2 m to-remove-- hall.c1 }
                branch den by 12/2 NM-B { P --later-- den.o1 }
                room hall existing { a1: receptacle   b1: receptacle new   c1: receptacle to-remove }
                room den { o1: receptacle weatherproof 16 in3 }
                """));
    assertThat(item(materials, "14/2 NM-B").orElseThrow().amount()).isCloseTo((4 + 0.6) * 1.1, within(1e-9));
    assertThat(item(materials, "12/2 NM-B")).isEmpty();
    assertThat(materials.open()).anyMatch(o -> o.contains("run of den to den.o1 has no length"));
    assertThat(item(materials, "20 A 1-pole").orElseThrow().amount()).isEqualTo(1);
    assertThat(count(materials, Material.Category.BREAKER)).isEqualTo(1);
    assertThat(count(materials, Material.Category.PANEL)).isZero();
    assertThat(item(materials, "device box, 1-gang, 16 in³, weatherproof").orElseThrow().places()).containsExactly("den.o1");
    assertThat(item(materials, "weatherproof cover, 1-gang")).isPresent();
    assertThat(count(materials, Material.Category.DEVICE)).isEqualTo(2);
  }

  @Test
  void racewaysCountEachConductor() {
    Materials materials = materials(
        compiled(
            """
                panel P { bus 100 A slots 12
                  1+3  20 A two-pole  saw }
                branch saw by 3/4 in EMT with 3 x 12 Cu THWN, 12 Cu ground { P --10 m-- shop.saw }
                room shop is workshop { saw: table saw 1.8 kW }
                """));
    assertThat(item(materials, "3/4 in EMT").orElseThrow().amount()).isCloseTo(11, within(1e-9));
    double each = (10 + 1.5 + 0.3) * 1.1;
    List<String> conductors = new ArrayList<>();
    materials.items().stream().filter(m -> m.category() == Material.Category.CONDUCTOR).forEach(m -> {
      conductors.add(m.what());
      assertThat(m.amount()).isCloseTo(each, within(1e-9));
    });
    assertThat(conductors).hasSize(4);
  }

  @Test
  void jointsAreCountedAsTheyAreMade() {
    // Common practice: feed, two outgoing cables and the device's pigtail are four on hot and neutral, and on the ground.
    Materials materials = materials(
        compiled(
            """
                panel P { bus 100 A slots 12
                  1  15 A  hall }
                branch hall by 14/2 NM-B {
                  P --5 m-- hall.a1 --4 m-- hall.b1
                  hall.a1 --2 m-- hall.lamp
                }
                room hall { a1: receptacle plastic  b1: receptacle   lamp: light 10 W }
                """));
    assertThat(item(materials, "wire connector for 4 × 14 AWG").orElseThrow().amount()).isEqualTo(3);
    // The lamp brings leads: hot, neutral and ground are joined; the last receptacle takes its wires on screws.
    assertThat(item(materials, "wire connector for 2 × 14 AWG").orElseThrow().places()).containsExactly("hall.lamp");
    assertThat(item(materials, "cable connector, 14/2 NM-B").orElseThrow().amount()).as("a plastic box has clamps").isEqualTo(3);
  }

  @Test
  void aLimitOfThePlansOwnStands() {
    Materials materials = materials(
        compiled(
            """
                limit cable-waste "ours" 0 % { source "common practice" }
                limit slack-in-panel "ours" 2 m { source "common practice" }
                panel P { bus 100 A slots 12
                  1  15 A  hall }
                branch hall by 14/2 NM-B { P --5 m-- hall.a1 }
                room hall { a1: receptacle }
                """));
    assertThat(item(materials, "14/2 NM-B").orElseThrow().amount()).isCloseTo(5 + 2 + 0.3, within(1e-9));
  }

  @Test
  void transferSwitchesRodsAndWhatIsLeftOut() {
    Compilation plan = compiled("""
        service main 120/240 V 100 A { source available 10 kA   run 20 m of 2 Al triplex   earth rods by 6 Cu }
        panel P from main { bus 125 A   slots 20   bonded
          main breaker 100 A 10 kA
          1+3  60 A  two-pole  E
        }
        panel E from P/1 by 4 m of 6/3 NM-B { bus 100 A   slots 12
          main transfer 60 A automatic
          9+11  30 A  two-pole back-fed interlocked  gen
        }
        branch gen by 10/3 NM-B { E --8 m-- yard.g }
        room yard is outdoors { g: generator inlet 6.5 kW }
        """);
    Materials materials = materials(plan);
    assertThat(item(materials, "automatic transfer switch 60 A")).map(Material::amount).contains(1.0);
    assertThat(item(materials, "panel, bus 100 A, 12 slots")).isPresent();
    assertThat(item(materials, "ground rod, 8 ft")).map(Material::amount).contains(2.0);
    assertThat(materials.open()).anyMatch(o -> o.contains("the generator that is plugged into yard.g"))
        .anyMatch(o -> o.startsWith("service main: its meter base"));
  }
}
