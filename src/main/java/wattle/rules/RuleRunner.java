package wattle.rules;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.finding.Undecided;
import wattle.quantity.Quantity;

/**
 * Runs rules over things of a house, and keeps what they find, what they could not decide for a doubt, and how far they could be told. For
 * one thread.
 */
final class RuleRunner {
  private final Facts facts;
  private final Pace pace;
  private final Map<Rule, List<Finding>> found = new IdentityHashMap<>();
  private final List<Undecided.Question> doubtful = new ArrayList<>();
  private final Tally tally = new Tally();

  /**
   * @param asNew whether existing work is judged as if it were new
   * @param pace asked at each thing whether to go on
   */
  RuleRunner(HouseIndex index, boolean asNew, Pace pace) {
    this.facts = new Facts(index, asNew);
    this.pace = pace;
  }

  /**
   * Runs the rules of one kind of thing. All of them are run over a thing before the next one's turn, so that what they ask of it, and of
   * what it hangs on, is at hand.
   */
  void run(KindRules rules, List<?> things) {
    // Each rule names its values before it reads them, so that one row of places serves all.
    Object[] named = new Object[rules.places()];
    for (Object thing : things) {
      pace.goOn();
      for (Rule rule : rules.about(facts, thing)) {
        run(rule, thing, named);
      }
    }
  }

  private void run(Rule rule, Object thing, Object[] named) {
    if (!rule.work().mayBind(facts, thing)) {
      return;
    }
    facts.gatherLacking();
    int before = facts.doubted();
    Object applies = applies(rule, thing, named);
    if (Boolean.FALSE.equals(applies)) {
      return;
    }
    Boolean holds = required(rule, named, applies);
    if (Boolean.FALSE.equals(holds)) {
      found.computeIfAbsent(rule, r -> new ArrayList<>()).add(finding(rule, named).about(Facts.nameOf(thing)).build());
    } else if ((holds == null || applies == null) && facts.doubted() != before) {
      doubtful.add(new Undecided.Question(rule.name(), Facts.nameOf(thing)));
    }
    // What a rule requires may be met although nobody can say whether it applies: then nothing is open.
    if (holds == null) {
      tally.open(rule, facts.lacking(), facts.doubted() != before);
    } else if (applies != null) {
      tally.told();
    }
  }

  /** Whether what a rule requires is met; null where the plan does not say, or says no and not whether the rule applies. */
  private Boolean required(Rule rule, Object[] named, Object applies) {
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

  /** What a rule has found, in the order of the things; nothing is silenced here. */
  List<Finding> found(Rule rule) {
    return found.getOrDefault(rule, List.of());
  }

  /** What could not be decided for a doubt, of all that has been run. */
  List<Undecided.Question> doubtful() {
    return doubtful;
  }

  /** How often the rules could be told, and what they lacked where not. */
  Tally tally() {
    return tally;
  }

  /** What a rule takes as usual since the plan does not state it, of the things at which it would otherwise be open. */
  void presume(Rule rule, List<?> things) {
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
    return Boolean.FALSE.equals(applies) ? Boolean.TRUE : required(rule, named, applies);
  }

  private void name(Rule rule, Object[] named) {
    for (Rule.Let let : rule.lets()) {
      named[let.place()] = let.term().of(facts, named);
    }
  }

  private Finding.Builder finding(Rule rule, Object[] named) {
    facts.telling(true);
    Telling telling = rule.telling().get();
    Map<String, String> figures = new LinkedHashMap<>();
    List<Quantity> compared = telling.compared().stream().map(t -> t.of(facts, named)).filter(Quantity.class::isInstance)
        .map(Quantity.class::cast).toList();
    Filling from = new Filling(facts, named, figures, compared);
    Finding.Builder finding = Finding.of(rule.name(), rule.severity(), telling.headline().fill(from));
    boolean first = true;
    for (Rule.Place place : telling.places()) {
      Object at = place.thing().of(facts, named);
      Optional<Span> span = at == null ? Optional.empty() : facts.placeOf(at);
      String words = place.words().map(w -> w.fill(from)).orElse("");
      if (span.isPresent() && first) {
        finding.at(span.get(), words);
        first = false;
      } else if (span.isPresent()) {
        finding.with(span.get(), words);
      }
    }
    finding.because(String.join(" ", telling.notes().stream().map(n -> n.fill(from)).toList()));
    telling.fixes().forEach(f -> finding.fix(f.fill(from)));
    rule.citations().stream().findFirst().ifPresent(finding::source);
    figures.forEach(finding::figure);
    facts.telling(false);
    return finding;
  }
}
