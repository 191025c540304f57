package wattle.syntax;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.finding.Span;

/**
 * What was written, as small immutable records with exact spans. Nothing is resolved here: words are words, figures are
 * figures with the unit as it was typed. A part that could not be read is absent; the finding about it has been made.
 */
public sealed interface Tree {
  /** Everything that was written for this thing, from its first to its last character. */
  Span span();

  // ---- Pieces

  /** A word, as typed. */
  record Word(String text, Span span) implements Tree {
    @Override
    public String toString() {
      return text;
    }
  }

  /**
   * Words joined by dots: {@code kitchen.c1.upper}.
   *
   * @param text the words with their dots, asked for so often that it is made once
   * @param words never empty
   */
  record Path(String text, List<Word> words, Span span) implements Tree {
    public Path {
      words = List.copyOf(words);
    }

    public Path(List<Word> words, Span span) {
      this(dotted(words), words, span);
    }

    private static String dotted(List<Word> words) {
      if (words.size() == 1) {
        return words.get(0).text();
      }
      StringBuilder joined = new StringBuilder();
      for (Word word : words) {
        joined.append(joined.length() == 0 ? "" : ".").append(word.text());
      }
      return joined.toString();
    }

    public Word first() {
      return words.get(0);
    }

    public Word last() {
      return words.get(words.size() - 1);
    }
  }

  /** A quoted text with its escapes undone; the span includes the quotes. */
  record Text(String value, Span span) implements Tree {}

  /** An expression over quantities. */
  sealed interface Expression extends Tree {}

  /** A number with its unit, where one was written: {@code 15 A}, {@code 33 VA/m2}, {@code 4}. */
  record Figure(double number, Optional<Word> unit, Span span) implements Expression {}

  /** {@code 3 ft 6 in}. */
  record FeetInches(double feet, double inches, Span span) implements Expression {}

  /** The name of something defined by {@code let}, or a path in a library's own expressions. */
  record Reference(Path path, Span span) implements Expression {}

  record Negation(Expression operand, Span span) implements Expression {}

  record Binary(Operator operator, Expression left, Expression right, Span span) implements Expression {}

  /** Arithmetic between two expressions. */
  enum Operator {
    PLUS, MINUS, TIMES, DIVIDED_BY
  }

  /** {@code existing}, {@code new} or {@code to-remove}, as typed. */
  record Status(Word word) implements Tree {
    @Override
    public Span span() {
      return word.span();
    }
  }

  // ---- Wires

  /** What a run is made with. */
  sealed interface Wiring extends Tree {}

  /**
   * {@code 14/2 NM-B}, {@code 4/0 Al triplex}, {@code 2-2-2-4 Al SER}.
   *
   * @param sizes one for each group between dashes
   */
  record CableWiring(
      List<CableSize> sizes, Optional<Word> metal, Optional<Word> type, boolean withoutGround, Span span)
      implements
        Wiring {
    public CableWiring {
      sizes = List.copyOf(sizes);
    }
  }

  /**
   * The parameter of a pattern that stands for a cable: {@code by feed}.
   *
   * @param told whether it was said that no cable is given for it
   */
  record NamedWiring(Word name, boolean told, Span span) implements Wiring {}

  /** {@code 3 sets of 3 in PVC with 4 x 350 kcmil Cu}: the number as written, and one of the sets. */
  record ParallelWiring(double sets, Wiring each, Span number, Span span) implements Wiring {}

  /** {@code 14/2}, {@code 4/0/3}, {@code 2.5/2 mm2}: the figures between slashes, and the unit after them. */
  record CableSize(List<Double> figures, Optional<Word> unit, Span span) implements Tree {
    public CableSize {
      figures = List.copyOf(figures);
    }
  }

  /** {@code 3/4 in EMT with 3 x 12 Cu, 12 Cu ground}. */
  record RacewayWiring(RaceSize race, List<Conductor> conductors, Span span) implements Wiring {
    public RacewayWiring {
      conductors = List.copyOf(conductors);
    }
  }

