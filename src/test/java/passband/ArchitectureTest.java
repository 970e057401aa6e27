package passband;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The code map of DEVELOPERS.md, held against the code. */
@AnalyzeClasses(packages = "passband", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule layers =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("quantity")
          .definedBy("passband.quantity")
          .layer("source")
          .definedBy("passband.source", "passband.diagnostic")
          .layer("syntax")
          .definedBy("passband.syntax")
          .layer("parse")
          .definedBy("passband.parse..")
          .layer("model")
          .definedBy("passband.model")
          .layer("resolve")
          .definedBy("passband.resolve")
          .layer("limit")
          .definedBy("passband.limit")
          .layer("plan")
          .definedBy("passband.plan")
          .layer("check")
          .definedBy("passband.check")
          .layer("draw")
          .definedBy("passband.draw")
          .layer("render")
          .definedBy("passband.render")
          .layer("pdf")
          .definedBy("passband.pdf")
          .layer("format")
          .definedBy("passband.format")
          .layer("diff")
          .definedBy("passband.diff")
          .layer("judge")
          .definedBy("passband.judge")
          .layer("edit")
          .definedBy("passband.edit")
          .layer("server")
          .definedBy("passband.server")
          .layer("compiler")
          .definedBy("passband")
          .layer("command")
          .definedBy("passband.command")
          .whereLayer("command")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("compiler")
          .mayOnlyBeAccessedByLayers("edit", "command")
          .whereLayer("edit")
          .mayOnlyBeAccessedByLayers("server", "command")
          .whereLayer("server")
          .mayOnlyBeAccessedByLayers("command")
          .whereLayer("render")
          .mayOnlyBeAccessedByLayers("pdf", "command")
          .whereLayer("pdf")
          .mayOnlyBeAccessedByLayers("command")
          .whereLayer("judge")
          .mayOnlyBeAccessedByLayers("render", "command")
          .whereLayer("diff")
          .mayOnlyBeAccessedByLayers("render", "command")
          .whereLayer("draw")
          .mayOnlyBeAccessedByLayers("render", "pdf")
          .whereLayer("check")
          .mayOnlyBeAccessedByLayers("compiler", "command")
          .whereLayer("plan")
          .mayOnlyBeAccessedByLayers(
              "check", "draw", "diff", "judge", "render", "pdf", "compiler", "edit", "command")
          .whereLayer("limit")
          .mayOnlyBeAccessedByLayers(
              "plan",
              "check",
              "draw",
              "diff",
              "judge",
              "render",
              "pdf",
              "compiler",
              "edit",
              "command")
          .whereLayer("resolve")
          .mayOnlyBeAccessedByLayers(
              "limit", "plan", "check", "compiler", "edit", "server", "command")
          .whereLayer("parse")
          .mayOnlyBeAccessedByLayers(
              "resolve", "format", "judge", "compiler", "edit", "server", "command")
          .whereLayer("format")
          .mayOnlyBeAccessedByLayers("server", "command");

  /**
   * The core is given bytes and gives text: files, clocks, terminals and the default locale belong
   * to the command.
   */
  @ArchTest
  static final ArchRule coreKnowsNoWorld =
      noClasses()
          .that()
          .resideOutsideOfPackage("passband.command")
          .should()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.nio.file.Files")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.nio.file.Path")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.io.File")
          .orShould()
          .dependOnClassesThat()
          .haveNameMatching("java\\.time\\.(Clock|Instant|ZonedDateTime|LocalDateTime)");

  /** What the launcher gives to Java's own class loader finds nothing of the rest there. */
  @ArchTest
  static final ArchRule coreStandsAlone =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              "passband.command", "passband.render", "passband.pdf", "passband.server")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "passband.command",
              "passband.render",
              "passband.pdf",
              "passband.server",
              "freemarker..",
              "org.apache.pdfbox..",
              "org.apache.fontbox..",
              "org.eclipse.lsp4j..");
}
