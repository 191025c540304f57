package wattle.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaFileObject;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * Only their profiles run benchmarks and the fuzzer; that they still compile, and that their long plan has no findings, is held
 * here.
 */
class SourcesBesideTheTestsTest {
  @ParameterizedTest
  @ValueSource(strings = {"src/bench/java", "src/fuzz/java"})
  void compile(String folder, @TempDir Path classes) throws IOException {
    List<Path> sources;
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      sources = files.filter(file -> file.toString().endsWith(".java")).toList();
    }
    assertThat(sources).isNotEmpty();
    var compiler = ToolProvider.getSystemJavaCompiler();
    var problems = new DiagnosticCollector<JavaFileObject>();
    try (var files = compiler.getStandardFileManager(problems, Locale.ROOT, null)) {
      List<String> options = List.of("-proc:none", "-nowarn", "-classpath", System.getProperty("java.class.path"), "-d",
          classes.toString());
      boolean compiled = compiler.getTask(null, files, problems, options, null, files.getJavaFileObjectsFromPaths(sources)).call();
      assertThat(compiled).as(() -> problems.getDiagnostics().toString()).isTrue();
    }
  }

  @Test
  void nothingIsFoundInTheLongPlan() {
    Source plan = new Source("tower.wattle", Tower.plan(3));
    assertThat(new Compiler(SourceReader.FROM_DISK).compile(plan, Path.of(plan.name())).findings())
        .allMatch(found -> found.silenced().isPresent());
  }
}
