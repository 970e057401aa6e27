package passband.build;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import passband.command.Main;
import passband.draw.Shape;
import passband.limit.Limit;
import passband.plan.Figure;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.testing.Repository;

/** What src/build makes of the compiled classes. The other tests all run on them. */
class PlainClassesTest {

  /** Records like some of the program's own, whose methods are still Java's. */
  private record LikeCircle(
      double x, double y, double radius, String fill, String stroke, double line) {}

  private record LikeFigure(Rational si, Unit unit) {}

  @Test
  void nothingIsLeftForJavaToLink() {
    List<String> left = new ArrayList<>();
    int classes = 0;
    for (Path file : Repository.files(Repository.ROOT.resolve("target/classes"), ".class")) {
      classes++;
      new ClassReader(Repository.bytes(file))
          .accept(
              new ClassVisitor(Opcodes.ASM9) {
                @Override
                public MethodVisitor visitMethod(
                    int access, String name, String shape, String signature, String[] thrown) {
                  return new MethodVisitor(Opcodes.ASM9) {
                    @Override
                    public void visitInvokeDynamicInsn(
                        String called, String type, Handle factory, Object... arguments) {
                      left.add(file + " " + name + " " + called);
                    }
                  };
                }
              },
              0);
    }
    assertTrue(classes > 500, classes + " classes");
    assertEquals(List.of(), left);
  }

  @Test
  void recordsAreEqualAsJavaHasIt() {
    Shape.Circle circle = new Shape.Circle(1, -0.0, Double.NaN, null, "#fff", 2);
    assertEquals(circle, new Shape.Circle(1, -0.0, Double.NaN, null, "#fff", 2));
    assertNotEquals(circle, new Shape.Circle(1, 0.0, Double.NaN, null, "#fff", 2));
    assertNotEquals(circle, new Shape.Circle(1, -0.0, Double.NaN, "", "#fff", 2));
    assertNotEquals(circle, new Shape.Circle(1, -0.0, Double.NaN, null, "#fff", 3));
    assertNotEquals(circle, null);
    assertNotEquals(circle, "Circle");
    assertEquals(
        new LikeCircle(1, -0.0, Double.NaN, null, "#fff", 2).hashCode(), circle.hashCode());
    Figure figure = new Figure(Rational.of(1, 2), Units.find("mA"));
    assertEquals(new LikeFigure(figure.si(), figure.unit()).hashCode(), figure.hashCode());
    assertEquals(figure, new Figure(Rational.of(2, 4), Units.find("mA")));
  }

  @Test
  void recordsAreWrittenAsJavaHasIt() {
    Shape.Circle circle = new Shape.Circle(1, -0.0, Double.NaN, null, "#fff", 2);
    assertEquals(
        new LikeCircle(1, -0.0, Double.NaN, null, "#fff", 2)
            .toString()
            .replace("LikeCircle", "Circle"),
        circle.toString());
    assertEquals(
        "Rounded[lower=1/2, upper=null]", new Limit.Rounded(Rational.of(1, 2), null).toString());
  }

  /** To set up streams and regular expressions takes a good part of a cold check. */
  @Test
  void aCheckOfACleanProcedureNeedsNeitherStreamsNorRegularExpressions() throws Exception {
    Path procedure = Repository.files(Repository.PROCEDURES, "-output.pband").get(0);
    Process check =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "check",
                procedure.toString())
            .redirectErrorStream(true)
            .start();
    String said = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, check.waitFor(), said);
    assertTrue(said.contains(" " + Rational.class.getName() + " "), said);
    assertFalse(said.contains(" java.util.stream.AbstractPipeline "), "streams");
    assertFalse(said.contains(" java.util.regex.Pattern "), "regular expressions");
  }
}
