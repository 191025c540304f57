import java.nio.file.Path;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.loads.LegLoads;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.read.SourceReader;

/**
 * Wattle as a library: compiles a plan, and prints what was found in it, what each breaker feeds, and the connected load of each leg.
 *
 * <pre>java -cp 'lib/wattle/wattle.jar' examples/program/ReadHouse.java examples/alder-court/house.wattle</pre>
 */
public final class ReadHouse {
  private ReadHouse() {}

  public static void main(String[] arguments) throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of(arguments[0]));
    for (Finding finding : plan.facts()) {
      String place = finding.place().map(mark -> mark.span() + ": ").orElse("");
      System.out.println(place + finding.severity() + ": " + finding.headline());
    }
    for (Panel panel : plan.house().panels().values()) {
      for (Breaker breaker : panel.breakers()) {
        System.out.println(breaker.id() + "  " + breaker.rating().map(Object::toString).orElse("?") + "  " + breaker.label().orElse(""));
      }
      // Figures are worked out when they are asked for, and once.
      LegLoads load = plan.figures().loads().panel(panel.name());
      for (Leg leg : panel.system().legs()) {
        System.out.println("panel " + panel.name() + " leg " + leg + ": " + Math.round(load.on(leg)) + " VA connected");
      }
    }
    System.out.println("Figures are an aid: the adopted local code and a licensed person decide.");
  }
}