  /** Trade size and kind of a raceway: {@code 3/4 in EMT}. */
  record RaceSize(double size, Word unit, Word kind, Span span) implements Tree {}

  /** {@code 3 x 12 Cu THWN ground}. */
  record Conductor(
      int count, CableSize size, Optional<Word> metal, Optional<Word> insulation, Optional<Word> role, Span span)
      implements
        Tree {}

  /** Where a run goes, what surrounds it. */
  sealed interface Surroundings extends Tree {}

  /** {@code in attic 50 °C}. */
  record InPlace(Word place, Optional<Expression> temperature, Span span) implements Surroundings {}

  /** {@code bundled 4}. */
  record Bundled(Expression count, Span span) implements Surroundings {}

  /** {@code through bore1, bore2}. */
  record Through(List<Word> raceways, Span span) implements Surroundings {
    public Through {
      raceways = List.copyOf(raceways);
    }
  }

  /** {@code buried 0.6 m}. */
  record Buried(Optional<Expression> depth, Span span) implements Surroundings {}

  /** {@code supported 1.2 m}: no two supports of the run are farther apart. */
  record Supported(Expression apart, Span span) implements Surroundings {}

  /** {@code held 0.25 m}: at each box it is held within so much. */
  record Held(Expression fromBox, Span span) implements Surroundings {}

  /** {@code from-edge 1 in}: nowhere nearer to the edge of the framing that it goes through or along. */
  record FromEdge(Expression distance, Span span) implements Surroundings {}

  /** {@code nail-plated}: behind steel plates where it is near the edge of the framing. */
  record NailPlated(Span span) implements Surroundings {}

  /** {@code floor-area 186 m2}; a fact without a value is a flag, and {@code no} before it says that it is not so. */
  record Fact(Word name, boolean denied, Optional<Expression> amount, Optional<Text> text, Span span) implements Tree {}

  /**
   * A parameter of a pattern where it is used, and what a placement gives for it. Only made by placing: no text is read as one.
   *
   * @param argument absent where what was given is no figure, which has been reported
   * @param span of the parameter in the pattern
   */
  record Given(Optional<Expression> argument, Span span) implements Expression {
    /** What was written where the outermost placement stands. */
    public Expression origin() {
      Expression at = this;
      while (at instanceof Given given && given.argument.isPresent()) {
        at = given.argument.get();
      }
      return at;
    }
  }

  // ---- Patterns

  /**
   * {@code pattern flat(n, drop) { … }}.
   *
   * @param whole whether all of its parameters could be read
   */
  record Pattern(Word name, List<Word> parameters, boolean whole, List<Item> items, Span span) implements Item {
    public Pattern {
      parameters = List.copyOf(parameters);
      items = List.copyOf(items);
    }
  }

  /**
   * {@code place flat(n, 9 m) as flat{n} for n from 1 to 12}.
   *
   * @param listed the parentheses with the arguments in them; empty where they would stand
   */
  record Placing(
      Word pattern, List<Argument> arguments, Word name, Optional<Repetition> repetition, Span listed, Span span)
      implements
        Item {
    public Placing {
      arguments = List.copyOf(arguments);
    }
  }

  /**
   * {@code override floor2.flat1 { … }}: what one placement has instead of what its pattern has, or beside it.
   *
   * @param placement its whole name
   * @param items what it has
   * @param without names of what it has not
   */
  record Overriding(Word placement, List<Item> items, List<Word> without, Span span) implements Item {
    public Overriding {
      items = List.copyOf(items);
      without = List.copyOf(without);
    }
  }

  /** What a placement gives for a parameter: exactly one of the two is present. */
  record Argument(Optional<Expression> figure, Optional<Text> text, Optional<CableWiring> cable, Span span) implements Tree {}

  /** {@code for n from 1 to 12}. */
  record Repetition(Word name, Expression from, Expression to, Span span) implements Tree {}

