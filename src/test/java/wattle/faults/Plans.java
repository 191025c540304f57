package wattle.faults;

import java.nio.file.Path;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.conductors.Conductors;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Small plans for the tests of this package. */
final class Plans {
  private Plans() {}

  static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  static Faults faults(String text) {
    return faults(compile(text));
  }

  static Faults faults(Compilation plan) {
    return Faults.of(plan.house(), plan.library(), Conductors.of(plan.house(), plan.library()));
  }

  /** A house of one panel and one branch that ends in one receptacle. */
  static String house(String source, String breaker, String branch) {
    return """
        plan "Test" use code us-2023
        service main 120/240 V 200 A {
          %s
        }
        panel P from main {
          bus 200 A slots 20 bonded
          main breaker 200 A 22 kA
          1 %s far
        }
        branch far %s
        room r { one: receptacle }
        """
        .formatted(source, breaker, branch);
  }
}
