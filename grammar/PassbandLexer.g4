/*
 * Words of the Passband language. Comments are kept, off the parser's channel, so that the formatter can put them
 * back. What cannot be a word (an open text, a stray character) is a token too: it is reported once, where it stands.
 */
lexer grammar PassbandLexer;

// The words of the language, each written as its token in small letters, '_' as '-': 'on-time' is ON_TIME. The lexer
// sees names; the program gives a name that is one of these its type. As lexer rules they would cost a cold start a
// tenth of its time.
tokens {
  // Declarations and the words that lead a line.
  ACCEPT, ACCESSORY, ACTION, ACTIVATE, ADJUST, AFTER, ALLOW, ANALYZER, BEFORE, CAUTION, CHOOSE, CONFIRM, CONNECT,
  CONTACT, DECISION, DERIVE, DEVICE, DO, DUTY, EACH, EARTH, ENTER, ERROR, GATE, INCLUDE, INSIDE, JACK, JOIN, KEY, LANGUAGE, LEAD, LEADS, LEAVE,
  LINK, LOAD, MEASURE, MODE, ON_TIME, ORDER, OUTLET, OUTPUT, PART, PERFORM, PHASES, POLE, POWER, PROCEDURE, RANGE, READS,
  RECORD, RESOLUTION, REVISION, RULE, SECTION, SETTING, SETTLE, SETUP, SETUPS, STATE, SWEEP, TABLE, TEST, TESTS, USE,
  VALUES, WAIT, WHEN,
  // Words inside a line.
  AFFECTS, AS, AT, BECAUSE, BY, COLOUR, CONTINUOUS, COVERAGE, DEGREES_OF_FREEDOM, DIGEST, DOWN, FLOATING, FOR, FROM, GREATER, GUARDED,
  HAND, HOLDS, IN, INHIBITED, IS, LEAST, MANAGED, MOST, OF, OFF, ON, ONE, OPEN, OR, OVER, PASS, PRIOR, RATED, READ, READING, RENAMED, REPLACES, REPLACING,
  RISK, SHORT, SIMPLE, SMALLER, STATED, STEP, THROUGH, TO, UNKNOWN, UNTIL, UP, WHICHEVER, WITHIN
}

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
// Beyond ASCII any character may stand here; what is no letter or digit is taken out again by the program. Saying
// [\p{L}\p{Nd}] instead would put 2,000 ranges into the lexer and a third to the time of a cold start.
NAME: LETTER (LETTER | D)* ('-'+ (LETTER | D)+)*;
TEXT: '"' TEXT_BODY '"';
OPEN_TEXT: '"' TEXT_BODY '\\'?;

COMMENT: '#' ~[\r\n]* -> channel(HIDDEN);
NEWLINE: '\r'? '\n' | '\r';
SPACE: [ \t]+ -> skip;
STRAY: .;

fragment D: [0-9];
fragment LETTER: [A-Za-z] | [\u0080-\u{10FFFF}];
fragment TEXT_BODY: ('\\' ~[\r\n] | ~["\\\r\n])*;
