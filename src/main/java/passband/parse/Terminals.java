package passband.parse;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandLexer;
import passband.parse.antlr.PassbandParser.*;
import passband.quantity.Rational;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.AccuracyTerm;
import passband.syntax.Amount;
import passband.syntax.Ratings;
import passband.syntax.Tree;
import passband.syntax.Tree.SeriesItem;
import passband.syntax.Word;
import passband.syntax.WrittenError;

/** The small parts that every statement is made of: names, texts, numbers with units, series. */
final class Terminals {
  private final SourceFile source;
  private final Diagnostics diagnostics;
  private final boolean sound;

  /** The names that are looked at already, each where it first stands. */
  private final Set<String> seen = new HashSet<>();

  /**
   * @param sound whether the parser found no fault
   */
  Terminals(SourceFile source, Diagnostics diagnostics, boolean sound) {
    this.source = source;
    this.diagnostics = diagnostics;
    this.sound = sound;
  }

  /** Whether a context came through without a fault. */
  boolean whole(@Nullable ParserRuleContext context) {
    return context != null && (sound || faultless(context));
  }

  private static boolean faultless(ParserRuleContext context) {
    if (context.exception != null) {
      return false;
    }
    for (int i = 0; i < context.getChildCount(); i++) {
      if (context.getChild(i) instanceof ParserRuleContext child && !faultless(child)) {
        return false;
      }
    }
    return true;
  }

  SourceFile source() {
    return source;
  }

  /** From a context's first word to its last. */
  Span span(ParserRuleContext context) {
    return Lexer.span(source, context.start)
        .to(Lexer.span(source, context.stop == null ? context.start : context.stop));
  }

  /** The same without the line's end. */
  Span line(ParserRuleContext context) {
    Span first = Lexer.span(source, context.start);
    Token last = context.start;
    for (int i = context.getChildCount() - 1; i >= 0; i--) {
      if (context.getChild(i) instanceof TerminalNode node
          && node.getSymbol().getType() == PassbandLexer.NEWLINE) {
        continue;
      }
      if (context.getChild(i) instanceof TerminalNode node) {
        last = node.getSymbol();
      } else if (context.getChild(i) instanceof ParserRuleContext child) {
        return first.to(line(child));
      }
      break;
    }
    return first.to(Lexer.span(source, last));
  }

  Word word(Token token) {
    return new Word(token.getText(), Lexer.span(source, token));
  }

  /** The name; null where there is none. */
  @Nullable Word optionalName(@Nullable NameContext name) {
    return name == null ? null : name(name);
  }

  Word name(NameContext name) {
    Word word = word(name.start);
    if (seen.add(word.text())) {
      Texts.printable(word.span(), diagnostics);
    }
    if (word.text().indexOf('°') >= 0) {
      diagnostics.say(
          Code.UNEXPECTED_CHARACTER, word.span(), "a name consists of letters, digits and hyphens");
    }
    return word;
  }

  List<Word> names(NamesContext names) {
    List<Word> words = new ArrayList<>();
    for (NameContext name : names.name()) {
      words.add(name(name));
    }
    return words;
  }

  /** The text; null where there is none. */
  @Nullable Word optionalText(@Nullable TerminalNode text) {
    return text == null ? null : text(text);
  }

  Word text(TerminalNode text) {
    return Texts.unquoted(Lexer.span(source, text.getSymbol()), diagnostics);
  }

  /** The unit; null where there is none. */
  @Nullable Word unit(@Nullable UnitContext unit) {
    return unit == null ? null : new Word(span(unit).text(), span(unit));
  }

  Tree.Ref ref(RefContext ref) {
    List<Word> parts = new ArrayList<>();
    for (NameContext part : ref.name()) {
      parts.add(name(part));
    }
    return new Tree.Ref(parts, span(ref));
  }

