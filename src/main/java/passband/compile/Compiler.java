package passband.compile;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import passband.check.Allows;
import passband.check.AllowsOfIncluders;
import passband.check.Checks;
import passband.check.Echoes;
import passband.check.Releases;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.library.Library;
import passband.library.Released;
import passband.limit.ModeLimits;
import passband.model.Instruments;
import passband.parse.CsvTable;
import passband.plan.Plan;
import passband.plan.Profile;
import passband.resolve.Declarations;
import passband.resolve.Included;
import passband.resolve.Names;
import passband.resolve.Profiles;
import passband.resolve.Scope;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Heading;
import passband.syntax.SharedPart;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * The way from a library's files to compiled procedures: names in sight, points and limits planned,
 * checks made.
 */
public final class Compiler {
  /**
   * What a line says of itself. While some line could not be read, only this is said of the others:
   * anything else may be the consequence of what that line would have held.
   */
  private static final Set<Code> OF_ONE_LINE =
      EnumSet.of(
          Code.UNKNOWN_UNIT,
          Code.UNKNOWN_QUANTITY,
          Code.UNKNOWN_WITHOUT_REASON,
          Code.REVERSED_RANGE,
          Code.BAD_CELL,
          Code.BLANK_CELL,
          Code.PRINTED_NAME_REPEATED,
          Code.STATED_LOOSER,
          Code.STATED_TIGHTER,
          Code.STATED_ROUNDED_OUTWARD,
          Code.REVISION_BACKWARDS,
          Code.SYNTAX,
          Code.USE_OUTSIDE_ROOT,
          Code.USE_CYCLE,
          Code.INCLUDE_CYCLE,
          Code.CSV_SYNTAX);

  /** What a procedure may seem to lack while a part that it includes is not found. */
  private static final Set<Code> LACKING = EnumSet.of(Code.MISSING_ITEM, Code.UNKNOWN_NAME);

  private final Library library;
  private final Retarget others;
  private final Diagnostics diagnostics;
  private final Predicate<Tree.File> own;
  private final Set<Span> usedAllows = new HashSet<>();

  private final Names names = new Names();
  private @Nullable Profiles made;
  private final TakenUp takenUp;

  /** The procedures of which a part was not found: they are not checked. */
  private final Set<Plan> lacking = Collections.newSetFromMap(new IdentityHashMap<>());

  /**
   * @param analyzer the instruments to compile for instead of each procedure's own: a name, or
   *     {@code ROLE=NAME} as often as wanted, with commas between; null for their own
   */
  public Compiler(Library library, @Nullable String analyzer, Diagnostics diagnostics) {
    this(library, analyzer, diagnostics, file -> true);
  }

  /**
   * @param own tells the files whose procedures are compiled; those of the others are not
   */
  public Compiler(
      Library library,
      @Nullable String analyzer,
      Diagnostics diagnostics,
      Predicate<Tree.File> own) {
    this.library = library;
    this.others = Retarget.of(analyzer);
    this.diagnostics = diagnostics;
    this.own = own;
    this.takenUp = new TakenUp(library);
  }

  /** The allows that suppressed something; of a shared file, others may do so elsewhere. */
  public Set<Span> usedAllows() {
    return usedAllows;
  }

  /** The parts and rules that procedures took up, as {@link FoundTogether} wants them. */
  public Set<String> takenUp() {
    return takenUp.blocks();
  }

  /**
   * Compiles every procedure of the loaded files, in order of name; faults go to the diagnostics.
   */
  public List<Plan> compile() {
    Profiles profiles = profiles();
    made = profiles;
    boolean broken = diagnostics.hasFaults();
    Diagnostics later = new Diagnostics();
    blocks(later);
    List<Plan> plans = plans(profiles, later);
    later.removeIf(d -> broken && !OF_ONE_LINE.contains(d.code()));
    boolean sound = !broken && !later.hasFaults();
    if (!broken) {
      for (Plan plan : plans) {
        if (!lacking.contains(plan)) {
          check(plan, sound, later);
        }
      }
    }
    if (!others.isNone()) {
      plans.forEach(plan -> plan.released(Releases.RETARGETED));
    } else if (sound) {
      releases(plans, later);
    }
    takenUp.lookAtOthers(
        own, code -> !broken || OF_ONE_LINE.contains(code), named -> table(named, later), later);
    later.take(diagnostics);
    usedAllows.addAll(Allows.apply(library.files(), later, usedAllows, sound, takenUp::isLeft));
    Echoes.silence(later);
    diagnostics.removeIf(d -> true);
    diagnostics.take(later);
    return plans;
  }

  private void check(Plan plan, boolean sound, Diagnostics later) {
    Diagnostics found = new Diagnostics();
    found.including(plan.source().includes(), plan.name().span());
    Checks.run(plan, sound, found);
    allowed(plan.source().tree(), plan.source().includes(), found);
    later.take(found);
  }