  // ---- Items

  /** Something that stands on its own in a file. */
  sealed interface Item extends Tree {}

  record Heading(Optional<Text> title, Optional<Text> revision, Span span) implements Item {}

  /**
   * {@code use code us-2023}, {@code use "garage.wattle"}.
   *
   * @param kind {@code code}, {@code parts} or {@code rules}; absent for a file
   * @param target the name or the quoted path, without quotes
   */
  record Use(Optional<Word> kind, Word target, boolean quoted, Span span) implements Item {}

  record Let(Word name, Expression value, Span span) implements Item {}

  /** @param panels the panels that feed it; empty where all do */
  record Dwelling(Optional<Word> name, Optional<Text> label, List<Word> panels, List<Fact> facts, Span span)
      implements
        Item {
    public Dwelling {
      panels = List.copyOf(panels);
      facts = List.copyOf(facts);
    }
  }

  record Service(
      Word name,
      Optional<Text> label,
      Optional<Voltages> voltages,
      List<Expression> amounts,
      Optional<Word> threePhase,
      Optional<Status> status,
      List<SourceLine> sources,
      List<ServiceRun> runs,
      List<Earth> earths,
      List<Fact> facts,
      Span span)
      implements
        Item {
    public Service {
      amounts = List.copyOf(amounts);
      sources = List.copyOf(sources);
      runs = List.copyOf(runs);
      earths = List.copyOf(earths);
      facts = List.copyOf(facts);
    }
  }

  /** {@code 120/240 V}. */
  record Voltages(double low, double high, Word unit, Span span) implements Tree {}

  /** {@code source transformer 50 kVA 1.8 % ratio 2}. */
  record SourceLine(
      Word kind, List<Expression> amounts, Optional<Expression> ratio, Optional<Text> label, Span span)
      implements
        Tree {
    public SourceLine {
      amounts = List.copyOf(amounts);
    }
  }

  record ServiceRun(Expression length, Wiring wiring, List<Surroundings> surroundings, Span span) implements Tree {
    public ServiceRun {
      surroundings = List.copyOf(surroundings);
    }
  }

  /** {@code earth rods by 6 Cu 25 ohm}. */
  record Earth(
      Word electrode, Optional<Wiring> wiring, List<Expression> amounts, Optional<Status> status, Span span)
      implements
        Tree {
    public Earth {
      amounts = List.copyOf(amounts);
    }
  }

  record Panel(
      Word name,
      Optional<Text> label,
      Optional<Feed> feed,
      Optional<Expression> feederLength,
      Optional<Wiring> feederWiring,
      List<Surroundings> surroundings,
      Optional<Word> kind,
      Optional<Status> status,
      List<PanelStatement> statements,
      Span span)
      implements
        Item {
    public Panel {
      surroundings = List.copyOf(surroundings);
      statements = List.copyOf(statements);
    }
  }

  /** {@code from main}, {@code from P/9}. */
  record Feed(Word from, Optional<SlotSpan> slots, Span span) implements Tree {}

  sealed interface PanelStatement extends Tree {}

  /** {@code 2+4  20 A two-pole ground-fault counter "Counter"}. */
  record Slot(
      SlotSpan slots,
      List<Expression> amounts,
      List<Word> traits,
      List<Word> legs,
      Optional<Terminals> terminals,
      Optional<Status> status,
      List<Word> words,
      Optional<Text> label,
      Optional<Repetition> repetition,
      Span span)
      implements
        PanelStatement {
    public Slot {
      amounts = List.copyOf(amounts);
      traits = List.copyOf(traits);
      legs = List.copyOf(legs);
      words = List.copyOf(words);
    }
  }

  /** The slots a breaker takes: {@code 2+4}, {@code 10a}. */
  record SlotSpan(List<SlotNumber> numbers, Span span) implements Tree {
    public SlotSpan {
      numbers = List.copyOf(numbers);
    }

