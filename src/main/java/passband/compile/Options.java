package passband.compile;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.plan.Stage;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.syntax.OnlyWhen;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Which outcome of which choice a part of a procedure is done after. */
final class Options {
  private final Tree.Procedure tree;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Map<OnlyWhen, Stage.Option> known = new IdentityHashMap<>();

  Options(Tree.Procedure tree, Names names, Diagnostics diagnostics) {
    this.tree = tree;
    this.names = names;
    this.diagnostics = diagnostics;
  }

  /**
   * The option of a part; null where it is always done, or, with the fault said, where its
   * condition cannot be understood.
   */
  Stage.@Nullable Option of(@Nullable OnlyWhen when, Tree.Part part) {
    if (when == null) {
      return null;
    }
    if (!known.containsKey(when)) {
      known.put(when, made(when, part));
    }
    return known.get(when);
  }

  private Stage.@Nullable Option made(OnlyWhen when, Tree.Part part) {
    List<String> askable = new ArrayList<>();
    boolean before = true;
    for (Tree.Part one : tree.parts()) {
      before &= one != part;
      if (one instanceof Tree.Section section) {
        for (Step step : section.steps()) {
          if (step instanceof Step.Choose choose) {
            askable.add(choose.name().text());
            if (choose.name().text().equals(when.choice().text())) {
              return option(when, choose, before);
            }
          }
        }
      }
    }
    if (!sayNotInASection(when)) {
      Scope.unknown(diagnostics, when.choice(), "choice", askable);
    }
    return null;
  }

  private Stage.@Nullable Option option(OnlyWhen when, Step.Choose choose, boolean before) {
    names.use(when.choice(), choose.name());
    List<String> outcomes = new ArrayList<>();
    choose.outcomes().forEach(outcome -> outcomes.add(outcome.text()));
    List<String> is = new ArrayList<>();
    for (Word outcome : when.is()) {
      if (!outcomes.contains(outcome.text())) {
        Scope.unknown(diagnostics, outcome, "outcome", outcomes);
        return null;
      }
      is.add(outcome.text());
    }
    if (!before) {
      diagnostics
          .say(
              Code.ASKED_LATER,
              when.choice().span(),
              "'%s' is not asked before this part: ask it in a section above",
              choose.name().text())
          .note(choose.span(), "it is asked here");
      return null;
    }
    return new Stage.Option(choose.name().text(), is);
  }

  /** A choice of a test or an adjustment may be answered several times, or not at all. */
  private boolean sayNotInASection(OnlyWhen when) {
    for (Step step : tree.steps()) {
      if (step instanceof Step.Choose choose && choose.name().text().equals(when.choice().text())) {
        names.use(when.choice(), choose.name());
        diagnostics
            .say(
                Code.WRONG_KIND,
                when.choice().span(),
                "'%s' is not asked in a section: it may be answered several times, or not at all",
                choose.name().text())
            .note(choose.span(), "it is asked here");
        return true;
      }
    }
    return false;
  }
}
