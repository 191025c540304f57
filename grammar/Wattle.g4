/*
 * The notation of Wattle: plans, and the libraries that plans use, in one grammar.
 *
 * A statement ends at its line end or where the next one begins; a line end is a token, so that one mistake stays in
 * its line. The grammar says the shape; what words mean together (units, parts, names) is checked while binding, where
 * the message can speak of the house.
 */
grammar Wattle;

@lexer::members {
  /** Whether what was read last is a letter. */
  private boolean isLetter() {
    return Character.isLetter(_input.LA(-1));
  }
}

plan : (NL | item)* EOF ;

item
  : heading | use | pattern | overriding | thing
  | pack | part | cable | table | limit | ruleBlock
  ;
/** What a house is made of: it stands in a plan, or in a pattern and so in each of its placements. */
thing
  : let | dwelling | service | panel | branch | raceway | room | trial | expectation | silence | placing
  ;

// ---- A plan

heading : 'plan' STRING ('revision' STRING)? ;

use : 'use' useKind? (STRING | useName) ;
useKind : 'code' | 'parts' | 'rules' ;
useName : word ('/' word)* ;

let : 'let' word '=' expression ;

dwelling : 'dwelling' word? STRING? ('on' panelName (',' NL* panelName)*)? '{' (NL | fact)* '}' ;
panelName : path ;
/** What a thing has, with its figure; {@code no} says that it is not so, where silence leaves it open. */
fact : 'no' WORD | WORD (amount | STRING)? ;

// ---- Patterns

pattern : 'pattern' word parameters? '{' (NL | thing)* '}' ;
parameters : '(' (parameter (',' NL* parameter)*)? ')' ;
parameter : word ;
placing : 'place' word arguments? 'as' word repetition? ;
arguments : '(' (argument (',' NL* argument)*)? ')' ;
argument : STRING | 'by' cabling | expression ;
/** What one placement has instead of, or beside, what its pattern has. */
overriding : 'override' path '{' (NL | thing | leftOut)* '}' ;
leftOut : 'without' path ;
/** Once for each whole number of a range, which a name stands for. */
repetition : 'for' word 'from' amount 'to' amount ;

// ---- Supply

service : 'service' word STRING? serviceItem* '{' (NL | serviceStatement)* '}' ;
serviceItem : voltages | amount | 'three-phase' | status ;
voltages : NUMBER '/' NUMBER UNIT ;
serviceStatement
  : 'source' word sourceItem*                 # source
  | 'run' amount 'of' wiring surroundings*    # serviceRun
  | 'earth' word earthItem*                   # earth
  | fact                                      # serviceFact
  ;
sourceItem : 'ratio' amount | amount | STRING ;
earthItem : 'by' wiring | amount | status ;

panel : 'panel' word STRING? panelItem* '{' panelLine (NL panelLine)* '}' ;
panelItem : 'from' path ('/' slotSpan)? | 'by' (amount 'of')? wiring | surroundings | status | 'is' word ;
/** Settings may share a line; a slot or the main ends it, since the words after them are its own. */
panelLine : panelSetting* (slot | main)? ;
panelSetting
  : 'bus' amount                   # bus
  | 'slots' amount                 # slots
  | 'bonded'                       # bonded
  | 'order' word                   # order
  | 'room' path                    # panelRoom
  | 'earth' word earthItem*        # panelEarth
  | terminals                      # panelTerminals
  | fact                           # panelFact
  ;
slot : slotSpan slotItem* repetition? ;
main : 'main' mainKind slotItem* ;
/** What connecting screws and lugs are marked for: how hot they may be, and which metals they take. */
terminals : 'terminals' (amount terminalMetal* | terminalMetal+) ;
terminalMetal : metal | 'CO-ALR' ;
mainKind : 'breaker' | 'fuse' | 'lugs' | 'switch' | 'transfer' ;
slotSpan : slotNumber ('+' slotNumber)* ;
slotNumber : NUMBER | HALF_SLOT | '(' expression ')' ;
slotItem : amount | terminals | breakerTrait | 'leg' mark ('+' mark)* | 'later' | 'spare' | status | path | STRING ;
breakerTrait
  : 'single-pole' | 'two-pole' | 'three-pole' | 'handle-tied'
  | 'arc-fault' | 'ground-fault' | 'fuse' | 'pinned' | 'back-fed' | 'interlocked' | 'switched-neutral' | 'type-b' | 'type-c' | 'type-d'
  ;

