/*
 * Lines and blocks of the Passband language. Before it comes here, a file's words have been laid out in lines: every
 * statement ends in one NEWLINE, every brace is matched, and every line starts with a word that its block knows. What
 * is left to go wrong is inside one line, so one bad line is one error.
 */
parser grammar PassbandParser;

options { tokenVocab = PassbandLexer; }

file: (use | device | analyzer | leads | rule_ | sharedPart | procedure | NEWLINE)* EOF;

use: USE TEXT NEWLINE;

// ---- device ----------------------------------------------------------------------------------------------------

device: deviceHead LBRACE NEWLINE deviceItem* RBRACE NEWLINE;
deviceHead: DEVICE name TEXT?;
deviceItem: outlet | mode_ | action | state | extraSetting | measure | bound | allow | NEWLINE;

// What holds in every test.
bound: name limit NEWLINE;

outlet: outletHead (LBRACE NEWLINE outletItem* RBRACE)? NEWLINE;
outletHead: OUTLET outletName (COMMA outletName)*;
outletName: name TEXT? (RENAMED FROM name)?;
outletItem: (POLE | EARTH) name TEXT? (HOLDS NUMBER)? NEWLINE # terminal
    | CONTACT name TEXT? (ON ref)? (BY HAND)? (HOLDS NUMBER)? NEWLINE # terminal
    | JOIN ref COMMA ref NEWLINE # outletJoin
    | bound # outletBound
    | NEWLINE # blankOutletLine
    ;

mode_: modeHead (LBRACE NEWLINE modeItem* RBRACE)? NEWLINE;
modeHead: MODE modeName (COMMA modeName)* ON names (THROUGH name)? (RENAMED FROM name)?;
modeName: name TEXT? (RENAMED FROM name)?;
modeItem: SETTING name series NEWLINE # modeSetting
    | LOAD loadSeries NEWLINE # modeLoad
    | OUTPUT name limit NEWLINE # modeOutput
    | DUTY (CONTINUOUS | amount ON COMMA amount OFF) NEWLINE # modeDuty
    | ACTIVATE BY ref (COMMA ref)* NEWLINE # modeActivate
    | name limit NEWLINE # modeLimit
    | name unknown NEWLINE # modeUnknown
    | allow # modeAllow
    | NEWLINE # blankModeLine
    ;

action: ACTION name TEXT (AS name)? NEWLINE;

state: stateHead LBRACE NEWLINE stateItem* RBRACE NEWLINE;
stateHead: STATE name TEXT?;
stateItem: (ENTER | LEAVE) TEXT NEWLINE # stateText
    | NEWLINE # blankStateLine
    ;

extraSetting: SETTING name TEXT? (ONE OF option (COMMA option)* | series) (LEAVE (name | amount))? NEWLINE;
option: name TEXT?;

// ---- analyzer and leads ----------------------------------------------------------------------------------------

analyzer: analyzerHead LBRACE NEWLINE analyzerItem* RBRACE NEWLINE;
analyzerHead: ANALYZER name TEXT?;
analyzerItem: jack | loadBank | measure | action | settle | reads | extraSetting | allow | NEWLINE;

jack: (JACK | KEY) name TEXT? (ON EARTH | FLOATING)? (HOLDS NUMBER)? NEWLINE;

settle: SETTLE (amount | unknown) NEWLINE;
reads: READS IN amount NEWLINE;

loadBank: loadHead LBRACE NEWLINE loadItem* RBRACE NEWLINE;
loadHead: LOAD name? FROM ref TO ref;
loadItem: VALUES loadSeries NEWLINE # loadValues
    | ERROR (accuracy | unknown) NEWLINE # loadError
    | POWER (powerRating (COMMA powerRating)* | unknown) NEWLINE # loadPower
    | JOIN ref COMMA ref NEWLINE # loadJoin
    | NEWLINE # blankLoadLine
    ;
powerRating: amount (FOR amount | CONTINUOUS);

measure: measureHead LBRACE NEWLINE measureItem* RBRACE NEWLINE;
measureHead: MEASURE name (FROM ref TO ref (THROUGH amount)?)?;
measureItem: rangeHead (LBRACE NEWLINE rangeItem* RBRACE)? NEWLINE # measureRange
    | rangeItem # measureFlat
    ;
rangeHead: RANGE amount TO amount;
rangeItem: RESOLUTION amount NEWLINE # rangeResolution
    | ERROR (accuracy | unknown) NEWLINE # rangeError
    | NEWLINE # blankRangeLine
    ;

// In the place of a rating that nobody states.
unknown: UNKNOWN BECAUSE TEXT;

accuracy: accuracyTerm (PLUS accuracyTerm)* (AS name (COVERAGE factor=NUMBER)?)? (DEGREES_OF_FREEDOM freedom=NUMBER)?;
accuracyTerm: amount (OF (READING | RANGE))?;

