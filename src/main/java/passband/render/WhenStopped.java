package passband.render;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import passband.plan.Plan;
import passband.plan.Rests;
import passband.plan.Stage;
import passband.words.Language;

/** What is to be done when the sheet is broken off: the generator is left safe, in this order. */
final class WhenStopped {
  private WhenStopped() {}

  /** Output off, states left, settings back at rest, and only then the leads. */
  static String text(Plan plan) {
    List<String> does = new ArrayList<>();
    Set<String> states = new LinkedHashSet<>();
    for (Stage.Run run : plan.runs()) {
      if (run.state() != null) {
        states.add(run.state().title());
      }
    }
    Language language = plan.language();
    if (!states.isEmpty()) {
      String all = "";
      for (String state : states) {
        String one = language.of("quoted", state);
        all = all.isEmpty() ? one : language.of("list.or", all, one);
      }
      does.add(language.of("stop.states", all));
    }
    List<String> rests = rests(plan);
    if (!rests.isEmpty()) {
      does.add(language.of("stop.set", String.join(", ", rests)));
    }
    String off = language.of("stop.off");
    String leads = language.of("stop.leads");
    String sentence =
        does.isEmpty()
            ? language.of("stop.two", off, leads)
            : language.of("stop.more", off, String.join(", ", does), leads);
    return sentence + " " + language.of("stop.undone");
  }

  /** Of what some line sets to anything else, where it rests. */
  private static List<String> rests(Plan plan) {
    Language language = plan.language();
    List<String> rests = new ArrayList<>();
    for (Rests.Rest one : Rests.of(plan)) {
      String rest = Objects.requireNonNull(one.setting().leave()).text();
      rests.add(language.of("stop.rest", one.setting().title(), language.number(rest)));
    }
    return rests;
  }
}