    /** The slots as they are written where none is worked out: {@code 2+4}. */
    public String text() {
      return numbers.stream().map(SlotNumber::text).collect(java.util.stream.Collectors.joining("+"));
    }

    /** Whether every slot is written as a number, so that another can stand in its place. */
    public boolean isWritten() {
      return numbers.stream().noneMatch(n -> n.computed().isPresent());
    }
  }

  /**
   * One slot, or one half of it: {@code half} is {@code a} or {@code b}.
   *
   * @param number -1 for a figure that is no slot of any panel, or is not worked out yet
   * @param computed {@code (2 * n)}, where it is not written as a number
   */
  record SlotNumber(int number, Optional<Character> half, Optional<Expression> computed, Span span) implements Tree {
    /** As it is written, where it has no number. */
    public Optional<String> misfit() {
      return number < 0 ? Optional.of(span.text()) : Optional.empty();
    }

    public String text() {
      return number < 0 ? span.text() : number + half.map(String::valueOf).orElse("");
    }
  }

  /** What terminals are marked for: a temperature, metals, or both. */
  record Terminals(Optional<Expression> temperature, List<Word> metals, Span span) implements Tree {
    public Terminals {
      metals = List.copyOf(metals);
    }
  }

  /** {@code main breaker 200 A 22 kA}; {@code kind} is {@code breaker}, {@code fuse}, {@code lugs} or {@code switch}. */
  record Main(Word kind, List<Expression> amounts, List<Word> traits, Optional<Terminals> terminals, List<Word> words, Span span)
      implements
        PanelStatement {
    public Main {
      amounts = List.copyOf(amounts);
      traits = List.copyOf(traits);
      words = List.copyOf(words);
    }
  }

  record Bus(Expression rating, Span span) implements PanelStatement {}

  record SlotCount(Expression count, Span span) implements PanelStatement {}

  record Bonded(Span span) implements PanelStatement {}

  record Order(Word order, Span span) implements PanelStatement {}

  /** The room that a panel hangs in. */
  record PanelRoom(Word room, Span span) implements PanelStatement {}

  /** An electrode at a panel of another building. */
  record PanelEarth(Earth earth) implements PanelStatement {
    @Override
    public Span span() {
      return earth.span();
    }
  }

  record PanelTerminals(Terminals terminals, Span span) implements PanelStatement {}

  record PanelFact(Fact fact) implements PanelStatement {
    @Override
    public Span span() {
      return fact.span();
    }
  }

  record Branch(
      Word name,
      Optional<Text> label,
      Optional<Wiring> wiring,
      List<Surroundings> surroundings,
      Optional<Word> kind,
      Optional<Status> status,
      List<Chain> chains,
      Span span)
      implements
        Item {
    public Branch {
      surroundings = List.copyOf(surroundings);
      chains = List.copyOf(chains);
    }
  }

  /** A place and the runs that lead on from it. */
  record Chain(Place from, List<Run> runs, Span span) implements Tree {
    public Chain {
      runs = List.copyOf(runs);
    }
  }

  /**
   * A box or device on a branch.
   *
   * @param hot color or leg of the hot it sits on, where said
   * @param wired {@code through} or {@code pigtail}, where said
   */
  record Place(Path path, Optional<Word> hot, Optional<Word> wired, Span span) implements Tree {}

  /**
   * A run from the place before it to {@code to}.
   *
   * @param length absent where none was written, or where {@code later} was
   * @param dashes the dashes with all that stands between them
   */
  record Run(
      Optional<Expression> length,
      boolean later,
      Optional<Wiring> wiring,
      List<Surroundings> surroundings,
      Optional<Status> status,
      Span dashes,
      Place to,
      Span span)
      implements
        Tree {
    public Run {
      surroundings = List.copyOf(surroundings);
    }
  }

  record Raceway(
      Word name,
      Optional<Text> label,
      Optional<RaceSize> size,
      Optional<Expression> length,
      List<Surroundings> surroundings,
      Optional<Status> status,
      Span span)
      implements
        Item {
    public Raceway {
      surroundings = List.copyOf(surroundings);
    }
  }

