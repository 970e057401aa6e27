package passband;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.DiagnosticBuilder;

/** The code map of DEVELOPERS.md, held against the code. */
@AnalyzeClasses(packages = "passband", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  private static final int MOST_COMPONENTS = 11;

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
          .layer("library")
          .definedBy("passband.library")
          .layer("model")
          .definedBy("passband.model")
          .layer("resolve")
          .definedBy("passband.resolve")
          .layer("limit")
          .definedBy("passband.limit")
          .layer("plan")
          .definedBy("passband.plan")
          .layer("bench")
          .definedBy("passband.bench")
          .layer("detect")
          .definedBy("passband.detect")
          .layer("evidence")
          .definedBy("passband.evidence")
          .layer("check")
          .definedBy("passband.check")
          .layer("compile")
          .definedBy("passband.compile")
          .layer("draw")
          .definedBy("passband.draw")
          .layer("diff")
          .definedBy("passband.diff")
          .layer("judge")
          .definedBy("passband.judge")
          .layer("record")
          .definedBy("passband.record")
          .layer("render")
          .definedBy("passband.render")
          .layer("pdf")
          .definedBy("passband.pdf")
          .layer("format")
          .definedBy("passband.format")
          .layer("edit")
          .definedBy("passband.edit")
          .layer("transcribe")
          .definedBy("passband.transcribe")
          .layer("server")
          .definedBy("passband.server")
          .layer("build")
          .definedBy("passband.build")
          .layer("command")
          .definedBy("passband.command")
          .whereLayer("parse")
          .mayOnlyBeAccessedByLayers(
              "evidence",
              "library",
              "format",
              "judge",
              "compile",
              "edit",
              "transcribe",
              "server",
              "command")
          .whereLayer("library")
          .mayOnlyBeAccessedByLayers(
              "check", "compile", "edit", "transcribe", "server", "build", "command")
          .whereLayer("resolve")
          .mayOnlyBeAccessedByLayers("limit", "plan", "compile", "check", "edit", "server", "build")
          .whereLayer("limit")
          .mayOnlyBeAccessedByLayers(
              "bench",
              "detect",
              "evidence",
              "plan",
              "compile",
              "check",
              "draw",
              "diff",
              "judge",
              "render",
              "pdf",
              "edit")
          .whereLayer("plan")
          .mayOnlyBeAccessedByLayers(
              "bench",
              "detect",
              "evidence",
              "compile",
              "check",
              "draw",
              "diff",
              "judge",
              "render",
              "pdf",
              "edit",
              "build",
              "command")
          .whereLayer("bench")
          .mayOnlyBeAccessedByLayers("check", "detect", "render")
          .whereLayer("detect")
          .mayOnlyBeAccessedByLayers("check", "draw", "diff", "render", "pdf", "build", "command")
          .whereLayer("evidence")
          .mayOnlyBeAccessedByLayers(
              "detect", "judge", "record", "render", "pdf", "build", "command")
          .whereLayer("check")
          .mayOnlyBeAccessedByLayers("compile", "render", "command")
          .whereLayer("compile")
          .mayOnlyBeAccessedByLayers("edit", "transcribe", "build", "command")
          .whereLayer("draw")
          .mayOnlyBeAccessedByLayers("check", "render", "pdf")
          .whereLayer("diff")
          .mayOnlyBeAccessedByLayers("render", "command")
          .whereLayer("judge")
          .mayOnlyBeAccessedByLayers("record", "render", "command")
          .whereLayer("record")
          .mayOnlyBeAccessedByLayers("render", "command")
          .whereLayer("render")
          .mayOnlyBeAccessedByLayers("pdf", "build", "command")
          .whereLayer("pdf")
          .mayOnlyBeAccessedByLayers("build", "command")
          .whereLayer("format")
          .mayOnlyBeAccessedByLayers("transcribe", "server", "command")
          .whereLayer("transcribe")
          .mayOnlyBeAccessedByLayers("command")
          .whereLayer("edit")
          .mayOnlyBeAccessedByLayers("server", "command")
          .whereLayer("server")
          .mayOnlyBeAccessedByLayers("command")
          .whereLayer("build")
          .mayOnlyBeAccessedByLayers("command")
          .whereLayer("command")
          .mayNotBeAccessedByAnyLayer();

  /**
   * The core is given bytes and gives text: files, clocks, terminals and the default locale belong
   * to the library's files, the build and the command.
   */
  @ArchTest
  static final ArchRule coreKnowsNoWorld =
      noClasses()
          .that()
          .resideOutsideOfPackages("passband.library", "passband.build", "passband.command")
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
          .haveNameMatching("java\\.time\\.(Clock|Instant|ZonedDateTime)")
          .orShould()
          .callMethodWhere(
              target(nameMatching("now")).and(target(owner(resideInAPackage("java.time..")))));

  /** Templates, PDFs, workbooks and the protocol are loaded only by what prints or serves. */
  @ArchTest
  static final ArchRule libraries =
      noClasses()
          .that()
          .resideOutsideOfPackages("passband.render", "passband.pdf", "passband.server")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "freemarker..",
              "org.apache.pdfbox..",
              "org.apache.fontbox..",
              "org.dhatim.fastexcel..",
              "org.eclipse.lsp4j..");

  /** A message is made by {@code Diagnostics.say}, so that its format and locale are one. */
  @ArchTest
  static final ArchRule messagesAreMadeInOnePlace =
      noClasses()
          .that()
          .resideOutsideOfPackage("passband.diagnostic")
          .should()
          .callConstructorWhere(target(owner(assignableTo(Diagnostic.class))))
          .orShould()
          .callConstructorWhere(target(owner(assignableTo(DiagnosticBuilder.class))));

  /** Messages and hints are for people: nothing but what shows them reads them. */
  @ArchTest
  static final ArchRule messagesAreOnlyShown =
      noClasses()
          .that()
          .resideOutsideOfPackage("passband.diagnostic")
          .and()
          .doNotHaveFullyQualifiedName("passband.server.Replies")
          .and()
          .doNotHaveFullyQualifiedName("passband.edit.RenameTrial")
          .should()
          .callMethod(Diagnostic.class, "message")
          .orShould()
          .callMethod(Diagnostic.class, "hint");

  /** What has many parts says by groups of them what they are. */
  @ArchTest
  static void recordsHaveFewComponents(JavaClasses classes) {
    Map<String, Integer> many = new TreeMap<>();
    int records = 0;
    for (JavaClass one : classes) {
      if (one.isRecord()) {
        records++;
        int components = one.reflect().getRecordComponents().length;
        if (components > MOST_COMPONENTS) {
          many.put(one.getName(), components);
        }
      }
    }
    assertTrue(records > 100, records + " records");
    assertEquals(Map.of(), many);
  }

  /** A name says which class it is without its package. */
  @ArchTest
  static void noTwoClassesOfOneName(JavaClasses classes) {
    Map<String, Set<String>> byName = new TreeMap<>();
    for (JavaClass one : classes) {
      boolean ownFile = one.isTopLevelClass() && !one.getSimpleName().equals("package-info");
      if (ownFile && !one.getName().contains("$")) {
        byName.computeIfAbsent(one.getSimpleName(), k -> new TreeSet<>()).add(one.getName());
      }
    }
    assertTrue(byName.size() > 200, byName.size() + " classes");
    byName.values().removeIf(names -> names.size() == 1);
    assertEquals(Map.of(), byName);
  }
}
