package wattle.syntax;

import java.util.Optional;
import java.util.function.Function;
import wattle.syntax.grammar.WattleParser.ThingContext;

/** Reads what a house is made of, by its kind: it stands in a plan or in a pattern. */
record ThingReader(Pieces pieces) implements Function<ThingContext, Optional<Tree.Item>> {
  @Override
  public Optional<Tree.Item> apply(ThingContext c) {
    if (c.panel() != null) {
      return new SupplyReader(pieces).panel(c.panel());
    }
    if (c.branch() != null) {
      return new BranchReader(pieces).branch(c.branch());
    }
    if (c.room() != null) {
      return new RoomReader(pieces).room(c.room());
    }
    if (c.service() != null) {
      return new SupplyReader(pieces).service(c.service());
    }
    if (c.raceway() != null) {
      return new BranchReader(pieces).raceway(c.raceway());
    }
    if (c.trial() != null) {
      return new TrialReader(pieces).trial(c.trial());
    }
    if (c.expectation() != null) {
      return new TrialReader(pieces).expectation(c.expectation());
    }
    if (c.silence() != null) {
      return new TrialReader(pieces).silence(c.silence());
    }
    if (c.let() != null) {
      return new HeadReader(pieces).let(c.let());
    }
    if (c.dwelling() != null) {
      return new HeadReader(pieces).dwelling(c.dwelling());
    }
    if (c.placing() != null) {
      return new PatternReader(pieces).placing(c.placing());
    }
    return Optional.empty(); // nothing could be read; the parser has said so
  }
}
