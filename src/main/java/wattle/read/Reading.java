package wattle.read;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import wattle.finding.Checked;
import wattle.finding.Placement;
import wattle.finding.Source;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.syntax.PartwiseParser;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;

/** How texts and packs are read: afresh, or by one who remembers what has not changed. */
public sealed interface Reading {
  /** One file of a plan; its findings are in place. */
  Checked<PlanTree> parse(Source source);

  /** Packs of the standard library with those that they extend, as one library. */
  Library packs(List<String> names);

  /** Names of all packs of the standard library. */
  List<String> packNames();

  /** The code pack that stands in for those that the plan names; empty where its own hold. */
  default Optional<String> codeInstead() {
    return Optional.empty();
  }

  /** Where the spans of the trees that were read last stand. */
  Placement placement();

  /**
   * What later phases keep of a plan from one reading to the next, new where no tree can be as it was. One who remembers keeps
   * one thing, of one kind.
   */
  <M> M memory(Class<M> kind, Supplier<M> fresh);

  /** Reads everything each time; for a process that compiles once. */
  final class Afresh implements Reading {
    @Override
    public Checked<PlanTree> parse(Source source) {
      return PlanParser.parse(source);
    }

    @Override
    public Library packs(List<String> names) {
      return StandardLibrary.library(names);
    }

    @Override
    public List<String> packNames() {
      return StandardLibrary.packNames();
    }

    @Override
    public Placement placement() {
      return Placement.IN_PLACE;
    }

    @Override
    public <M> M memory(Class<M> kind, Supplier<M> fresh) {
      return fresh.get();
    }
  }

  /**
   * Reads a plan as if it named another code pack.
   *
   * @param code name of the pack
   */
  record UnderCode(String code) implements Reading {
    private static final Reading AFRESH = new Afresh();

    @Override
    public Optional<String> codeInstead() {
      return Optional.of(code);
    }

    @Override
    public Checked<PlanTree> parse(Source source) {
      return AFRESH.parse(source);
    }

    @Override
    public Library packs(List<String> names) {
      return AFRESH.packs(names);
    }

    @Override
    public List<String> packNames() {
      return AFRESH.packNames();
    }

    @Override
    public Placement placement() {
      return AFRESH.placement();
    }

    @Override
    public <M> M memory(Class<M> kind, Supplier<M> fresh) {
      return fresh.get();
    }
  }

  /** Reads only what is new to it; for a session in which one plan is compiled at every key stroke. For one thread. */
  final class Remembering implements Reading {
    private final Reading afresh = new Afresh();
    private final Map<String, PartwiseParser> parsers = new HashMap<>();
    private final Map<String, Placement> placements = new HashMap<>();
    private final Map<List<String>, Library> libraries = new HashMap<>();
    private Optional<Object> memory = Optional.empty();
    private List<String> packNames = List.of();

    @Override
    public Checked<PlanTree> parse(Source source) {
      PartwiseParser.Read read = parsers.computeIfAbsent(source.name(), n -> new PartwiseParser()).parse(source);
      placements.put(source.name(), read.placement());
      return new Checked<>(read.tree(), read.findings());
    }

    @Override
    public Library packs(List<String> names) {
      return libraries.computeIfAbsent(List.copyOf(names), afresh::packs);
    }

    @Override
    public List<String> packNames() {
      if (packNames.isEmpty()) {
        packNames = afresh.packNames();
      }
      return packNames;
    }

    @Override
    public Placement placement() {
      return Placement.of(placements.values());
    }

    @Override
    public <M> M memory(Class<M> kind, Supplier<M> fresh) {
      if (placements.containsValue(Placement.IN_PLACE)) {
        return fresh.get(); // a text that was read as a whole has new trees throughout: none is known, and the known ones will be back
      }
      M kept = memory.map(kind::cast).orElseGet(fresh);
      memory = Optional.of(kept);
      return kept;
    }
  }
}