  Amount amount(AmountContext amount) {
    String sign = amount.MINUS() == null ? "" : "-";
    return number(
        sign + amount.NUMBER().getText(),
        amount.NUMBER().getSymbol(),
        unit(amount.unit()),
        span(amount));
  }

  /** A number without a unit; null where there is none. */
  @Nullable Amount optionalBare(@Nullable TerminalNode number) {
    return number == null ? null : bare(number);
  }

  /** A number without a unit; null where there is none. */
  @Nullable Amount factor(@Nullable Token number) {
    return number == null
        ? null
        : number(number.getText(), number, null, Lexer.span(source, number));
  }

  /** A number without a unit. */
  Amount bare(TerminalNode number) {
    return number(
        number.getText(), number.getSymbol(), null, Lexer.span(source, number.getSymbol()));
  }

  Amount number(String digits, Token token, @Nullable Word unit, Span span) {
    Rational value = null;
    if (digits.indexOf(',') < 0) {
      try {
        value = Rational.parse(digits);
      } catch (NumberFormatException e) {
        diagnostics.say(
            Code.NUMBER_TOO_LARGE,
            Lexer.span(source, token),
            "this number has too many digits or too large an exponent");
      }
    }
    return new Amount(digits, value, unit, span);
  }

  /** The resistances of a series of loads. */
  List<SeriesItem> resistances(LoadSeriesContext loads) {
    List<SeriesItem> items = new ArrayList<>();
    for (LoadValueContext load : loads.loadValue()) {
      if (load.seriesItem() != null) {
        items.add(item(load.seriesItem().amount(), span(load)));
      }
    }
    return items;
  }

  /** The words of a series of loads that stand for no resistance. */
  List<Word> terminations(LoadSeriesContext loads) {
    List<Word> words = new ArrayList<>();
    for (LoadValueContext load : loads.loadValue()) {
      if (load.seriesItem() == null) {
        words.add(word(load.start));
      }
    }
    return words;
  }

  List<SeriesItem> series(SeriesContext series) {
    List<SeriesItem> items = new ArrayList<>();
    for (SeriesItemContext item : series.seriesItem()) {
      items.add(item(item.amount(), span(item)));
    }
    return items;
  }

  /**
   * {@code A}, {@code A to B} or {@code A to B step S}; of {@code 179 to 219 mA} both ends have the
   * unit.
   */
  SeriesItem item(List<AmountContext> amounts, Span span) {
    Amount from = amount(amounts.get(0));
    Amount to = amounts.size() > 1 ? amount(amounts.get(1)) : null;
    Amount step = amounts.size() > 2 ? amount(amounts.get(2)) : null;
    if (to != null && from.unit() == null && to.unit() != null) {
      from = from.withUnit(to.unit());
    }
    if (to != null
        && to.unit() == null
        && from.unit() == null
        && step != null
        && step.unit() != null) {
      from = from.withUnit(step.unit());
      to = to.withUnit(step.unit());
    }
    return new SeriesItem(from, to, step, span);
  }

  /** What a line says instead of its rating; null where it says the rating. */
  Ratings.@Nullable Unknown unknown(Word rating, @Nullable UnknownContext unknown, Span line) {
    return unknown == null ? null : new Ratings.Unknown(rating, text(unknown.TEXT()), line);
  }

  WrittenError accuracy(AccuracyContext accuracy) {
    List<AccuracyTerm> terms = new ArrayList<>();
    for (AccuracyTermContext term : accuracy.accuracyTerm()) {
      AccuracyTerm.Of of =
          term.READING() != null
              ? AccuracyTerm.Of.READING
              : term.RANGE() != null ? AccuracyTerm.Of.RANGE : AccuracyTerm.Of.ITSELF;
      terms.add(new AccuracyTerm(amount(term.amount()), of, span(term)));
    }
    return new WrittenError(
        terms, optionalName(accuracy.name()), factor(accuracy.factor), factor(accuracy.freedom));
  }
}
