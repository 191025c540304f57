package wattle.rules;

import java.util.List;
import java.util.Optional;
import wattle.finding.Citation;
import wattle.finding.Severity;
import wattle.finding.Span;
import wattle.memo.Once;
import wattle.syntax.Tree;

/**
 * A rule that has been checked and can be run.
 *
 * @param pack where it is from
 * @param title what it asks for, in one line
 * @param kind of the things it is about
 * @param work whom it binds
 * @param size how many values it names
 * @param filter which things it is about; absent where it is about all of the kind
 * @param sort the part of the filter that is the same for all things of one sort, such as all receptacles of one part; empty where there
 *     is none
 * @param lets their terms, in order; the first place is the thing itself
 * @param letsFirst whether what it applies to is said by one of them; else they are worked out only where it applies
 * @param telling what it says where it is broken, made ready when that is first the case
 * @param reason the full story, for {@code explain}
 * @param accept a plan that passes; empty where it has none, which the standard library does not allow
 * @param reject a plan that raises it
 */
public record Rule(
    String name,
    String pack,
    String title,
    Severity severity,
    Kind kind,
    Work work,
    int size,
    Optional<Term> filter,
    Optional<Term> sort,
    List<Let> lets,
    boolean letsFirst,
    List<Term> requirements,
    Once<Telling> telling,
    String reason,
    List<Citation> citations,
    Optional<String> accept,
    Optional<String> reject,
    Span span,
    Tree.Rule tree) {
  public Rule {
    lets = List.copyOf(lets);
    requirements = List.copyOf(requirements);
    citations = List.copyOf(citations);
  }

  /** Exceptions of its article, each with a plan that passes because of it, and the reason where the article has none. */
  public List<Tree.RuleException> exceptions() {
    return tree.exceptions();
  }

  /** A value that the rule names. */
  record Let(int place, Term term) {}

  /** A place that a finding points at. */
  record Place(Term thing, Optional<Template> words) {}

  /** Without requirements of its own, for the test that every condition matters. */
  Rule withoutRequirements() {
    return new Rule(
        name, pack, title, severity, kind, work, size, filter, sort, lets, letsFirst, List.of(), telling, reason, citations, accept, reject,
        span, tree);
  }
}
