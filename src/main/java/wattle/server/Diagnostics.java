package wattle.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticCodeDescription;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DiagnosticTag;
import org.eclipse.lsp4j.Range;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mark;
import wattle.finding.Span;

/** Findings as an editor shows them. */
final class Diagnostics {
  /** Other places that one place of a fact leads to. */
  private static final int PLACES_NAMED = 20;
  /** The same of all places of a fact together: each has its line in an editor's list anyway. */
  private static final int PLACES_NAMED_OF_ALL = 60;

  private Diagnostics() {}

  /**
   * Findings by file. One that has no place in the plan's own files stands at the start of the plan, so that it is seen
   * all the same.
   */
  static Map<Path, List<Diagnostic>> of(Analysis analysis, LibraryTexts library) {
    Map<Path, List<Diagnostic>> byFile = new LinkedHashMap<>();
    for (Finding fact : analysis.compilation().facts()) {
      List<Mark> everywhere = fact.everywhere();
      for (Finding finding : byPlace(fact)) {
        Path file = finding.place().flatMap(m -> analysis.fileOf(m.span())).orElse(analysis.plan());
        byFile.computeIfAbsent(file, f -> new ArrayList<>()).add(diagnostic(finding, everywhere, file, analysis, library));
      }
    }
    return byFile;
  }

  /** A fact as one finding for each place in the text, so that each line that is to be mended shows it. */
  private static Collection<Finding> byPlace(Finding fact) {
    Map<Optional<Span>, Finding> places = new LinkedHashMap<>();
    fact.each().forEach(f -> places.merge(f.place().map(Mark::span), f, Finding::alsoAtPlace));
    return places.values();
  }

  private static Diagnostic diagnostic(Finding finding, List<Mark> everywhere, Path file, Analysis analysis, LibraryTexts library) {
    LineIndex lines = analysis.lines(file);
    Optional<Mark> place = finding.place().filter(m -> analysis.fileOf(m.span()).isPresent());
    Range range = place.map(m -> lines.range(m.span())).orElseGet(() -> lines.range(0, 0));
    Diagnostic diagnostic = new Diagnostic(range, message(finding), severity(finding), "wattle", finding.rule());
    Stream<Mark> others = everywhere.stream().filter(m -> !place.map(p -> p.span().equals(m.span())).orElse(false))
        .limit(Math.min(PLACES_NAMED, PLACES_NAMED_OF_ALL / Math.max(1, everywhere.size()))).map(m -> new Mark(m.span(), "the same here"));
    List<DiagnosticRelatedInformation> related = Stream.concat(finding.related().stream(), others)
        .flatMap(m -> related(m, analysis).stream())
        .toList();
    if (!related.isEmpty()) {
      diagnostic.setRelatedInformation(related);
    }
    library.link(finding.rule(), analysis.compilation().library()).map(DiagnosticCodeDescription::new)
        .ifPresent(diagnostic::setCodeDescription);
    if (finding.silenced().isPresent()) {
      diagnostic.setTags(List.of(DiagnosticTag.Unnecessary));
    }
    return diagnostic;
  }

  private static Optional<DiagnosticRelatedInformation> related(Mark mark, Analysis analysis) {
    String words = mark.words().isEmpty() ? mark.span().text() : mark.words();
    return analysis.location(mark.span()).map(place -> new DiagnosticRelatedInformation(place, words));
  }

  private static DiagnosticSeverity severity(Finding finding) {
    if (finding.silenced().isPresent()) {
      return DiagnosticSeverity.Hint;
    }
    return switch (finding.severity()) {
      case ERROR -> DiagnosticSeverity.Error;
      case WARNING -> DiagnosticSeverity.Warning;
      case ADVICE -> DiagnosticSeverity.Information;
    };
  }

  /** The headline first, since lists of an editor show one line; the rest is what the text form says as well. */
  private static String message(Finding finding) {
    StringBuilder text = new StringBuilder(finding.told());
    finding.place().map(Mark::words).filter(w -> !w.isEmpty()).ifPresent(w -> text.append(": ").append(w));
    if (!finding.reason().isEmpty()) {
      text.append('\n').append(finding.reason());
    }
    for (Fix fix : finding.fixes()) {
      text.append("\nfix: ").append(fix.order());
    }
    finding.silenced().ifPresent(why -> text.append("\nsilenced: ").append(why));
    finding.source().ifPresent(source -> text.append("\nsource: ").append(source));
    return text.toString();
  }
}