  record Room(
      Word name,
      Optional<Text> label,
      Optional<Word> kind,
      List<Fact> facts,
      Optional<Status> status,
      List<Box> boxes,
      List<Device> devices,
      Span span)
      implements
        Item {
    public Room {
      facts = List.copyOf(facts);
      boxes = List.copyOf(boxes);
      devices = List.copyOf(devices);
    }
  }

  record Box(
      Word name,
      Optional<Integer> gangs,
      List<Expression> amounts,
      List<Word> words,
      Optional<Status> status,
      List<Device> devices,
      Span span)
      implements
        Tree {
    public Box {
      amounts = List.copyOf(amounts);
      words = List.copyOf(words);
      devices = List.copyOf(devices);
    }
  }

  /**
   * {@code c1: ground-fault receptacle at counter protects onward}.
   *
   * @param words kind and traits, in the order written; which is which the parts library says
   */
  record Device(
      Word name,
      List<Word> words,
      List<DeviceAmount> amounts,
      List<Path> controls,
      Optional<Word> at,
      Optional<Word> hot,
      Optional<Terminals> terminals,
      Optional<Status> status,
      Optional<Text> label,
      Span span)
      implements
        Tree {
    public Device {
      words = List.copyOf(words);
      amounts = List.copyOf(amounts);
      controls = List.copyOf(controls);
    }
  }

  /** A figure of a device and the word just before it, which may name it: {@code upper 10 A}. */
  record DeviceAmount(Optional<Word> before, Expression value) implements Tree {
    @Override
    public Span span() {
      return value.span();
    }
  }

  record Trial(Word name, Optional<Text> label, List<Event> events, Span span) implements Item {
    public Trial {
      events = List.copyOf(events);
    }
  }

  /** One thing that is so in a trial. */
  sealed interface Event extends Tree {}

  record OpenConductor(Word conductor, Path of, Optional<Path> at, Span span) implements Event {}

  record OpenBreaker(Word panel, SlotSpan slots, Span span) implements Event {}

  record OpenServiceNeutral(Span span) implements Event {}

  record OpenMain(Word panel, Span span) implements Event {}

  record Lose(Word service, Span span) implements Event {}

  record Transfer(Word panel, Path position, Span span) implements Event {}

  record Give(Path path, Expression amount, Span span) implements Event {}

  record Loosen(Word conductor, Path at, Expression added, Span span) implements Event {}

  record Lift(Path at, Optional<Expression> leakage, Span span) implements Event {}

  record Fault(Word from, Word to, Path at, Optional<Expression> through, Span span) implements Event {}

  record Move(Word branch, SlotSpan slots, Span span) implements Event {}

  record Swap(Path at, Span span) implements Event {}

  record Draw(Path path, List<Expression> amounts, Optional<Word> behavior, Span span) implements Event {
    public Draw {
      amounts = List.copyOf(amounts);
    }
  }

  record Turn(Path path, boolean on, Span span) implements Event {}

  /**
   * {@code expect neutral of counter is at most 0 A within 0.1 A in breakfast}.
   *
   * @param measure what is measured, word by word
   * @param link {@code of} or {@code at}, where there is a subject
   * @param relation whether the figure is a value, a ceiling or a floor, or whether protection trips
   * @param value absent where it is said that protection trips or holds
   */
  record Expectation(
      List<Word> measure,
      Optional<Word> link,
      Optional<Subject> subject,
      Relation relation,
      Optional<Expression> value,
      Optional<Expression> within,
      Optional<Word> trial,
      Optional<Text> label,
      Span measured,
      Span span)
      implements
        Item {
    public Expectation {
      measure = List.copyOf(measure);
    }
  }

  /** How a measured figure must stand to the stated one. */
  enum Relation {
    IS, AT_MOST, AT_LEAST, TRIPS, HOLDS
  }

