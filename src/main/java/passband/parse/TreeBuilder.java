package passband.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.parse.antlr.PassbandParser.*;
import passband.source.SourceFile;
import passband.syntax.Tree;

/**
 * From the parser's contexts to the tree. What a fault left incomplete is left out; the fault has
 * been said.
 */
final class TreeBuilder {
  private final Terminals leaves;
  private final ItemBuilder build;
  private final SourceFile source;
  private final Diagnostics diagnostics;

  /**
   * @param sound whether the parser found no fault, so that none need be looked for
   */
  TreeBuilder(SourceFile source, Diagnostics diagnostics, boolean sound) {
    this.source = source;
    this.diagnostics = diagnostics;
    this.leaves = new Terminals(source, diagnostics, sound);
    this.build = new ItemBuilder(leaves, diagnostics);
  }

  Tree.File file(FileContext file) {
    List<Tree.Use> uses = build.each(file.use(), this::use);
    List<Tree.Declaration> declarations = new ArrayList<>();
    for (ParserRuleContext child : file.getRuleContexts(ParserRuleContext.class)) {
      Tree.Declaration declaration = declaration(child);
      if (declaration != null) {
        declarations.add(declaration);
      }
    }
    return new Tree.File(source, uses, declarations);
  }

  /** A use; null when its text is not closed, so that no such file is looked for. */
  private Tree.@Nullable Use use(UseContext use) {
    String written = use.TEXT().getText();
    return written.length() > 1 && written.endsWith("\"")
        ? new Tree.Use(leaves.text(use.TEXT()))
        : null;
  }

  private Tree.@Nullable Declaration declaration(ParserRuleContext context) {
    if (context instanceof DeviceContext device) {
      return leaves.whole(device.deviceHead())
          ? new DeviceBuilder(leaves, build, diagnostics).device(device)
          : null;
    }
    if (context instanceof AnalyzerContext analyzer) {
      return leaves.whole(analyzer.analyzerHead())
          ? new AnalyzerBuilder(leaves, build, diagnostics).analyzer(analyzer)
          : null;
    }
    if (context instanceof LeadsContext leadSet) {
      return leaves.whole(leadSet.leadsHead())
          ? new LeadsBuilder(leaves, build).leadSet(leadSet)
          : null;
    }
    if (context instanceof Rule_Context rule) {
      return leaves.whole(rule.ruleHead()) ? rule(rule) : null;
    }
    if (context instanceof SharedPartContext part && leaves.whole(part.sharedPartHead())) {
      return new ProcedureBuilder(leaves, build, diagnostics).part(part);
    }
    if (context instanceof ProcedureContext procedure && leaves.whole(procedure.procedureHead())) {
      return new ProcedureBuilder(leaves, build, diagnostics).procedure(procedure);
    }
    return null;
  }

  private List<Tree.Accept> accepts(Rule_Context rule) {
    List<Tree.Accept> accepts = new ArrayList<>();
    build.parts(rule.ruleItem(), RuleItemContext::accept, build::accept).forEach(accepts::addAll);
    return accepts;
  }

  private Tree.Rule rule(Rule_Context rule) {
    return new Tree.Rule(
        leaves.name(rule.ruleHead().name()),
        leaves.optionalText(rule.ruleHead().TEXT()),
        build.parts(rule.ruleItem(), RuleItemContext::derive_, build::derive),
        accepts(rule),
        build.parts(rule.ruleItem(), RuleItemContext::allow, build::allow),
        leaves.line(rule.ruleHead()));
  }
}