// ---- Branches

branch : 'branch' word STRING? branchItem* '{' (NL | chain)* '}' ;
branchItem : 'by' wiring | surroundings | status | 'is' word ;
chain : place (run place)* ;
place : (path | 'later') placeItem* ;
placeItem : 'on' mark | 'through' | 'pigtail' ;
run : '--' (runLength runItem* '--' NL*)? ;
runLength : amount | 'later' ;
runItem : 'by' wiring | surroundings | status ;

surroundings : 'in' word amount? | 'bundled' amount | 'through' path (',' NL* path)* | 'buried' amount? | 'supported' amount | 'held' amount
  | 'from-edge' amount | 'nail-plated' ;

/** A name stands for the cable that is given to a pattern. */
wiring : sets? (raceSize 'with' conductor (',' NL* conductor)* | cabling) | word ;
/** Conductors in parallel: so many alike, joined at both ends, each with a raceway or sheath of its own. */
sets : NUMBER 'sets' 'of' ;
cabling : cableSizes metal? WORD? ('without' 'ground')? ;
cableSizes : cableSize ('-' cableSize)* ;
cableSize : NUMBER ('/' NUMBER)* UNIT? ;
raceSize : (NUMBER '-')? NUMBER ('/' NUMBER)? (UNIT | 'in') WORD ;
conductor : (NUMBER ('x' | '×'))? wireSize metal? WORD? role? ;
wireSize : NUMBER ('/' NUMBER)? UNIT? ;
metal : 'Cu' | 'Al' ;
role : 'hot' | 'neutral' | 'ground' ;

raceway : 'raceway' word STRING? racewayItem* ;
racewayItem : 'by' (amount 'of')? raceSize | surroundings | status ;

// ---- Rooms

room : 'room' word STRING? roomItem* '{' (NL | box | device)* '}' ;
roomItem : 'is' word | word amount | 'no'? WORD | status ;
box : 'box' word boxItem* '{' (NL | device)* '}' ;
boxItem : NUMBER '-' 'gang' | amount | word | status ;
device : word ':' deviceItem+ ;
deviceItem
  : amount
  | terminals
  | 'for' path (',' NL* path)*
  | 'at' word
  | 'on' mark
  | status
  | STRING
  | breakerTrait
  | word
  ;

// ---- What if, and what must hold

trial : 'trial' word STRING? '{' (NL | event)* '}' ;
event
  : 'open' conductorName 'of' path ('at' path)?                  # openConductor
  | 'open' 'breaker' path '/' slotSpan                           # openBreaker
  | 'open' 'service' 'neutral'                                   # openServiceNeutral
  | 'open' 'main' path                                           # openMain
  | 'lose' path                                                  # lose
  | 'transfer' path 'to' path                                    # transfer
  | 'loosen' conductorName 'at' path 'by' amount                 # loosen
  | 'lift' 'ground' 'at' path ('leaking' amount)?                # lift
  | 'fault' conductorName 'to' conductorName 'at' path ('through' amount)?  # fault
  | 'move' path 'to' slotSpan                                    # move
  | 'swap' 'at' path                                             # swap
  | path 'draws' amount drawItem*                                # draw
  | path 'gives' amount                                          # give
  | path ('on' | 'off')                                          # turn
  ;
conductorName : 'hot' | 'neutral' | 'ground' | 'earth' | word ;
drawItem : amount | 'impedance' | 'current' | 'power' ;

expectation
  : 'expect' measure 'is' ('at' ('most' | 'least'))? expression ('within' amount)? ('in' path)? STRING?
  | 'expect' 'breaker'? subject ('trips' | 'holds') ('in' path)? STRING?
  ;
measure : word+ (('of' | 'at') subject)? ;
subject : path ('/' slotSpan)? ;

silence : 'silence' word ('at' subject)? 'because' STRING ;

// ---- Libraries

pack : 'pack' word STRING ('extends' word)? ;

part : 'part' (word | breakerTrait)+ '{' (NL | citation | property)* '}' ;
cable : 'cable' word STRING? '{' (NL | citation | property)* '}' ;
property : word propertyValue* NL ;
propertyValue : amount | word | breakerTrait | STRING | ',' ;