  /** A thing of the plan: {@code kitchen.c1}, {@code P/2+4}. */
  record Subject(Path path, Optional<SlotSpan> slots, Span span) implements Tree {}

  /** @param within name of the placement that it holds in; absent for one of the plan itself */
  record Silence(Word rule, Optional<Subject> at, Optional<String> within, Text reason, Span span) implements Item {}

  // ---- Libraries

  record Pack(Word name, Optional<Text> label, Optional<Word> base, Span span) implements Item {}

  record Part(List<Word> name, List<Property> properties, List<Cited> citations, Span span) implements Item {
    public Part {
      name = List.copyOf(name);
      properties = List.copyOf(properties);
      citations = List.copyOf(citations);
    }
  }

  record CableType(
      Word name, Optional<Text> label, List<Property> properties, List<Cited> citations, Span span)
      implements
        Item {
    public CableType {
      properties = List.copyOf(properties);
      citations = List.copyOf(citations);
    }
  }

  /** A line of a library block: its name and the values after it; a comma stands between values only to be read. */
  record Property(Word name, List<Value> values, Span span) implements Tree {
    public Property {
      values = List.copyOf(values);
    }
  }

  /** Exactly one of the three is present. */
  record Value(Optional<Expression> amount, Optional<Word> word, Optional<Text> text, Span span) implements Tree {}

  record Table(
      Word name,
      Optional<Text> label,
      List<Column> columns,
      List<Row> rows,
      List<Cited> citations,
      Span span)
      implements
        Item {
    public Table {
      columns = List.copyOf(columns);
      rows = List.copyOf(rows);
      citations = List.copyOf(citations);
    }
  }

  /** A column and the unit its figures are in, such as {@code ohm/kft}. */
  record Column(Word name, Optional<Word> unit, Span span) implements Tree {}

  record Row(List<Cell> cells, boolean fromMemory, Span span) implements Tree {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  /**
   * A cell as typed without spaces, and the figure where it is one: {@code 3.07}, {@code 2/0}, {@code 11..15},
   * {@code 41..-}, {@code -}.
   *
   * @param quoted whether it stood in quotes, and so is words whatever it looks like
   */
  record Cell(String text, Optional<Double> number, boolean quoted, Span span) implements Tree {}

  record Limit(Word name, Optional<Text> label, Expression value, List<Cited> citations, Span span)
      implements
        Item {
    public Limit {
      citations = List.copyOf(citations);
    }
  }

  /** {@code source "NFPA 70-2023" "210.4" from memory}. */
  record Cited(Text work, Optional<Text> place, boolean fromMemory, Span span) implements Tree {}

  // ---- Rules

  /**
   * A rule of a pack.
   *
   * @param scope what it is about; absent where the rule lacks it, which is a finding
   * @param lets values that it names, in order
   * @param headline with holes in braces
   * @param accept a plan that passes, as text between its braces
   * @param exceptions of its article, each with a plan that it lets pass
   */
  record Rule(
      Word name,
      Optional<Text> title,
      Optional<RuleScope> scope,
      Optional<RuleWork> work,
      List<RuleLet> lets,
      List<Claim> requirements,
      Optional<Word> severity,
      Optional<Text> headline,
      List<RuleMark> marks,
      List<Text> notes,
      List<RuleFix> fixes,
      Optional<Text> reason,
      List<Cited> citations,
      Optional<Text> accept,
      List<RuleException> exceptions,
      Optional<RuleReject> reject,
      Span span)
      implements
        Item {
    public Rule {
      lets = List.copyOf(lets);
      requirements = List.copyOf(requirements);
      marks = List.copyOf(marks);
      notes = List.copyOf(notes);
      fixes = List.copyOf(fixes);
      citations = List.copyOf(citations);
      exceptions = List.copyOf(exceptions);
    }
  }

  /** {@code for each run r where …}. */
  record RuleScope(Word kind, Word name, Optional<Claim> filter, Span span) implements Tree {}