  /** What is said in a part may be allowed by the procedure for which it is said. */
  private void allowed(Tree.Procedure whole, Map<Span, Span> includes, Diagnostics found) {
    if (!includes.isEmpty()) {
      usedAllows.addAll(AllowsOfIncluders.apply(whole, includes, found));
    }
  }

  /** What the files declare besides procedures; after they were compiled, without a fault. */
  public List<Profile> declared(Predicate<Tree.File> wanted) {
    List<Profile> declared = new ArrayList<>();
    Profiles profiles = made;
    if (profiles == null || diagnostics.stopComparison()) {
      return declared;
    }
    for (Tree.File file : library.files()) {
      if (wanted.test(file)) {
        file.declarations().forEach(one -> declared(one, profiles, declared));
      }
    }
    return declared;
  }

  private static void declared(Tree.Declaration one, Profiles profiles, List<Profile> declared) {
    if (one instanceof Tree.Device device) {
      declared.add(Profile.of(profiles.device(device)));
    } else if (one instanceof Tree.Analyzer analyzer) {
      declared.add(Profile.of(profiles.analyzer(analyzer)));
    } else if (one instanceof Tree.Leads leads) {
      declared.add(Profile.of(leads, profiles.leads(leads)));
    } else if (one instanceof Tree.Rule rule) {
      declared.add(Profile.of(rule));
    }
  }

  /**
   * The procedures as far as they can be planned, nothing checked: what an editor needs at once.
   */
  public List<Plan> planned() {
    return plans(profiles(), new Diagnostics());
  }

  /**
   * Where names are declared and used in what was compiled or planned before, and in what comes of
   * its procedures when they are built for another analyzer: one that they see or that a setup is
   * for.
   */
  public Names names() {
    Diagnostics silent = new Diagnostics();
    Profiles profiles = new Profiles(names, silent);
    for (Tree.File file : library.files()) {
      for (Tree.Declaration declaration : file.declarations()) {
        if (declaration instanceof Tree.Procedure procedure && own.test(file)) {
          Scope scope = new Scope(library.visibleFrom(file), names, silent);
          Included whole = included(procedure, scope, silent);
          for (Retarget other : retargets(whole.whole(), scope)) {
            planner(whole, scope, profiles, other, silent).plan();
          }
        }
      }
    }
    return names;
  }

  private Set<Tree.Analyzer> others(Tree.Procedure procedure, Scope scope) {
    Set<Tree.Analyzer> others = new LinkedHashSet<>(scope.all(Tree.Analyzer.class));
    for (Tree.Setup setup : procedure.setups()) {
      for (Tree.Analyzer one : analyzers()) {
        if (setup.analyzer() != null && one.name().text().equals(setup.analyzer().text())) {
          names.use(setup.analyzer(), one.name());
          others.add(one);
        }
      }
    }
    return others;
  }

  /** Every other instrument in every role, one at a time. */
  private List<Retarget> retargets(Tree.Procedure procedure, Scope scope) {
    List<Retarget> retargets = new ArrayList<>();
    for (Tree.Instrument own : procedure.instruments()) {
      String role = own.role() == null ? Instruments.ONLY : own.role().text();
      for (Tree.Analyzer other : others(procedure, scope)) {
        if (!other.name().text().equals(own.name().text())) {
          retargets.add(Retarget.of(role, other.name().text()));
        }
      }
    }
    return retargets;
  }

  /**
   * Devices, analyzers and leads come first: while one is at fault, what it lacks is not held
   * against a procedure.
   */
  private Profiles profiles() {
    boolean unread = diagnostics.hasFaults();
    Diagnostics found = new Diagnostics();
    Profiles profiles = new Profiles(names, found);
    library.files().forEach(file -> takeProfiles(file, profiles, found));
    found.removeIf(d -> unread && !OF_ONE_LINE.contains(d.code()));
    diagnostics.take(found);
    return profiles;
  }

  /** A profile reaches to the next declaration of its file. */
  private void blocks(Diagnostics later) {
    for (Tree.File file : library.files()) {
      for (Tree.Declaration one : file.declarations()) {
        if (!(one instanceof Tree.Procedure
            || one instanceof SharedPart
            || one instanceof Tree.Rule)) {
          int end = one.name().span().file().text().length();
          for (Tree.Declaration next : file.declarations()) {
            int start = next.name().span().start();
            end = start > one.name().span().start() ? Math.min(end, start) : end;
          }
          later.profile(new Span(one.name().span().file(), one.name().span().start(), end));
        }
      }
    }
  }

  private List<Plan> plans(Profiles profiles, Diagnostics later) {
    List<Plan> plans = new ArrayList<>();
    for (Tree.File file : scoped()) {
      Scope scope = new Scope(library.visibleFrom(file), names, later);
      for (Tree.Declaration declaration : file.declarations()) {
        if (declaration instanceof Tree.Procedure procedure) {
          Plan plan = plan(procedure, scope, profiles, later);
          if (plan != null) {
            plans.add(plan);
          }
        }
      }
    }
    parts(later);
    plans.sort((one, other) -> one.name().text().compareTo(other.name().text()));
    reportDuplicates(plans, later);
    return plans;
  }

