/*
 * Words of the Passband language. Comments are kept, off the parser's channel, so that the formatter can put them
 * back. What cannot be a word (an open text, a stray character) is a token too: it is reported once, where it stands.
 */
lexer grammar PassbandLexer;

// Declarations and the words that lead a line.
ACCEPT: 'accept';
ACTION: 'action';
ACTIVATE: 'activate';
ADJUST: 'adjust';
AFTER: 'after';
ALLOW: 'allow';
ANALYZER: 'analyzer';
BEFORE: 'before';
CAUTION: 'caution';
CHOOSE: 'choose';
CONFIRM: 'confirm';
CONNECT: 'connect';
CONTACT: 'contact';
DECISION: 'decision';
DERIVE: 'derive';
DEVICE: 'device';
DO: 'do';
DUTY: 'duty';
EACH: 'each';
ENTER: 'enter';
ERROR: 'error';
INSIDE: 'inside';
JACK: 'jack';
KEY: 'key';
LEAD: 'lead';
LEADS: 'leads';
LEAVE: 'leave';
LINK: 'link';
LOAD: 'load';
MEASURE: 'measure';
MODE: 'mode';
ON_TIME: 'on-time';
ORDER: 'order';
OUTLET: 'outlet';
OUTPUT: 'output';
PERFORM: 'perform';
PHASES: 'phases';
POLE: 'pole';
POWER: 'power';
PROCEDURE: 'procedure';
RANGE: 'range';
RECORD: 'record';
RESOLUTION: 'resolution';
REVISION: 'revision';
RULE: 'rule';
SECTION: 'section';
SETTING: 'setting';
SETTLE: 'settle';
SETUP: 'setup';
STATE: 'state';
SWEEP: 'sweep';
TABLE: 'table';
TEST: 'test';
USE: 'use';
VALUES: 'values';
WAIT: 'wait';

// Words inside a line.
AFFECTS: 'affects';
AS: 'as';
AT: 'at';
BECAUSE: 'because';
BY: 'by';
COLOUR: 'colour';
CONTINUOUS: 'continuous';
COVERAGE: 'coverage';
DIGEST: 'digest';
DOWN: 'down';
FOR: 'for';
FROM: 'from';
GREATER: 'greater';
GUARDED: 'guarded';
HOLDS: 'holds';
IN: 'in';
IS: 'is';
LEAST: 'least';
MOST: 'most';
OF: 'of';
OFF: 'off';
ON: 'on';
ONE: 'one';
OR: 'or';
PASS: 'pass';
RATED: 'rated';
READ: 'read';
READING: 'reading';
RENAMED: 'renamed';
REPLACES: 'replaces';
REPLACING: 'replacing';
RISK: 'risk';
SIMPLE: 'simple';
SMALLER: 'smaller';
STATED: 'stated';
STEP: 'step';
THROUGH: 'through';
TO: 'to';
UNTIL: 'until';
UP: 'up';
WHICHEVER: 'whichever';
WITHIN: 'within';

LBRACE: '{';
RBRACE: '}';
LPAREN: '(';
RPAREN: ')';
BAR: '|';
COMMA: ',';
DOT: '.';
EQUALS: '=';
PLUS: '+';
MINUS: '-';
STAR: '*';
CARET: '^';
PERCENT: '%';
// 'setting/W' is a quantity in a unit; 'setting / load' is a quotient: the space before the stroke tells them apart.
DIVIDE: [ \t]+ '/';
SLASH: '/';

DATE: D D D D '-' D D '-' D D;
COMMA_NUMBER: D+ ('.' D+)? (',' D+ ('.' D+)?)+;
NUMBER: D+ ('.' D+)? ([eE] [+-]? D+)?;
NAME: [\p{L}°] [\p{L}\p{Nd}°]* ('-'+ [\p{L}\p{Nd}°]+)*;
TEXT: '"' TEXT_BODY '"';
OPEN_TEXT: '"' TEXT_BODY '\\'?;

COMMENT: '#' ~[\r\n]* -> channel(HIDDEN);
NEWLINE: '\r'? '\n' | '\r';
SPACE: [ \t]+ -> skip;
STRAY: .;

fragment D: [0-9];
fragment TEXT_BODY: ('\\' ~[\r\n] | ~["\\\r\n])*;
