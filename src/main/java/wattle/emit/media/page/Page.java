package wattle.emit.media.page;

import wattle.emit.media.text.Escape;
import wattle.words.Caution;

/**
 * The frame of a page: self-contained, readable on a screen, made for paper.
 *
 * @param title of the document and its window
 * @param paper as style sheets name it: {@code letter}, {@code A4}, and {@code landscape} behind it where turned
 * @param style rules of this document beside the common ones
 * @param body what stands in the page, well-formed
 */
public record Page(String title, String paper, String style, String body) {
  /** What every page that someone may act on says. */
  public static final String CAUTION = "House current kills. This page is made from a plan; the house may be built differently. "
      + Caution.LONG;

  private static final String COMMON = """
      * { box-sizing: border-box; }
      body { font: 10pt/1.35 sans-serif; color: #000; background: #fff; margin: 0; }
      h1 { font-size: 17pt; margin: 0 0 0.15em; }
      h2 { font-size: 11.5pt; margin: 0.8em 0 0.25em; border-bottom: 1pt solid #000; }
      p { margin: 0.25em 0; }
      ul { margin: 0.2em 0; padding-left: 1.3em; }
      li { margin: 0.1em 0; }
      table { border-collapse: collapse; width: 100%; }
      th, td { border: 0.6pt solid #444; padding: 0.18em 0.45em; text-align: left; vertical-align: top; }
      th { background: #e8e8e8; }
      .caution { border: 2pt solid #000; padding: 0.35em 0.6em; font-weight: bold; }
      small, .small { font-size: 9pt; }
      .figure { text-align: right; }
      tr, .together { page-break-inside: avoid; }
      h2 { page-break-after: avoid; }
      @media screen { body { margin: 0 auto; max-width: 56em; padding: 1.5em; } }
      """;

  /** The page as HTML that is also XML. */
  public String html() {
    return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"><head><meta charset=\"utf-8\"/>"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/><meta name=\"description\" content=\""
        + Escape.xml(title) + "\"/><title>" + Escape.xml(title) + "</title><style>@page { size: " + paper
        + "; margin: 13mm; @bottom-right { font-family: sans-serif; font-size: 9pt; content: \""
        + "page \" counter(page) \" of \" counter(pages); } }\n"
        + COMMON + style + "</style></head><body>\n" + body + "</body></html>\n";
  }
}
