package wattle.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;

/** Mutants of what people fill in outside of a plan, given to the commands that read it: panel schedules, prices, test sheets. */
final class SheetTarget {
  private static final List<String> ODD = List.of("", "\"", "\"\"", ",", ";", "\t", "\r", "\u00A0", "\uFEFF", "-1", "0", "1e999", "1e-999",
      "NaN", "\u221E", "99999999999999999999", "1/0", "0.0000000001", "1,5", "1.5", "20 A", "2+4", "1-41", "1\u20133", "all", "\u2713", "x",
      "\uD83D\uDD0C", "\uD800", "\u202E", "${x}", "=1+1", "'", "\\", "//", "{", "}", "slot", "reading", "each", "ft", "m", "M\u03A9",
      ">999",
      "spare", "A1", "main", "range 50A", "\u0130\u0131", "plan", "k.c1");

  private final Path folder;
  private final Path plan;
  private final List<String> schedules = new ArrayList<>();
  private final List<String> prices = new ArrayList<>();
  private final List<String> readings = new ArrayList<>();

  /** @param folder for the plan and the sheets */
  SheetTarget(Path folder) throws IOException {
    this.folder = folder;
    plan = Files.copy(Path.of("examples", "kitchen-renovation", "after.wattle"), folder.resolve("plan.wattle"));
    schedules.add("slot,rating,poles,description\n1,15,1,Hall lights\n2+4,40,2,Range\n3,20,1,\"Kitchen, counter\"\n5,20,1,spare\n");
    schedules.add("description;poles;slot;rating\nDryer;2;1;30 A\nBedroom 2;1;2;15\nWater heater;2;5;30\nBath;1;6;20\n");
    prices.add("item,unit,price,hours\n14/2 NM-B,m,1.10,0.05\nreceptacle,each,3.20,0.3\n12/2 NM-B,ft,0.55,0.02\n");
    prices.add("hours;price;unit;item\n0,5;12,40;each;switch\n0,1;1,10;m;14/2 NM-B\n");
    for (String reading : List.of("0.2", "> 200", "yes", "119.8 V")) {
      String sheet = AnyInput.run(List.of("test-sheet", "--format", "csv", plan.toString())).out();
      readings.add(sheet.lines().map(l -> l.endsWith(",") ? l + reading : l).collect(Collectors.joining("\n")));
    }
  }

  /** Tries one; what was tried comes back, for the message of a find. */
  String take(Random random) throws IOException {
    int kind = random.nextInt(3);
    String sheet = mutant(List.of(schedules, prices, readings).get(kind), random);
    take(kind, sheet);
    return sheet;
  }

  /** Gives a text to one of the three commands: 0 a schedule, 1 prices, 2 readings. */
  void take(int kind, String sheet) throws IOException {
    Path csv = Files.writeString(folder.resolve("sheet.csv"), new String(sheet.getBytes("UTF-8"), "UTF-8"));
    List<String> command = switch (kind) {
      case 0 -> List.of("begin", "--from", csv.toString(), "-");
      case 1 -> List.of("table", "--of", "materials", "--prices", csv.toString(), plan.toString());
      default -> List.of("test-sheet", "--read", csv.toString(), plan.toString());
    };
    AnyInput.Outcome outcome = AnyInput.run(command);
    AnyInput.requireClean(command + " of\n" + sheet, outcome, sheet);
    if (kind == 0 && outcome.code() == 0) {
      Path made = Files.writeString(folder.resolve("made.wattle"), outcome.out());
      AnyInput.Outcome checked = AnyInput.run(List.of("check", made.toString()));
      AnyInput.requireClean("check of the plan made from\n" + sheet, checked, sheet);
      if (checked.out().contains("is not part of the notation") || checked.out().contains(": unexpected ")) {
        throw new AssertionError("a plan that cannot be read is made from\n" + sheet + "\n" + checked.out());
      }
    }
  }

  private static String mutant(List<String> sheets, Random random) {
    StringBuilder text = new StringBuilder(sheets.get(random.nextInt(sheets.size())));
    for (int i = 1 + random.nextInt(6); i > 0; i--) {
      int at = random.nextInt(text.length() + 1);
      switch (random.nextInt(7)) {
        case 0 -> text.insert(at, ODD.get(random.nextInt(ODD.size())));
        case 1 -> text.delete(at, Math.min(text.length(), at + 1 + random.nextInt(8)));
        case 2 -> inCells(text, random, cells -> cells.set(random.nextInt(cells.size()), ODD.get(random.nextInt(ODD.size()))));
        case 3 -> inCells(text, random, cells -> Collections.swap(cells, random.nextInt(cells.size()), random.nextInt(cells.size())));
        case 4 -> inLines(text, lines -> lines.add(lines.get(random.nextInt(lines.size()))));
        case 5 -> inLines(text, lines -> lines.remove(random.nextInt(lines.size())));
        default -> text.insert(at, (char) random.nextInt(random.nextBoolean() ? 0x80 : 0x3000));
      }
      if (text.length() == 0) {
        return "";
      }
    }
    return text.toString();
  }

  private static void inLines(StringBuilder text, java.util.function.Consumer<List<String>> change) {
    List<String> lines = new ArrayList<>(Arrays.asList(text.toString().split("\n", -1)));
    change.accept(lines);
    text.replace(0, text.length(), String.join("\n", lines));
  }

  private static void inCells(StringBuilder text, Random random, java.util.function.Consumer<List<String>> change) {
    inLines(text, lines -> {
      int line = random.nextInt(lines.size());
      String separator = lines.get(line).contains(";") ? ";" : ",";
      List<String> cells = new ArrayList<>(Arrays.asList(lines.get(line).split(separator, -1)));
      change.accept(cells);
      lines.set(line, String.join(separator, cells));
    });
  }
}