  /**
   * The files whose scope is looked at: of one without a procedure, names that are declared twice
   * are found in the scope of the files that use it.
   */
  private List<Tree.File> scoped() {
    List<Tree.File> scoped = new ArrayList<>();
    Set<Tree.File> used = Collections.newSetFromMap(new IdentityHashMap<>());
    for (Tree.File file : library.files()) {
      if (own.test(file)) {
        scoped.add(file);
        used.addAll(library.usedBy(file));
      }
    }
    scoped.removeIf(file -> used.contains(file) && !hasProcedure(file));
    return scoped;
  }

  private static boolean hasProcedure(Tree.File file) {
    for (Tree.Declaration declaration : file.declarations()) {
      if (declaration instanceof Tree.Procedure) {
        return true;
      }
    }
    return false;
  }

  /** Each procedure against the record beside its source. */
  private void releases(List<Plan> plans, Diagnostics later) {
    Map<String, @Nullable Released> records = new HashMap<>();
    for (Plan plan : plans) {
      SourceFile source = plan.name().span().file();
      String folder = source.path().substring(0, source.path().lastIndexOf('/') + 1);
      if (!records.containsKey(folder)) {
        SourceFile record = library.beside(source, Released.NAME);
        records.put(folder, record == null ? null : Released.parse(record, later));
      }
      plan.released(Releases.check(plan, records.get(folder), later));
    }
  }

  /** Profiles are looked at whether a procedure uses them or not. */
  private void takeProfiles(Tree.File file, Profiles profiles, Diagnostics found) {
    Declarations.record(file, names);
    for (Tree.Declaration declaration : file.declarations()) {
      if (declaration instanceof Tree.Device device) {
        ModeLimits.check(profiles.device(device), names, found);
      } else if (declaration instanceof Tree.Analyzer one) {
        profiles.analyzer(one);
      } else if (declaration instanceof Tree.Leads leads) {
        profiles.leads(leads);
      }
    }
  }

  private @Nullable Plan plan(
      Tree.Procedure procedure, Scope scope, Profiles profiles, Diagnostics later) {
    Included whole = included(procedure, scope, later);
    takenUp.add(whole, scope);
    Diagnostics found = new Diagnostics();
    Plan plan = planner(whole, scope, profiles, others, found).plan();
    allowed(whole.whole(), whole.places(), found);
    found.removeIf(one -> !whole.complete() && LACKING.contains(one.code()));
    later.take(found);
    if (plan != null && !whole.complete()) {
      lacking.add(plan);
    }
    return plan;
  }

  private static Included included(Tree.Procedure procedure, Scope scope, Diagnostics later) {
    return Included.in(procedure, name -> scope.find(SharedPart.class, "part", name), later);
  }

  /** What can be said of a part without a procedure: names that it gives twice, and circles. */
  private void parts(Diagnostics later) {
    for (Tree.File file : library.files()) {
      for (Tree.Declaration declaration : file.declarations()) {
        if (declaration instanceof SharedPart part) {
          Scope scope = new Scope(library.visibleFrom(file), names, new Diagnostics());
          Tree.Procedure lines = Included.in(part.lines(), scope::part, later).whole();
          Scope.distinct(later, "caution", lines.cautions(), Heading.Caution::name);
          Scope.distinct(later, "the name", lines.parts(), Tree.Part::name);
        }
      }
    }
  }

  private Planner planner(
      Included procedure, Scope scope, Profiles profiles, Retarget others, Diagnostics later) {
    return new Planner(
        procedure,
        scope,
        profiles,
        others,
        name -> analyzerNamed(name, later),
        named -> table(named, later),
        later);
  }

  private Tree.@Nullable Analyzer analyzerNamed(Word name, Diagnostics later) {
    for (Tree.Analyzer found : analyzers()) {
      if (found.name().text().equals(name.text())) {
        return found;
      }
    }
    List<String> known = analyzers().stream().map(one -> one.name().text()).toList();
    Scope.unknown(later, name, "analyzer", known);
    return null;
  }

  private List<Tree.Analyzer> analyzers() {
    List<Tree.Analyzer> found = new ArrayList<>();
    for (Tree.File file : library.files()) {
      for (Tree.Declaration declaration : file.declarations()) {
        if (declaration instanceof Tree.Analyzer one) {
          found.add(one);
        }
      }
    }
    return found;
  }

  private Tree.@Nullable Table table(Tree.Table named, Diagnostics later) {
    SourceFile source =
        library.table(named.span(), Objects.requireNonNull(named.file(), "a table in its place"));
    return source == null ? null : CsvTable.parse(source, named.span(), later);
  }

  private static void reportDuplicates(List<Plan> plans, Diagnostics later) {
    for (int i = 1; i < plans.size(); i++) {
      if (plans.get(i).name().text().equals(plans.get(i - 1).name().text())) {
        Scope.duplicate(later, "procedure ", plans.get(i - 1).name(), plans.get(i).name());
      }
    }
  }
}
