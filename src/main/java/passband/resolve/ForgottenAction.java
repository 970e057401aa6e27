package passband.resolve;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * {@code action-missing}: a profile that tells how all of its steps are done but one. A profile
 * that tells fewer leaves them to the sheet's own words.
 */
final class ForgottenAction {
  private ForgottenAction() {}

  /** The same of further settings, each of which an action of its name or another text names. */
  static void settings(
      Word name,
      List<Tree.Action> actions,
      List<Tree.ExtraSetting> settings,
      Diagnostics diagnostics) {
    List<String> names = new ArrayList<>();
    for (Tree.ExtraSetting setting : settings) {
      String one = setting.name().text();
      boolean told = false;
      for (Tree.Action action : actions) {
        boolean own = action.name().text().equals(one);
        told |= !own && action.text().text().contains("{" + one + "}");
      }
      if (!told) {
        names.add(one);
      }
    }
    look(name, actions, names, diagnostics);
  }

  /**
   * Says which one is forgotten.
   *
   * @param steps those that the profile's points have
   */
  static void look(
      Word name, List<Tree.Action> actions, List<String> steps, Diagnostics diagnostics) {
    List<String> missing = new ArrayList<>(steps);
    Word last = name;
    for (Tree.Action action : actions) {
      if (missing.remove(action.name().text())) {
        last = action.name();
      }
    }
    if (missing.size() == 1 && steps.size() > 1) {
      diagnostics
          .say(
              Code.ACTION_MISSING,
              name.span(),
              "'%s' says how its steps are done, but for '%s'",
              name.text(),
              missing.get(0))
          .note(last.span(), "the last of its actions is here")
          .hint("add 'action %s \"…\"'", missing.get(0));
    }
  }
}