leads: leadsHead LBRACE NEWLINE leadsItem* RBRACE NEWLINE;
leadsHead: LEADS name TEXT?;
leadsItem: lead | allow | NEWLINE;
lead: (LEAD | LINK | ACCESSORY) name TEXT? (COMMA RATED (amount | unknown))? (COMMA COLOUR name)? NEWLINE;

// ---- acceptance ------------------------------------------------------------------------------------------------

rule_: ruleHead LBRACE NEWLINE ruleItem* RBRACE NEWLINE;
ruleHead: RULE name TEXT?;
ruleItem: derive_ | accept | allow | NEWLINE;

accept: ACCEPT acceptance NEWLINE;
acceptance: BY names
    | name limit (COMMA READ (readAs readBy? | readBy))?
    ;
readAs: AS name;
readBy: BY name;

limit: WITHIN tolerance (OF expression)? (OR tolerance (OF expression)? COMMA WHICHEVER IS (GREATER | SMALLER))? # limitWithin
    | FROM STATED # limitStated
    | FROM OUTPUT # limitOutput
    | FROM DEVICE # limitDevice
    | FROM expression TO expression # limitBetween
    | AT MOST expression # limitAtMost
    | AT LEAST expression # limitAtLeast
    ;
tolerance: part (PLUS part)* # toleranceSame
    | PLUS part MINUS part # toleranceApart
    ;
part: amount | name;

expression: name LPAREN expression (COMMA expression)* RPAREN # callExpression
    | LPAREN expression RPAREN # innerExpression
    | <assoc = right> expression CARET expression # powerExpression
    | MINUS expression # negativeExpression
    | expression (STAR | DIVIDE | SLASH) expression # productExpression
    | expression (PLUS | MINUS) expression # sumExpression
    | NUMBER unit? # amountExpression
    | name # nameExpression
    ;

// ---- procedure -------------------------------------------------------------------------------------------------

procedure: procedureHead LBRACE NEWLINE procedureItem* RBRACE NEWLINE;
procedureHead: PROCEDURE name TEXT?;
procedureItem: REVISION TEXT ON DATE (REPLACES TEXT (ON DATE)? DIGEST TEXT)? NEWLINE # procedureRevision
    | DEVICE name NEWLINE # procedureDevice
    | ANALYZER name name? NEWLINE # procedureAnalyzer
    | LEADS names NEWLINE # procedureLeads
    | DECISION (SIMPLE | GUARDED | MANAGED | RISK risk=NUMBER PERCENT) (COVERAGE factor=NUMBER)? (PRIOR prior=NUMBER PERCENT)? NEWLINE # procedureDecision
    | CAUTION name TEXT NEWLINE # procedureCaution
    | PHASES names NEWLINE # procedurePhases
    | ORDER BY (OUTLET | TEST) NEWLINE # procedureOrder
    | LANGUAGE name NEWLINE # procedureLanguage
    | GATE name TEXT NEWLINE # procedureGate
    | INCLUDE names NEWLINE # procedureInclude
    | section # procedureSection
    | setup # procedureSetup
    | setupGroup # procedureSetups
    | test # procedureTest
    | testGroup # procedureTests
    | adjust # procedureAdjust
    | allow # procedureAllow
    | NEWLINE # blankProcedureLine
    ;

// Lines of a procedure that several have in common; each takes them in by the name.
sharedPart: sharedPartHead LBRACE NEWLINE procedureItem* RBRACE NEWLINE;
sharedPartHead: PART name;

section: sectionHead LBRACE NEWLINE (when_ | step)* RBRACE NEWLINE;
sectionHead: SECTION name TEXT?;

when_: WHEN name IS TEXT (COMMA TEXT)* NEWLINE;

adjust: adjustHead LBRACE NEWLINE step* RBRACE NEWLINE;
adjustHead: ADJUST name TEXT? AFFECTS names;

setup: setupHead LBRACE NEWLINE setupItem* RBRACE NEWLINE;
setupHead: SETUP name TEXT? (FOR name)?;
setupItem: (CONNECT | LINK) name FROM ref TO ref NEWLINE # wire
    | CONNECT name AT ref (COMMA ref)* NEWLINE # touching
    | allow # setupAllow
    | NEWLINE # blankSetupLine
    ;

// Its lines are in every setup inside that does not connect the lead itself; a table has a setup in each row.
setupGroup: SETUPS LBRACE NEWLINE (setup | wireTable | setupItem)* RBRACE NEWLINE;
wireTable: TABLE LBRACE NEWLINE wireHeader wireRow* RBRACE NEWLINE;
wireHeader: wireColumn (BAR wireColumn)* NEWLINE;
wireColumn: SETUP | (CONNECT | LINK) name;
wireRow: wireCell (BAR wireCell)* NEWLINE;
wireCell: (name TEXT | ref TO ref | ref (COMMA ref)*)?;

