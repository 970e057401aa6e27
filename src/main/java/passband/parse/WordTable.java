package passband.parse;

import passband.parse.antlr.PassbandLexer;

/**
 * What the lexer grammar amounts to: a state and a character give the next state. Not written by
 * hand: this class's test makes it from ANTLR's reading of the grammar.
 *
 * <p>Numbers are characters, from '0' on: state 0 is none, 1 the first.
 */
final class WordTable {
  /** The column of each ASCII character, and last that of any other. */
  static final String COLUMNS =
      "0000000001200300000000000000000010450600789:;<=>??????????000@000AAAABAAAAAAAAAA"
          + "AAAAAAAAAAA0C0D00AAAABAAAAAAAAAAAAAAAAAAAAAEFG00A";

  /** For each state from 1 the next states, a column each. */
  static final String[] NEXT = {
    "23456789:;<=>?@ABCC2DEFG",
    "000000000000000000000000",
    "0H000000000000I000000000",
    "000000000000000000000000",
    "00J000000000000000000000",
    "KK00LKKKKKKKKKKKKKKMKKKK",
    "NN00NNNNNNNNNNNNNNNNNNNN",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "00000000000O0P0Q00R00000",
    "000000000000000000000000",
    "000000000000S00T0TT00000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "0H000000000000I000000000",
    "000000000000000000000000",
    "000000000000000000000000",
    "KK00LKKKKKKKKKKKKKKMKKKK",
    "000000000000000000000000",
    "KK00KKKKKKKKKKKKKKKKKKKK",
    "NN00NNNNNNNNNNNNNNNNNNNN",
    "000000000000000U00000000",
    "000000000000000V00000000",
    "00000000000O0P0W00R00000",
    "0000000000X0X00Y00000000",
    "000000000000S00Z0ZZ00000",
    "000000000000S00T0TT00000",
    "00000000000O0[0U00000000",
    "00000000000O000V00R00000",
    "00000000000O0P0\\00R00000",
    "000000000000000Y00000000",
    "000000000000000Y00000000",
    "000000000000S00Z0ZZ00000",
    "000000000000000]00000000",
    "00000000000O^P0_00R00000",
    "00000000000O000]00000000",
    "000000000000000`00000000",
    "00000000000O0P0_00R00000",
    "000000000000000a00000000",
    "000000000000b00000000000",
    "000000000000000c00000000",
    "000000000000000d00000000",
    "000000000000000000000000",
  };

  /** For each state from 1 the token that a word ending there is; 0 where none ends. */
  static final int[] TOKENS = {
    0,
    PassbandLexer.STRAY,
    PassbandLexer.SPACE,
    PassbandLexer.NEWLINE,
    PassbandLexer.NEWLINE,
    PassbandLexer.OPEN_TEXT,
    PassbandLexer.COMMENT,
    PassbandLexer.PERCENT,
    PassbandLexer.LPAREN,
    PassbandLexer.RPAREN,
    PassbandLexer.STAR,
    PassbandLexer.PLUS,
    PassbandLexer.COMMA,
    PassbandLexer.MINUS,
    PassbandLexer.DOT,
    PassbandLexer.SLASH,
    PassbandLexer.NUMBER,
    PassbandLexer.EQUALS,
    PassbandLexer.NAME,
    PassbandLexer.CARET,
    PassbandLexer.LBRACE,
    PassbandLexer.BAR,
    PassbandLexer.RBRACE,
    PassbandLexer.SPACE,
    PassbandLexer.DIVIDE,
    PassbandLexer.NEWLINE,
    PassbandLexer.OPEN_TEXT,
    PassbandLexer.TEXT,
    PassbandLexer.OPEN_TEXT,
    PassbandLexer.COMMENT,
    0,
    0,
    PassbandLexer.NUMBER,
    0,
    0,
    PassbandLexer.NAME,
    PassbandLexer.COMMA_NUMBER,
    PassbandLexer.NUMBER,
    PassbandLexer.NUMBER,
    0,
    PassbandLexer.NUMBER,
    PassbandLexer.NAME,
    0,
    PassbandLexer.NUMBER,
    PassbandLexer.COMMA_NUMBER,
    0,
    PassbandLexer.NUMBER,
    0,
    0,
    0,
    0,
    PassbandLexer.DATE,
  };

  private WordTable() {}
}
