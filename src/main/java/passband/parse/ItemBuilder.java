package passband.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.antlr.v4.runtime.ParserRuleContext;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.source.Span;
import passband.syntax.Derive;
import passband.syntax.LimitExpression;
import passband.syntax.OnlyWhen;
import passband.syntax.SettingOption;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The items of blocks: each of a kind, the only one of a kind, and the statements that several
 * kinds of block have.
 */
final class ItemBuilder {
  private final Terminals leaves;
  private final Diagnostics diagnostics;

  ItemBuilder(Terminals leaves, Diagnostics diagnostics) {
    this.leaves = leaves;
    this.diagnostics = diagnostics;
  }

  /** What is made of each context that came through without a fault. */
  <C extends ParserRuleContext, T> List<T> each(List<C> contexts, Function<C, T> make) {
    List<T> made = new ArrayList<>(contexts.size());
    for (C context : contexts) {
      if (leaves.whole(context)) {
        T one = make.apply(context);
        if (one != null) {
          made.add(one);
        }
      }
    }
    return made;
  }

  /** Items of one kind among lines of several. */
  <C extends ParserRuleContext, T> List<T> among(
      List<? extends ParserRuleContext> lines, Class<C> kind, Function<C, T> make) {
    List<C> found = new ArrayList<>();
    for (ParserRuleContext line : lines) {
      if (kind.isInstance(line)) {
        found.add(kind.cast(line));
      }
    }
    return each(found, make);
  }

  /** {@code when NAME is "A", "B"}. */
  OnlyWhen when(When_Context when) {
    List<Word> is = new ArrayList<>();
    when.TEXT().forEach(text -> is.add(leaves.text(text)));
    return new OnlyWhen(leaves.name(when.name()), is, leaves.line(when));
  }

  /** The one item of its kind; a second is an error and is left out. */
  <T> @Nullable T single(List<T> items, String what, Function<T, Span> span) {
    return diagnostics.single(items, what, span);
  }

  /** The first of several; null when there is none. */
  <T> @Nullable T firstOf(List<T> items) {
    return items.isEmpty() ? null : items.get(0);
  }

  /** What is made of one part of each item, where it has that part. */
  <C, P extends ParserRuleContext, T> List<T> parts(
      List<C> items, Function<C, P> part, Function<P, T> make) {
    List<P> found = new ArrayList<>();
    for (C item : items) {
      P one = part.apply(item);
      if (one != null) {
        found.add(one);
      }
    }
    return each(found, make);
  }

  /** Blocks whose head came through without a fault. */
  <C, P extends ParserRuleContext, T> List<T> headed(
      List<C> items,
      Function<C, P> part,
      Function<P, ParserRuleContext> head,
      Function<P, T> make) {
    List<T> made = new ArrayList<>();
    for (C item : items) {
      P block = part.apply(item);
      if (block != null && leaves.whole(head.apply(block))) {
        made.add(make.apply(block));
      }
    }
    return made;
  }

  Tree.Allow allow(AllowContext allow) {
    ParserRuleContext block = allow.getParent().getParent();
    return new Tree.Allow(
        leaves.name(allow.name()),
        leaves.text(allow.TEXT()),
        leaves.line(allow),
        leaves.span(block));
  }

  Tree.Action action(ActionContext action) {
    return new Tree.Action(
        leaves.name(action.name(0)),
        leaves.text(action.TEXT()),
        action.AS() == null ? null : leaves.name(action.name(1)),
        leaves.line(action));
  }

  Tree.ExtraSetting extraSetting(ExtraSettingContext setting) {
    return new Tree.ExtraSetting(
        leaves.name(setting.name(0)),
        leaves.optionalText(setting.TEXT()),
        setting.option().isEmpty() ? null : each(setting.option(), this::option),
        setting.series() == null ? null : leaves.series(setting.series()),
        setting.name().size() < 2 ? null : leaves.name(setting.name(1)),
        setting.amount() == null ? null : leaves.amount(setting.amount()),
        leaves.line(setting));
  }

  private SettingOption option(OptionContext option) {
    return new SettingOption(leaves.name(option.name()), leaves.optionalText(option.TEXT()));
  }

  List<Tree.Accept> accept(AcceptContext accept) {
    return acceptance(accept.acceptance(), leaves.line(accept));
  }

  /** What a line or a cell accepts: one quantity, or what each of its rules does. */
  List<Tree.Accept> acceptance(AcceptanceContext accept, Span where) {
    if (accept.BY() != null) {
      List<Tree.Accept> byRules = new ArrayList<>();
      for (Word rule : leaves.names(accept.names())) {
        byRules.add(new Tree.Accept(rule, null, null, null, null, where));
      }
      return byRules;
    }
    return List.of(
        new Tree.Accept(
            null,
            leaves.name(accept.name()),
            limit(accept.limit()),
            accept.readAs() == null ? null : leaves.name(accept.readAs().name()),
            accept.readBy() == null ? null : leaves.name(accept.readBy().name()),
            where));
  }

  /** A quantity that is calculated. */
  Derive derive(Derive_Context d) {
    return new Derive(
        leaves.name(d.name()),
        leaves.optionalText(d.TEXT()),
        new Limits(leaves).expression(d.expression()),
        d.ref() == null ? null : leaves.ref(d.ref()),
        leaves.amount(d.amount()),
        leaves.line(d));
  }

  LimitExpression limit(LimitContext limit) {
    return new Limits(leaves).limit(limit);
  }
}