// What its lines say holds for every test inside that does not say it itself; a table has a test in each row.
testGroup: TESTS LBRACE NEWLINE (test | testItem)* RBRACE NEWLINE;

test: testHead LBRACE NEWLINE testItem* RBRACE NEWLINE;
testHead: TEST name TEXT? (RENAMED FROM name)?;
testItem: OUTLET names NEWLINE # testOutlets
    | SETUP name NEWLINE # testSetup
    | INSIDE ref NEWLINE # testInside
    | OUTPUT (OFF | INHIBITED) NEWLINE # testOutput
    | when_ # testWhen
    | ON_TIME amount NEWLINE # testOnTime
    | SWEEP name (UP | DOWN) FROM amount TO amount STEP amount UNTIL TEXT AS name NEWLINE # testSweep
    | derive_ # testDerive
    | accept # testAccept
    | TABLE FROM TEXT NEWLINE # testTableFile
    | TABLE LBRACE NEWLINE header row* RBRACE NEWLINE # testTable
    | stepsHead LBRACE NEWLINE step* RBRACE NEWLINE # testSteps
    | allow # testAllow
    | NEWLINE # blankTestLine
    ;
derive_: DERIVE name TEXT? EQUALS expression (OVER ref)? COMMA RESOLUTION amount NEWLINE;
stepsHead: (BEFORE | AFTER | EACH (REPLACING name)?);

header: column (BAR column)* NEWLINE;
column: STATED name (SLASH unit)?
    | name (DOT name)? (SLASH unit)?
    ;
row: cell (BAR cell)* NEWLINE;
cell: acceptance
    | name IS TEXT (COMMA TEXT)*
    | (cellItem (COMMA cellItem)*)?
    ;
cellItem: AT MOST amount # cellAtMost
    | AT LEAST amount # cellAtLeast
    | amount (TO amount (STEP amount)?)? # cellAmount
    | ref # cellName
    | name TEXT # cellTest
    | TEXT # cellText
    ;

step: DO TEXT NEWLINE # stepDo
    | CONFIRM name? TEXT NEWLINE # stepConfirm
    | RECORD name TEXT (IN unit)? limit? NEWLINE # stepRecord
    | WAIT amount TEXT? NEWLINE # stepWait
    | CAUTION name TEXT NEWLINE # stepCaution
    | PERFORM ref NEWLINE # stepPerform
    | CHOOSE name TEXT FROM TEXT (COMMA TEXT)* (PASS TEXT)? NEWLINE # stepChoose
    | NEWLINE # blankStep
    ;

allow: ALLOW name BECAUSE TEXT NEWLINE;

// ---- words -----------------------------------------------------------------------------------------------------

series: seriesItem (COMMA seriesItem)*;
seriesItem: amount (TO amount (STEP amount)?)?;

// Loads, among them no load at all and none between the poles.
loadSeries: loadValue (COMMA loadValue)*;
loadValue: OPEN | SHORT | seriesItem;

amount: MINUS? NUMBER unit?;
unit: PERCENT
    | NAME (SLASH NAME)?
    ;

names: name (COMMA name)*;
ref: name (DOT name)*;

// A word of the language may be a name wherever a name is expected.
name: NAME
    | ACCEPT | ACCESSORY | ACTION | ACTIVATE | ADJUST | AFTER | ALLOW | ANALYZER | BEFORE | CAUTION | CHOOSE | CONFIRM | CONNECT
    | CONTACT | DECISION | DERIVE | DEVICE | DO | DUTY | EACH | EARTH | ENTER | ERROR | INSIDE | JACK | JOIN | KEY | LANGUAGE | LEAD | LEADS
    | LEAVE | LINK | LOAD | MEASURE | MODE | ON_TIME | ORDER | OUTLET | OUTPUT | PERFORM | PHASES | POLE | POWER
    | PROCEDURE | RANGE | RECORD | RESOLUTION | REVISION | RULE | SECTION | SETTING | SETTLE | SETUP | SETUPS | STATE | SWEEP
    | TABLE | TEST | USE | VALUES | WAIT | AFFECTS | AS | AT | BECAUSE | BY | COLOUR | CONTINUOUS | COVERAGE | DEGREES_OF_FREEDOM | DIGEST
    | DOWN | FLOATING | FOR | FROM | GREATER | GUARDED | HAND | HOLDS | IN | INHIBITED | IS | LEAST | MANAGED | MOST | OF | OFF | ON | ONE | OPEN | OR | PASS | PRIOR | RATED
    | READ | READING | READS | RENAMED | REPLACES | REPLACING | RISK | SHORT | SIMPLE | SMALLER | STATED | STEP | THROUGH | TO | UNKNOWN
    | UNTIL | UP | WHICHEVER | WITHIN | GATE | INCLUDE | OVER | PART | TESTS | WHEN
    ;
