package wattle.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.finding.Undecided;

/** Runs rules over things of a house. For one thread. */
final class RuleRunner {
  private final Facts facts;
  private final Pace pace;
  private final List<Undecided.Question> doubtful = new ArrayList<>();

  /**
   * @param asNew whether existing work is judged as if it were new
   * @param pace asked at each thing whether to go on
   */
  RuleRunner(HouseIndex index, boolean asNew, Pace pace) {
    this.facts = new Facts(index, asNew);
    this.pace = pace;
  }

  /**
   * Runs rules that are about one kind of thing. All of them are run over a thing before the next one's turn, so that what
   * they ask of it, and of what it hangs on, is at hand.
   *
   * @return for each rule what it finds; nothing is silenced here
   */
  List<List<Finding>> run(List<Rule> rules, List<?> things) {
    List<List<Finding>> found = new ArrayList<>();
    List<Object[]> named = new ArrayList<>();
    for (Rule rule : rules) {
      found.add(new ArrayList<>());
      named.add(new Object[rule.size()]);
    }
    for (Object thing : things) {
      pace.goOn();
      for (int i = 0; i < rules.size(); i++) {
        run(rules.get(i), thing, named.get(i)).ifPresent(found.get(i)::add);
      }
    }
    return found;
  }

  private Optional<Finding> run(Rule rule, Object thing, Object[] named) {
    if (!rule.work().mayBind(facts, thing)) {
      return Optional.empty();
    }
    int before = facts.doubted();
    Object applies = applies(rule, thing, named);
    if (Boolean.FALSE.equals(applies)) {
      return Optional.empty();
    }
    boolean open = applies == null;
    for (Term requirement : rule.requirements()) {
      Object holds = requirement.of(facts, named);
      if (Boolean.FALSE.equals(holds) && applies != null) {
        return Optional.of(finding(rule, named).about(Facts.nameOf(thing)).build());
      }
      open |= holds == null;
    }
    if (open && facts.doubted() != before) {
      doubtful.add(new Undecided.Question(rule.name(), Facts.nameOf(thing)));
    }
    return Optional.empty();
  }

  /** Whether a rule binds a thing and is about it, its values named then; null where the plan does not tell. */
  private Object applies(Rule rule, Object thing, Object[] named) {
    named[0] = thing;
    if (rule.letsFirst()) {
      name(rule, named);
    }
    Object applies = applies(rule, named);
    if (!rule.letsFirst() && !Boolean.FALSE.equals(applies)) {
      name(rule, named);
    }
    return applies;
  }

  private Object applies(Rule rule, Object[] named) {
    Object binds = rule.work().binds(facts, named);
    if (Boolean.FALSE.equals(binds) || rule.filter().isEmpty()) {
      return binds;
    }
    Object filter = rule.filter().get().of(facts, named);
    return Boolean.FALSE.equals(filter) || binds != null ? filter : null;
  }

  /** What could not be decided for a doubt, of all that has been run. */
  List<Undecided.Question> doubtful() {
    return doubtful;
  }

  /** How often a rule could be told, and what it lacked where it could not. */
  void cover(Rule rule, List<?> things, Tally tally) {
    Object[] named = new Object[rule.size()];
    for (Object thing : things) {
      facts.gatherLacking();
      int before = facts.doubted();
      Boolean holds = holds(rule, thing, named);
      if (holds == null) {
        tally.open(rule, facts.lacking(), facts.doubted() != before);
      } else if (rule.work().mayBind(facts, thing) && Boolean.TRUE.equals(applies(rule, named))) {
        tally.told();
      }
    }
  }

  /** What a rule takes as usual since the plan does not state it, of the things at which it would otherwise be open. */
  void presume(Rule rule, List<?> things, Tally tally) {
    Object[] named = new Object[rule.size()];
    for (Object thing : things) {
      facts.gatherPresumed();
      Boolean asUsual = holds(rule, thing, named);
      Map<Property, Set<Object>> presumed = facts.presumed();
      if (asUsual != null && !presumed.isEmpty()) {
        facts.leaveOpen(true);
        Boolean open = holds(rule, thing, named);
        facts.leaveOpen(false);
        if (open == null) {
          tally.lacks(rule, presumed);
        }
      }
    }
  }

  /**
   * Whether a rule holds of a thing; true where it does not apply, null where the plan does not tell. What it asks for may
   * hold although nobody can say whether it applies: that is told as well.
   */
  private Boolean holds(Rule rule, Object thing, Object[] named) {
    if (!rule.work().mayBind(facts, thing)) {
      return true;
    }
    Object applies = applies(rule, thing, named);
    if (Boolean.FALSE.equals(applies)) {
      return true;
    }
    boolean open = false;
    for (Term requirement : rule.requirements()) {
      Object holds = requirement.of(facts, named);
      if (Boolean.FALSE.equals(holds) && applies != null) {
        return false;
      }
      open |= holds == null || Boolean.FALSE.equals(holds);
    }
    return open ? null : Boolean.TRUE;
  }

  private void name(Rule rule, Object[] named) {
    for (Rule.Let let : rule.lets()) {
      named[let.place()] = let.term().of(facts, named);
    }
  }

  private Finding.Builder finding(Rule rule, Object[] named) {
    facts.telling(true);
    Map<String, String> figures = new LinkedHashMap<>();
    Finding.Builder finding = Finding.of(rule.name(), rule.severity(), rule.headline().fill(facts, named, figures));
    boolean first = true;
    for (Rule.Place place : rule.places()) {
      Object at = place.thing().of(facts, named);
      Optional<Span> span = at == null ? Optional.empty() : facts.placeOf(at);
      String words = place.words().map(w -> w.fill(facts, named, figures)).orElse("");
      if (span.isPresent() && first) {
        finding.at(span.get(), words);
        first = false;
      } else if (span.isPresent()) {
        finding.with(span.get(), words);
      }
    }
    finding.because(String.join(" ", rule.notes().stream().map(n -> n.fill(facts, named, figures)).toList()));
    rule.fixes().forEach(f -> finding.fix(f.fill(facts, named, figures)));
    rule.citations().stream().findFirst().ifPresent(finding::source);
    figures.forEach(finding::figure);
    facts.telling(false);
    return finding;
  }
}
