package wattle.cli;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import wattle.emit.media.file.Mark;
import wattle.emit.media.file.Output;
import wattle.emit.media.page.Page;
import wattle.emit.media.picture.PdfPages;
import wattle.emit.media.picture.UnreadablePictureException;
import wattle.emit.media.text.VisibleWriter;

/** In which format, and on which paper, a document is written. */
final class DocumentFormat {
  /** What documents are written as; each document says which of them it knows. */
  enum Format {
    TEXT("txt"), HTML("html"), JSON("json"), PDF("pdf"), CSV("csv"), MD("md");

    private final String ending;

    Format(String ending) {
      this.ending = ending;
    }

    private String word() {
      return EnumerationWord.of(this);
    }
  }

  @Option(
      names = {"-f", "--format"},
      description = "text, html or pdf; for some documents json, csv or md (default: from the file name after --out, otherwise the "
          + "first that the document has).")
  private Format format;

  @Option(names = "--paper", completionCandidates = KnownWords.Pages.class, defaultValue = "letter",
      description = "letter or A4 (default: ${DEFAULT-VALUE}).")
  private String paper;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  /**
   * The format asked for, by its name or by the file's.
   *
   * @param usual taken where neither is given
   */
  Format chosen(ResultOutput output, Format usual, Set<Format> known) {
    return chosen(format, output, usual, known, command.commandLine().getOut());
  }

  /** The same of a command whose option for it says which there are. */
  static Format chosen(Format format, ResultOutput output, Format usual, Set<Format> known, PrintWriter standardOutput) {
    Format chosen = format != null ? format : output.file().isEmpty() ? usual : byName(output, known);
    if (!known.contains(chosen)) {
      throw new Failure("this document is written as " + words(known) + ", not as " + chosen.word());
    }
    if (chosen == Format.PDF && output.file().isEmpty()) {
      throw new Failure("a PDF goes to a file: name it with --out");
    }
    if (chosen == Format.HTML && output.file().isEmpty() && VisibleWriter.columns(standardOutput).isPresent()) {
      throw new Failure("a page is not shown on a terminal: name a file with --out, such as --out page.html");
    }
    return chosen;
  }

  private static Format byName(ResultOutput output, Set<Format> known) {
    String ending = output.ending().orElse("");
    return Arrays.stream(Format.values())
        .filter(f -> f.ending.equals(ending))
        .findFirst()
        .orElseThrow(
            () -> new Failure(
                "the name " + output.file().get() + " does not show a format; end it in "
                    + known.stream().sorted().map(f -> "." + f.ending).collect(Collectors.joining(" or ")) + ", or give --format"));
  }

  private static String words(Set<Format> known) {
    return known.stream().sorted().map(Format::word).collect(Collectors.joining(", "));
  }

  /** Name of the paper, as style sheets write it. */
  String paper() {
    for (String known : List.of("letter", "A4")) {
      if (known.equalsIgnoreCase(paper)) {
        return known;
      }
    }
    throw new Failure("no paper is called '" + paper + "'; letter and A4 are known");
  }

  /** Writes a page as HTML, or as PDF where that was chosen. */
  static void write(Page page, Format chosen, ResultOutput output, PrintWriter standardOutput) {
    if (chosen != Format.PDF) {
      output.writeWhole(Mark.markUp(page.html()), standardOutput);
      return;
    }
    try {
      output.write(List.of(new Output(output.file().orElseThrow(), PdfPages.of(page.html(), page.title()))));
    } catch (UnreadablePictureException e) {
      throw new IllegalStateException("internal error: the page cannot be laid out: " + e.getMessage(), e);
    }
  }
}