table : 'table' word STRING? '{' (NL | citation | columns | row)* '}' ;
columns : 'columns' column+ NL ;
column : word unit? ;
row : cell+ ('from' 'memory')? NL ;
cell : NUMBER ('/' NUMBER)? | ('-' | NUMBER) '..' ('-' | NUMBER) | '-' | mark | STRING ;
limit : 'limit' word STRING? amount '{' (NL | citation)* '}' ;
citation : 'source' STRING STRING? ('from' 'memory')? ;

// ---- Rules

ruleBlock : 'rule' word STRING? '{' (NL | ruleLine)* '}' ;
ruleLine
  : 'for' 'each' word mark ('where' claim)?          # ruleScope
  | 'for' ('all' 'work' | 'new' 'work' ('where' claim)?)  # ruleWork
  | 'let' word '=' claim                             # ruleLet
  | 'require' claim                                  # ruleRequire
  | 'otherwise' ('error' | 'warning' | 'advice') words  # ruleOtherwise
  | 'at' quality STRING?                           # ruleMark
  | 'note' words                                     # ruleNote
  | 'fix' words (NL* ruleEdit)*                      # ruleFix
  | 'because' words                                  # ruleReason
  | citation                                         # ruleSource
  | 'accept' sample                                  # ruleAccept
  | 'no'? 'exception' words sample?                  # ruleException
  | 'reject' (sample | STRING 'becomes' STRING)      # ruleReject
  ;
/** What a fix changes in the text: a figure, or words that a statement has or lacks. */
ruleEdit : quality ('becomes' | 'with' | 'without') STRING ;
/** A text that may go on over several lines, each piece in quotes of its own. */
words : STRING (NL* STRING)* ;
/** A plan within a rule: read when the rule is tried, and till then only skipped. */
sample : '{' sampleToken* '}' ;
sampleToken : sample | ~('{' | '}') ;

claim
  : '-' claim                                                       # claimNegation
  | claim ('*' | '×' | '/' | '÷') claim                             # claimProduct
  | claim ('+' | '-') claim                                         # claimSum
  | claim 'is' 'not'? 'stated'                                      # claimStated
  | claim comparator claim                                          # claimComparison
  | 'not' claim                                                     # claimNot
  | claim NL* 'and' claim                                           # claimAnd
  | claim NL* 'or' claim                                            # claimOr
  | 'if' claim NL* 'then' claim                                     # claimIf
  | ('every' | 'some' | 'no') mark 'in' quality ('where' claim)? 'has' claim  # claimEach
  | 'count' 'of' mark 'in' quality ('where' claim)?               # claimCount
  | ('sum' | 'most' | 'least') 'of' claim 'for' mark 'in' quality ('where' claim)?  # claimSumOf
  | '(' claim ')'                                                   # claimGroup
  | quantity                                                        # claimFigure
  | STRING                                                          # claimText
  | quality                                                       # claimProperty
  ;
comparator : 'is' ('not' | 'at' ('most' | 'least') | 'above' | 'below')? | 'includes' ;
/** What a rule speaks of: a thing it has named, a property of it, or a limit, as in {@code r.breaker.rating}. */
quality : ('limit' | 'x' | UNIT | WORD) ('.' (mark | breakerTrait))* ;

// ---- Shared pieces

status : 'existing' | 'new' | 'to-remove' ;

amount : quantity | '(' expression ')' ;
/** Also in fractions, as motors and pipe are named: {@code 1/2 hp}, {@code 1-1/2 in}, {@code 1 1/2 hp}. */
quantity : NUMBER 'ft' NUMBER 'in' | (NUMBER '-'?)? NUMBER '/' NUMBER unitName | NUMBER unit? ;
unit : unitName ('/' unitName)? ;
unitName : UNIT | 'in' | 'ft' | 'hp' ;

expression
  : '-' expression                                       # negation
  | expression ('*' | '×' | '/' | '÷') expression        # product
  | expression ('+' | '-') expression                    # sum
  | '(' expression ')'                                   # group
  | quantity                                             # figure
  | path                                                 # reference
  ;

path : word ('.' mark)* ;