  /**
   * Whom a rule binds: {@code for all work}, {@code for new work}.
   *
   * @param all whether existing work is bound as well as new
   * @param which what makes it new work; absent where the thing itself is to be new
   */
  record RuleWork(boolean all, Optional<Claim> which, Span span) implements Tree {}

  record RuleLet(Word name, Claim value, Span span) implements Tree {}

  /** Where a finding points, and the words there. */
  record RuleMark(Path place, Optional<Text> words, Span span) implements Tree {}

  /** What can be done, as an order, and as edits of the text where it can be said so exactly. */
  record RuleFix(Text order, List<RuleEdit> edits, Span span) implements Tree {
    public RuleFix {
      edits = List.copyOf(edits);
    }
  }

  /** {@code d.breaker with "ground-fault"}, {@code k.rating becomes "{k.wire-limit}"}. */
  record RuleEdit(Path place, EditManner manner, Text text, Span span) implements Tree {}

  /**
   * An exception of the article that a rule is from, or the reason why it has none.
   *
   * @param denied whether it says that there is none
   * @param article where it stands and what it allows; of one that is denied the reason
   * @param plan that passes because of it; absent where it is denied
   */
  record RuleException(boolean denied, Text article, Optional<Text> plan, Span span) {}

  /** A plan that must raise the rule: written out, or the accepted one with one text replaced by another. */
  record RuleReject(Optional<Text> plan, Optional<Text> replaced, Optional<Text> by, Span span) implements Tree {}

  /** Something that is true or false of a house, or a value that such a claim is made of. */
  sealed interface Claim extends Tree {}

  record ClaimNegation(Claim operand, Span span) implements Claim {}

  record ClaimArithmetic(Operator operator, Claim left, Claim right, Span span) implements Claim {}

  /** {@code is stated}, {@code is not stated}. */
  record ClaimStated(Claim operand, boolean not, Span span) implements Claim {}

  record ClaimComparison(Comparator comparator, Claim left, Claim right, Span span) implements Claim {}

  record ClaimNot(Claim operand, Span span) implements Claim {}

  record ClaimAnd(Claim left, Claim right, Span span) implements Claim {}

  /** @param bare a claim with <em>and</em> that stands on one side without parentheses, which {@code rule-or-beside-and} refuses */
  record ClaimOr(Claim left, Claim right, Optional<Span> bare, Span span) implements Claim {}

  record ClaimIf(Claim condition, Claim then, Span span) implements Claim {}

  /** {@code every d in r.devices where … has …}. */
  record ClaimEach(Amount amount, Word name, Path list, Optional<Claim> filter, Claim has, Span span) implements Claim {}

  record ClaimCount(Word name, Path list, Optional<Claim> filter, Span span) implements Claim {}

  /** {@code sum of d.load for d in r.devices}, or the most or least of them. */
  record ClaimGathered(Gathering gathering, Claim value, Word name, Path list, Optional<Claim> filter, Span span)
      implements
        Claim {}

  record ClaimFigure(Expression value, Span span) implements Claim {}

  record ClaimText(Text text, Span span) implements Claim {}

  record ClaimProperty(Path path, Span span) implements Claim {}

  /** How an edit of a rule changes a statement. */
  enum EditManner {
    BECOMES, WITH, WITHOUT;

    /** The manner that a word says; absent for any other word. */
    static Optional<EditManner> of(String word) {
      return Stream.of(values()).filter(m -> m.name().toLowerCase(Locale.ROOT).equals(word)).findFirst();
    }
  }

  /** How two values are compared. */
  enum Comparator {
    IS, IS_NOT, AT_MOST, AT_LEAST, ABOVE, BELOW, INCLUDES
  }

  /** How many of a list must have something. */
  enum Amount {
    EVERY, SOME, NO
  }

  /** What is made of many values. */
  enum Gathering {
    SUM, MOST, LEAST
  }
}
