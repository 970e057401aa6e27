package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Instruments;
import passband.model.Instruments.Taken;
import passband.resolve.Profiles;
import passband.resolve.Scope;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Which instrument takes which role of a procedure. */
final class InstrumentRoles {
  private final Tree.Procedure procedure;
  private final Scope scope;
  private final Profiles profiles;
  private final Retarget others;
  private final Declared declared;
  private final Diagnostics diagnostics;

  /** Finds an instrument of the whole library by its name. */
  interface Declared {
    /** The declaration; null, with the fault said at the word, when there is none. */
    Tree.@Nullable Analyzer analyzer(Word name);
  }

  InstrumentRoles(
      Tree.Procedure procedure,
      Scope scope,
      Profiles profiles,
      Retarget others,
      Declared declared,
      Diagnostics diagnostics) {
    this.procedure = procedure;
    this.scope = scope;
    this.profiles = profiles;
    this.others = others;
    this.declared = declared;
    this.diagnostics = diagnostics;
  }

  /**
   * The instruments; null, with the faults said, when one is missing.
   *
   * @param device null when it is not known
   */
  @Nullable Instruments of(@Nullable Device device) {
    Map<String, Word> roles = roles(device);
    if (roles == null || !clear(roles)) {
      return null;
    }
    List<Taken> taken = new ArrayList<>();
    for (Tree.Instrument one : procedure.instruments()) {
      Word role = Objects.requireNonNull(roles.get(roleOf(one)), "a role of this procedure");
      Analyzer unit = unit(one, role.text(), roles);
      if (unit != null) {
        taken.add(new Taken(role, unit));
      }
    }
    return taken.size() < roles.size() ? null : new Instruments(taken);
  }

  /** The roles by name in the order written; null, with the fault said, for two of one name. */
  private @Nullable Map<String, Word> roles(@Nullable Device device) {
    Map<String, Word> roles = new LinkedHashMap<>();
    for (Tree.Instrument one : procedure.instruments()) {
      Word role = roleWord(one);
      Word first = roles.putIfAbsent(role.text(), role);
      if (first != null) {
        sayTwice(one, role, first);
        return null;
      }
      if (taken(role, device)) {
        return null;
      }
    }
    return roles;
  }

  private void sayTwice(Tree.Instrument one, Word role, Word first) {
    diagnostics
        .say(
            Code.DUPLICATE_NAME,
            role.span(),
            one.role() == null
                ? "the analyzer is given twice"
                : "the role '%s' is given to two instruments",
            role.text())
        .note(first.span(), "first given here")
        .hint("give each instrument a role of its own: analyzer ROLE NAME");
  }

  /** A role shares its names with outlets, and with the words that lead to a terminal. */
  private boolean taken(Word role, @Nullable Device device) {
    Device.Outlet outlet = device == null ? null : device.outlet(role.text());
    boolean word = role.text().equals("outlet") || role.text().equals(Instruments.DEVICE);
    if (outlet == null && !word) {
      return false;
    }
    var said =
        diagnostics
            .say(Code.DUPLICATE_NAME, role.span(), "the role '%s' has a name in use", role.text())
            .hint("choose another name for the role");
    if (outlet != null) {
      said.note(outlet.name().span(), "an outlet of the device has it");
    }
    return true;
  }

  /** Whether it is clear which instrument the one of the command line stands for. */
  private boolean clear(Map<String, Word> roles) {
    if (others.any() != null && roles.size() > 1) {
      diagnostics
          .say(
              Code.UNKNOWN_NAME,
              procedure.name().span(),
              "the procedure '%s' has %d instruments: say which of them is to be '%s'",
              procedure.name().text(),
              roles.size(),
              others.any())
          .hint("write ROLE=%s; the roles are %s", others.any(), String.join(", ", roles.keySet()));
      return false;
    }
    return true;
  }

  private String roleOf(Tree.Instrument one) {
    return roleWord(one).text();
  }

  /** The role as written; without one, or with the instrument's own name twice, the only one. */
  private Word roleWord(Tree.Instrument one) {
    Word role = one.role();
    if (role == null || !role.text().equals(one.name().text())) {
      return role == null ? new Word(Instruments.ONLY, one.span()) : role;
    }
    diagnostics
        .say(
            Code.DUPLICATE_NAME,
            role.span(),
            "'%s' is named twice: a role has a name of its own",
            role.text())
        .hint("remove one of the two, or write a role before the name");
    return new Word(Instruments.ONLY, one.span());
  }

  /**
   * The instrument of a role; another role's where the command line says that one unit has both.
   */
  private @Nullable Analyzer unit(Tree.Instrument one, String role, Map<String, Word> roles) {
    String named = others.name(role, roles.size() == 1);
    if (named != null && !named.equals(role)) {
      Tree.Instrument other = instrument(named);
      if (other != null && others.name(named, false) == null) {
        return unit(other, named, roles);
      }
    }
    Tree.Analyzer found =
        named == null
            ? scope.find(Tree.Analyzer.class, "analyzer", one.name())
            : declared.analyzer(new Word(named, procedure.name().span()));
    return found == null ? null : profiles.analyzer(found).in(role);
  }

  private Tree.@Nullable Instrument instrument(String role) {
    for (Tree.Instrument one : procedure.instruments()) {
      if (one.role() != null && one.role().text().equals(role)) {
        return one;
      }
    }
    return null;
  }
}
