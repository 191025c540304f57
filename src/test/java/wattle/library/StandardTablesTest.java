package wattle.library;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.reference.Reference;

/** Every row of the reference files against what the tables of the standard library say, figure and provenance. */
class StandardTablesTest {
  private static final Library US = library("us-2023");
  private static final Library CA = library("ca-2021");

  private static Library library(String pack) {
    return LibraryLoader.load(StandardLibrary.files(List.of(pack)).value()).value();
  }

  @Test
  void theTablesAreReadWithoutFindings() {
    for (String pack : StandardLibrary.packNames()) {
      var files = StandardLibrary.files(List.of(pack));
      assertThat(files.findings()).as(pack).isEmpty();
      assertThat(LibraryLoader.load(files.value()).findings()).as(pack).isEmpty();
    }
  }

  @Test
  void everyTableAndLimitNamesASource() {
    for (Library library : List.of(US, CA)) {
      assertThat(library.tables()).hasSizeGreaterThan(15);
      library.tables().values().forEach(t -> assertThat(t.citations()).as(t.name()).isNotEmpty());
      library.limits().values().forEach(l -> assertThat(l.citations()).as(l.name()).isNotEmpty());
    }
  }

  /** NFPA 70-2011 chapter 9 table 8. */
  @TestFactory
  List<DynamicTest> resistance() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("awg.csv")) {
      Key[] keys = {is("size", size(row)), is("construction", words(row.get("construction")))};
      for (String metal : List.of("copper", "aluminum")) {
        tests.add(
            test(row, metal, US, "conductor-resistance", metal, row.get("r_dc_75c_" + metal + "_ohm_per_kft"), "ohm/kft", keys));
      }
    }
    return tests;
  }

  /** IEC 60228 table A.2. */
  @TestFactory
  List<DynamicTest> metricResistance() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("metric.csv")) {
      for (String metal : List.of("copper", "aluminum")) {
        tests.add(
            test(
                row, row.get("size_mm2") + " " + metal, US, "conductor-resistance-metric", metal,
                row.get(metal + "_ohm_per_km_20c"), "ohm/km", is("size", amount(row.get("size_mm2"), "mm2"))));
      }
    }
    return tests;
  }

  /** NFPA 70 chapter 9 table 9. */
  @TestFactory
  List<DynamicTest> impedance() {
    List<DynamicTest> tests = new ArrayList<>();
    Map<String, String> columns = Map.of(
        "x_l_pvc", "reactance-plastic", "x_l_steel", "reactance-steel", "r_ac_copper_pvc", "copper-plastic",
        "r_ac_copper_steel", "copper-steel", "r_ac_aluminum_pvc", "aluminum-plastic", "r_ac_aluminum_steel",
        "aluminum-steel");
    for (Map<String, String> row : Reference.rows("ac_impedance.csv")) {
      columns.forEach(
          (theirs, ours) -> tests.add(
              test(
                  row, ours, US, "conductor-impedance", ours, row.get(theirs + "_ohm_per_kft"), "ohm/kft",
                  is("size", size(row)))));
    }
    return tests;
  }

  /** NFPA 70 table 310.16; CSA C22.1 tables 2 and 4; NFPA 70-2020 table 310.12. */
  @TestFactory
  List<DynamicTest> ampacity() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("ampacity.csv")) {
      String name = row.get("table");
      String metal = row.get("material");
      if (name.startsWith("NEC 310.12")) {
        tests.add(
            test(
                row, metal, US, "service-conductor", metal, row.get("size"), "AWG",
                is("rating", amount(row.get("ampacity_a"), "A"))));
      } else {
        Library library = name.startsWith("CSA") ? CA : US;
        String column = metal + "-" + row.get("insulation_temp_c");
        tests.add(test(row, column, library, "ampacity", column, row.get("ampacity_a"), "A", is("size", size(row))));
      }
    }
    return tests;
  }

  /** NFPA 70 tables 310.15(B)(1) and 310.15(C)(1); CSA C22.1 tables 5A and 5C. Both ends of each range. */
  @TestFactory
  List<DynamicTest> correction() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("correction.csv")) {
      Library library = row.get("table").startsWith("CSA") ? CA : US;
      boolean ambient = row.get("quantity").equals("ambient_c");
      for (String end : row.get("range").replace(" or less", "").replace("+", "").split("-")) {
        if (ambient) {
          String column = "rated-" + row.get("insulation_temp_c");
          tests.add(
              test(
                  row, end + " " + column, library, "ambient-correction", column, row.get("factor"), "",
                  notBelow("ambient", amount(end, "degC"))));
        } else {
          tests.add(
              test(
                  row, end, library, "bundling", "factor", row.get("factor"), "", notBelow("conductors", amount(end, ""))));
        }
      }
    }
    return tests;
  }

  /** NFPA 70 tables 250.122 and 250.66; CSA C22.1 table 16 and 10-114. */
  @TestFactory
  List<DynamicTest> grounding() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("grounding.csv")) {
      Library library = row.get("table").startsWith("CSA") ? CA : US;
      for (String metal : List.of("copper", "aluminum")) {
        String expected = row.get(metal + "_awg");
        if (row.get("keyed_by").equals("breaker_rating_max_a")) {
          tests.add(
              test(
                  row, metal, library, "equipment-ground", metal, expected, "AWG",
                  notBelow("rating", amount(row.get("key"), "A"))));
        } else if (row.get("keyed_by").equals("service_conductor_copper")) {
          for (String service : List.of("copper", "aluminum")) {
            for (String end : ends(row.get(service.equals("copper") ? "key" : "key_aluminum"))) {
              tests.add(
                  test(
                      row, service + " " + end + " " + metal, library, "electrode-conductor", metal, expected, "AWG",
                      notBelow("service-" + service, Derivation.stated("size", "", WireSize.parse(end).orElseThrow()))));
            }
          }
        }
      }
    }
    return tests;
  }

  /** Sizes inside the range that a row of table 250.66 prints; one step above where it says "over". */
  private static List<String> ends(String range) {
    Map<String, String> above = Map.of("3/0", "250", "350", "400", "600", "700", "1100", "1250", "250", "300", "500", "600", "900", "1000",
        "1750", "2000");
    List<String> ends = new ArrayList<>();
    for (String end : range.replace(" or smaller", "").split(" to ")) {
      ends.add(end.startsWith("over ") ? above.get(end.substring(5)) : end);
    }
    return ends;
  }

  /** NFPA 70 240.4(D) and table 240.6(A); CSA C22.1 14-104. */
  @TestFactory
  List<DynamicTest> overcurrent() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("overcurrent.csv")) {
      Library library = row.get("table").startsWith("CSA") ? CA : US;
      if (row.get("kind").equals("max_breaker")) {
        String[] conductor = row.get("applies_to").split(" ");
        Derivation size = Derivation.stated("size", "", WireSize.parse(conductor[0]).orElseThrow());
        tests.add(
            test(row, row.get("applies_to"), library, "small-conductor", conductor[2], row.get("value"), "A", is("size", size)));
      } else if (row.get("kind").equals("standard_rating")) {
        tests.add(
            test(
                row, row.get("value"), library, "breaker-ratings", "rating", row.get("value"), "A",
                is("rating", amount(row.get("value"), "A"))));
      }
    }
    return tests;
  }

  /** NFPA 70 314.16; CSA C22.1 tables 22 and 23. */
  @TestFactory
  List<DynamicTest> boxes() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("box.csv")) {
      Library library = row.get("table").startsWith("CSA") ? CA : US;
      String item = row.get("item");
      if (row.get("kind").equals("conductor_allowance")) {
        Derivation size = Derivation.stated("size", "", WireSize.parse(item).orElseThrow());
        tests.add(test(row, item, library, "box-allowance", "volume", volume(row), volumeUnit(row), is("size", size)));
      } else if (row.get("kind").equals("box_volume")) {
        tests.add(test(row, item, library, "box-volume", "volume", volume(row), volumeUnit(row), box(item)));
      }
    }
    return tests;
  }

  /** CSA C22.1 prints milliliters. */
  private static String volumeUnit(Map<String, String> row) {
    return row.get("table").startsWith("CSA") ? "mL" : "in3";
  }

  private static String volume(Map<String, String> row) {
    return row.get(row.get("table").startsWith("CSA") ? "value_ml" : "value");
  }

  /** Keys for {@code 4-11/16 x 1-1/4 square} and {@code 3 x 2 x 1-1/2 device}. */
  private static Key[] box(String item) {
    String[] parts = item.split(" x ");
    int gap = parts[parts.length - 1].indexOf(' ');
    if (parts.length == 1) {
      return new Key[]{is("shape", words(item.substring(0, 2)))};
    }
    String shape = parts[parts.length - 1].substring(gap + 1).split(" ")[0].replace("round", "octagon");
    String width = parts.length == 2 ? parts[0] : parts[1];
    return new Key[]{
        is("shape", words(shape)), is("height", inches(parts[0])), is("width", inches(width)),
        is("depth", inches(parts[parts.length - 1].substring(0, gap)))
    };
  }

  private static Derivation inches(String fraction) {
    double inches = 0;
    for (String part : fraction.split("-")) {
      String[] over = part.split("/");
      inches += Double.parseDouble(over[0]) / (over.length > 1 ? Double.parseDouble(over[1]) : 1);
    }
    return Derivation.stated("length", "", Quantity.of(inches, Units.INCH));
  }

  /** NFPA 70-2011 chapter 9 table 8, note 2; the constants of Preece as reprinted by nessengr.com. */
  @TestFactory
  List<DynamicTest> constants() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("fault.csv")) {
      String metal = row.get("item").split(",")[0];
      if (row.get("kind").equals("temperature_coefficient")) {
        tests.add(
            test(row, metal, US, "temperature-coefficient", "per-kelvin", row.get("value"), "", is("metal", words(metal))));
      } else if (row.get("kind").equals("preece_constant") && row.get("unit").equals("A / inch^1.5") && !metal.equals("iron")) {
        tests.add(
            DynamicTest.dynamicTest(
                metal,
                () -> assertThat(find(US, "melting", "preece", is("metal", words(metal))).si())
                    .isEqualTo(Double.parseDouble(row.get("value")))));
      }
    }
    return tests;
  }

  private static DynamicTest test(
      Map<String, String> row, String name, Library library, String table, String column, String expected, String unit,
      Key... keys) {
    String shown = row.getOrDefault("table", row.getOrDefault("size", "")) + " " + row.getOrDefault("size", "") + " " + name;
    return DynamicTest.dynamicTest(shown, () -> {
      if (expected.equals("-") || expected.isEmpty()) {
        assertThat(library.table(table).orElseThrow().find("", "", column, keys)).isEmpty();
        return;
      }
      Derivation found = find(library, table, column, keys);
      if (unit.equals("AWG")) {
        assertThat(found.value()).isEqualTo(new Value.Size(WireSize.parse(expected).orElseThrow()));
      } else {
        Unit in = unit.isEmpty() ? Units.ONE : Units.find(unit).orElseThrow();
        assertThat(found.quantity().orElseThrow().in(in)).isCloseTo(
            Double.parseDouble(expected), withinPercentage(1e-9));
      }
      boolean doubtful = row.get("provenance").equals("memory");
      assertThat(found.toBeVerified()).as("from memory").isEqualTo(doubtful);
    });
  }

  private static Derivation find(Library library, String table, String column, Key... keys) {
    return library.table(table).orElseThrow().find(column, "", column, keys).orElseThrow(() -> new AssertionError(table));
  }

  private static Key is(String column, Derivation sought) {
    return Key.is(column, sought);
  }

  private static Key notBelow(String column, Derivation sought) {
    return Key.notBelow(column, sought);
  }

  private static Derivation size(Map<String, String> row) {
    return Derivation.stated("size", "", WireSize.parse(row.get("size")).orElseThrow());
  }

  private static Derivation words(String text) {
    return Derivation.stated("word", "", text);
  }

  private static Derivation amount(String figure, String unit) {
    Unit in = unit.isEmpty() ? Units.ONE : Units.find(unit).orElseThrow();
    return Derivation.stated("figure", "", Quantity.of(Double.parseDouble(figure), in));
  }
}