/** A name. Words that are keywords elsewhere stay free to be names; a unit is no name, so that 15 A is never two things. */
word
  : WORD | HOLED
  | 'plan' | 'revision' | 'use' | 'code' | 'parts' | 'rules' | 'let' | 'dwelling' | 'service' | 'three-phase'
  | 'source' | 'run' | 'earth' | 'ratio' | 'panel' | 'main' | 'breaker' | 'lugs' | 'switch' | 'bus' | 'slots'
  | 'bonded' | 'order' | 'branch' | 'bundled' | 'through' | 'pigtail'
  | 'buried' | 'raceway' | 'hot' | 'neutral' | 'ground' | 'room' | 'box' | 'gang' | 'trial' | 'open' | 'loosen'
  | 'lift' | 'leaking' | 'fault' | 'move' | 'swap' | 'draws' | 'off' | 'impedance' | 'current' | 'power'
  | 'expect' | 'most' | 'least' | 'silence' | 'pack' | 'extends' | 'part' | 'cable' | 'table' | 'columns'
  | 'limit' | 'memory' | 'x' | 'Cu' | 'Al'
  | 'rule' | 'each' | 'where' | 'require' | 'otherwise' | 'error' | 'warning' | 'advice' | 'note' | 'fix' | 'accept'
  | 'exception'
  | 'reject' | 'becomes' | 'stated' | 'above' | 'below' | 'includes' | 'not' | 'and' | 'or' | 'if' | 'then' | 'every'
  | 'some' | 'no' | 'has' | 'count' | 'sum' | 'terminals' | 'CO-ALR' | 'lose' | 'gives' | 'transfer' | 'trips' | 'holds'
  | 'supported' | 'held' | 'from-edge' | 'nail-plated' | 'hp' | 'sets'
  | 'pattern' | 'place' | 'as' | 'all' | 'work' | 'override'
  ;

/** A letter or name where no figure can come before it: a leg, a color, a name behind a dot. */
mark : word | UNIT | 'ft' | 'later' | 'spare' | 'fuse' | 'leg' ;

// ---- Tokens

UNIT
  : 'A' | 'mA' | 'kA' | 'V' | 'mV' | 'kV' | 'W' | 'kW' | 'VA' | 'kVA' | 'Wh' | 'kWh'
  | '\u03A9' | '\u2126' | 'ohm' | 'm\u03A9' | 'm\u2126' | 'mohm' | 'k\u03A9' | 'k\u2126' | 'kohm'
  | 'm' | 'cm' | 'mm' | 'km' | 'kft' | 'mm²' | 'mm2' | 'cm²' | 'cm2' | 'm²' | 'm2' | 'ft²' | 'ft2' | 'in²' | 'in2'
  | 'in³' | 'in3' | 'cm³' | 'cm3' | 'mL' | '°C' | 'degC' | '°F' | 'degF' | 'K' | '%'
  | 's' | 'ms' | 'min' | 'h' | 'Hz' | 'AWG' | 'kcmil' | 'A2s' | 'A²s'
  ;

HALF_SLOT : DIGIT+ [ab] ;
NUMBER : DIGIT+ ('.' DIGIT+)? ;
WORD : LETTER (LETTER | DIGIT)* ('-' (LETTER | DIGIT)+)* ;
/** A name with holes that figures or names are put into: {@code flat{n}}. A block's brace stands apart from a name. */
HOLED : WORD '-'? HOLE ('-'? (HOLE | (LETTER | DIGIT)+))* ;
STRING : '"' (ESCAPE | ~["\\\r\n])* '"' ;
OPEN_STRING : '"' (ESCAPE | ~["\\\r\n])* ;
NL : '\r'? '\n' | '\r' ;
SPACE : [ \t\u00A0\uFEFF]+ -> skip ;
COMMENT : '//' ~[\r\n]* -> channel(HIDDEN) ;
STRAY : . ;

fragment ESCAPE : '\\' ["\\nt] ;
fragment HOLE : '{' WORD '}' ;
fragment DIGIT : [0-9] ;
/** Beyond ASCII, what the Java machine takes for a letter. The compiler reads tokens by wattle.syntax.PlanLexer, as these rules say. */
fragment LETTER : [a-zA-Z_] | ~[\u0000-\u007F] {isLetter()}? ;
