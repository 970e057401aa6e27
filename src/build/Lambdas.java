import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Gives the lambdas and method references of compiled classes classes of their own, as a compiler
 * before Java 8 would have, and every record its {@code equals}, {@code hashCode} and {@code
 * toString} in plain code. Java makes all these when it first meets each, which takes a cold start
 * longer than to load what is there.
 *
 * <p>usage: java -cp asm.jar Lambdas.java CLASSES
 */
public final class Lambdas {
  private static final int API = Opcodes.ASM9;
  private static final String METAFACTORY = "java/lang/invoke/LambdaMetafactory";
  private static final String RECORDS = "java/lang/runtime/ObjectMethods";
  private static final String OBJECTS = "java/util/Objects";

  private static final Map<Type, String> BOXES =
      Map.of(
          Type.BOOLEAN_TYPE, "java/lang/Boolean",
          Type.BYTE_TYPE, "java/lang/Byte",
          Type.CHAR_TYPE, "java/lang/Character",
          Type.SHORT_TYPE, "java/lang/Short",
          Type.INT_TYPE, "java/lang/Integer",
          Type.LONG_TYPE, "java/lang/Long",
          Type.FLOAT_TYPE, "java/lang/Float",
          Type.DOUBLE_TYPE, "java/lang/Double");

  private final Map<String, byte[]> classes = new LinkedHashMap<>();
  private final Map<String, byte[]> changed = new LinkedHashMap<>();
  private final Map<String, List<String>> nests = new HashMap<>();

  private Lambdas() {}

  public static void main(String[] arguments) throws IOException {
    Path root = Path.of(arguments[0]);
    Lambdas lambdas = new Lambdas();
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".class")).sorted().toList()) {
        String path = root.relativize(file).toString().replace('\\', '/');
        String name = path.substring(0, path.length() - ".class".length());
        lambdas.classes.put(name, Files.readAllBytes(file));
      }
    }
    lambdas.run();
    for (String name : lambdas.classes.keySet()) {
      if (lambdas.isStale(name)) {
        Files.delete(root.resolve(name + ".class"));
      }
    }
    for (Map.Entry<String, byte[]> one : lambdas.changed.entrySet()) {
      Files.write(root.resolve(one.getKey() + ".class"), one.getValue());
    }
  }

  private void run() {
    classes.forEach(this::host);
    nests.forEach(this::enlarge);
  }

  /** Whether a class was made for a lambda of a class that has been compiled anew. */
  private boolean isStale(String name) {
    int end = name.lastIndexOf("$$");
    return end > 0
        && changed.containsKey(name.substring(0, end))
        && name.substring(end + 2).chars().allMatch(Character::isDigit);
  }

  /** Puts the calls of new classes where the lambdas of a class were. */
  private void host(String name, byte[] bytes) {
    ClassReader reader = new ClassReader(bytes);
    Host host = new Host(reader, new ClassWriter(ClassWriter.COMPUTE_MAXS));
    reader.accept(host, 0);
    host.write();
    if (!host.made.isEmpty() || host.ofRecord > 0) {
      changed.put(name, host.writer.toByteArray());
    }
  }

  /** Names the new members of a nest, which may call what is private in it. */
  private void enlarge(String nest, List<String> members) {
    ClassReader reader = new ClassReader(changed.getOrDefault(nest, classes.get(nest)));
    ClassWriter writer = new ClassWriter(0);
    reader.accept(
        new ClassVisitor(API, writer) {
          @Override
          public void visitEnd() {
            members.forEach(this::visitNestMember);
            super.visitEnd();
          }
        },
        0);
    changed.put(nest, writer.toByteArray());
  }

  private final class Host extends ClassVisitor {
    private final String name;
    private final int version;
    private final ClassWriter writer;
    private String nest;
    private final Map<String, Alike> made = new LinkedHashMap<>();
    private int ofRecord;

    Host(ClassReader reader, ClassWriter writer) {
      super(API, writer);
      this.writer = writer;
      this.name = reader.getClassName();
      this.version = reader.readUnsignedShort(6);
      this.nest = name;
    }

    @Override
    public void visitNestHost(String host) {
      nest = host;
      super.visitNestHost(host);
    }

    @Override
    public MethodVisitor visitMethod(
        int access, String method, String descriptor, String signature, String[] exceptions) {
      return new MethodVisitor(
          API, super.visitMethod(access, method, descriptor, signature, exceptions)) {
        @Override
        public void visitInvokeDynamicInsn(
            String sam, String shape, Handle factory, Object... arguments) {
          if (factory.getOwner().equals(RECORDS)) {
            ofRecord++;
            new RecordMethod(mv, name, arguments).write(sam);
            return;
          }
          if (!factory.getOwner().equals(METAFACTORY) || !factory.getName().equals("metafactory")) {
            super.visitInvokeDynamicInsn(sam, shape, factory, arguments);
            return;
          }
          Alike alike =
              made.computeIfAbsent(
                  shape + sam + arguments[0],
                  k -> new Alike(name + "$$" + made.size(), Type.getType(shape), sam, arguments));
          super.visitLdcInsn(alike.add(arguments));
          super.visitMethodInsn(Opcodes.INVOKESTATIC, alike.name, "of", alike.factoryType(), false);
        }
      };
    }

    /** Makes the classes of the lambdas that were met. */
    void write() {
      for (Alike alike : made.values()) {
        changed.put(alike.name, alike.bytes(version, nest));
        nests.computeIfAbsent(nest, n -> new ArrayList<>()).add(alike.name);
      }
    }
  }

  /**
   * What a record's own method asks of the components: the record, and for {@code equals} what it
   * is compared with, are on the stack. They are in the first two local variables as well, for
   * these methods do nothing else.
   */
  private static final class RecordMethod {
    private final MethodVisitor code;
    private final String record;
    private final String[] names;
    private final Object[] arguments;

    /**
     * @param arguments as the record's bootstrap takes them: its class, the names of its
     *     components, their fields
     */
    RecordMethod(MethodVisitor code, String record, Object[] arguments) {
      this.code = code;
      this.record = record;
      String all = (String) arguments[1];
      this.names = all.isEmpty() ? new String[0] : all.split(";");
      this.arguments = arguments;
    }

    void write(String method) {
      switch (method) {
        case "equals" -> equal();
        case "hashCode" -> hash();
        case "toString" -> text();
        default -> throw new IllegalStateException(method);
      }
    }

    private Handle component(int i) {
      return (Handle) arguments[2 + i];
    }

    private void get(int variable, int i) {
      code.visitVarInsn(Opcodes.ALOAD, variable);
      if (variable == 1) {
        code.visitTypeInsn(Opcodes.CHECKCAST, record);
      }
      Handle field = component(i);
      code.visitFieldInsn(Opcodes.GETFIELD, record, field.getName(), field.getDesc());
    }

    private void equal() {
      code.visitInsn(Opcodes.POP2);
      Label different = new Label();
      Label end = new Label();
      code.visitVarInsn(Opcodes.ALOAD, 1);
      code.visitTypeInsn(Opcodes.INSTANCEOF, record);
      code.visitJumpInsn(Opcodes.IFEQ, different);
      for (int i = 0; i < names.length; i++) {
        Type type = Type.getType(component(i).getDesc());
        get(0, i);
        Alike.convert(code, type, Alike.boxed(type));
        get(1, i);
        Alike.convert(code, type, Alike.boxed(type));
        String shape = "(Ljava/lang/Object;Ljava/lang/Object;)Z";
        code.visitMethodInsn(Opcodes.INVOKESTATIC, OBJECTS, "equals", shape, false);
        code.visitJumpInsn(Opcodes.IFEQ, different);
      }
      code.visitInsn(Opcodes.ICONST_1);
      code.visitJumpInsn(Opcodes.GOTO, end);
      code.visitLabel(different);
      code.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
      code.visitInsn(Opcodes.ICONST_0);
      code.visitLabel(end);
      code.visitFrame(Opcodes.F_SAME1, 0, null, 1, new Object[] {Opcodes.INTEGER});
    }

    private void hash() {
      code.visitInsn(Opcodes.POP);
      code.visitInsn(Opcodes.ICONST_0);
      for (int i = 0; i < names.length; i++) {
        code.visitIntInsn(Opcodes.BIPUSH, 31);
        code.visitInsn(Opcodes.IMUL);
        Type type = Type.getType(component(i).getDesc());
        get(0, i);
        Alike.convert(code, type, Alike.boxed(type));
        String shape = "(Ljava/lang/Object;)I";
        code.visitMethodInsn(Opcodes.INVOKESTATIC, OBJECTS, "hashCode", shape, false);
        code.visitInsn(Opcodes.IADD);
      }
    }

    private void text() {
      String builder = "java/lang/StringBuilder";
      code.visitInsn(Opcodes.POP);
      code.visitTypeInsn(Opcodes.NEW, builder);
      code.visitInsn(Opcodes.DUP);
      code.visitMethodInsn(Opcodes.INVOKESPECIAL, builder, "<init>", "()V", false);
      String simple =
          record.substring(Math.max(record.lastIndexOf('/'), record.lastIndexOf('$')) + 1);
      for (int i = 0; i < names.length; i++) {
        append(builder, (i == 0 ? simple + "[" : ", ") + names[i] + "=");
        Type type = Type.getType(component(i).getDesc());
        get(0, i);
        Alike.convert(code, type, Alike.boxed(type));
        String shape = "(Ljava/lang/Object;)Ljava/lang/StringBuilder;";
        code.visitMethodInsn(Opcodes.INVOKEVIRTUAL, builder, "append", shape, false);
      }
      append(builder, names.length == 0 ? simple + "[]" : "]");
      String shape = "()Ljava/lang/String;";
      code.visitMethodInsn(Opcodes.INVOKEVIRTUAL, builder, "toString", shape, false);
    }

    private void append(String builder, String text) {
      code.visitLdcInsn(text);
      String shape = "(Ljava/lang/String;)Ljava/lang/StringBuilder;";
      code.visitMethodInsn(Opcodes.INVOKEVIRTUAL, builder, "append", shape, false);
    }
  }

  /** The method that a lambda calls, and the type that the lambda's own method has. */
  private record Body(Handle method, Type exact) {}

  /**
   * A class for the lambdas of one class that capture and implement the same: the captured values
   * and the lambda's number as fields, and the method that they implement.
   */
  private static final class Alike {
    private final String name;
    private final Type shape;
    private final Type[] fields;
    private final int captured;
    private final String sam;
    private final Type erased;
    private final List<Body> bodies = new ArrayList<>();
    private final ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);

    /**
     * @param shape what is captured, and the interface
     * @param arguments as the metafactory takes them: the method's erased type, its body and its
     *     type where the lambda stands
     */
    Alike(String name, Type shape, String sam, Object[] arguments) {
      this.name = name;
      this.shape = shape;
      this.captured = shape.getArgumentTypes().length;
      this.fields = Arrays.copyOf(shape.getArgumentTypes(), captured + 1);
      this.fields[captured] = Type.INT_TYPE;
      this.sam = sam;
      this.erased = (Type) arguments[0];
    }

    /** Adds a lambda and gives its number. */
    int add(Object[] arguments) {
      bodies.add(new Body((Handle) arguments[1], (Type) arguments[2]));
      return bodies.size() - 1;
    }

    byte[] bytes(int version, String nest) {
      writer.visit(
          version,
          Opcodes.ACC_FINAL | Opcodes.ACC_SYNTHETIC | Opcodes.ACC_SUPER,
          name,
          null,
          "java/lang/Object",
          new String[] {shape.getReturnType().getInternalName()});
      writer.visitNestHost(nest);
      for (int i = 0; i < fields.length; i++) {
        int access = Opcodes.ACC_PRIVATE | Opcodes.ACC_FINAL;
        writer.visitField(access, field(i), fields[i].getDescriptor(), null, null).visitEnd();
      }
      constructor();
      factory();
      method();
      writer.visitEnd();
      return writer.toByteArray();
    }

    /** What makes a lambda: of the captured values and its number. */
    String factoryType() {
      return Type.getMethodDescriptor(shape.getReturnType(), fields);
    }

    private static String field(int i) {
      return "captured" + i;
    }

    private MethodVisitor begun(int access, String method, String descriptor) {
      MethodVisitor code = writer.visitMethod(access, method, descriptor, null, null);
      code.visitCode();
      return code;
    }

    private static void ended(MethodVisitor code) {
      code.visitMaxs(0, 0);
      code.visitEnd();
    }

    private String constructed() {
      return Type.getMethodDescriptor(Type.VOID_TYPE, fields);
    }

    private void constructor() {
      MethodVisitor code = begun(Opcodes.ACC_PRIVATE, "<init>", constructed());
      code.visitVarInsn(Opcodes.ALOAD, 0);
      code.visitMethodInsn(Opcodes.INVOKESPECIAL, "java/lang/Object", "<init>", "()V", false);
      int slot = 1;
      for (int i = 0; i < fields.length; i++) {
        code.visitVarInsn(Opcodes.ALOAD, 0);
        code.visitVarInsn(fields[i].getOpcode(Opcodes.ILOAD), slot);
        code.visitFieldInsn(Opcodes.PUTFIELD, name, field(i), fields[i].getDescriptor());
        slot += fields[i].getSize();
      }
      code.visitInsn(Opcodes.RETURN);
      ended(code);
    }

    private void factory() {
      MethodVisitor code = begun(Opcodes.ACC_STATIC, "of", factoryType());
      code.visitTypeInsn(Opcodes.NEW, name);
      code.visitInsn(Opcodes.DUP);
      int slot = 0;
      for (Type one : fields) {
        code.visitVarInsn(one.getOpcode(Opcodes.ILOAD), slot);
        slot += one.getSize();
      }
      code.visitMethodInsn(Opcodes.INVOKESPECIAL, name, "<init>", constructed(), false);
      code.visitInsn(Opcodes.ARETURN);
      ended(code);
    }

    private void method() {
      MethodVisitor code = begun(Opcodes.ACC_PUBLIC, sam, erased.getDescriptor());
      Label[] labels = new Label[bodies.size()];
      Arrays.setAll(labels, i -> new Label());
      if (labels.length > 1) {
        code.visitVarInsn(Opcodes.ALOAD, 0);
        code.visitFieldInsn(Opcodes.GETFIELD, name, field(captured), "I");
        code.visitTableSwitchInsn(0, labels.length - 1, labels[0], labels);
      }
      for (int i = 0; i < labels.length; i++) {
        if (labels.length > 1) {
          code.visitLabel(labels[i]);
          code.visitFrame(Opcodes.F_SAME, 0, null, 0, null);
        }
        call(code, bodies.get(i).method, bodies.get(i).exact);
      }
      ended(code);
    }

    /** Calls a body with what was captured and what is given, and returns what it gives. */
    private void call(MethodVisitor code, Handle body, Type exact) {
      boolean makes = body.getTag() == Opcodes.H_NEWINVOKESPECIAL;
      boolean fixed = body.getTag() == Opcodes.H_INVOKESTATIC;
      List<Type> taken = new ArrayList<>(List.of(Type.getArgumentTypes(body.getDesc())));
      if (makes) {
        code.visitTypeInsn(Opcodes.NEW, body.getOwner());
        code.visitInsn(Opcodes.DUP);
      } else if (!fixed) {
        taken.add(0, Type.getObjectType(body.getOwner()));
      }
      for (int i = 0; i < captured; i++) {
        code.visitVarInsn(Opcodes.ALOAD, 0);
        code.visitFieldInsn(Opcodes.GETFIELD, name, field(i), fields[i].getDescriptor());
        convert(code, fields[i], taken.get(i));
      }
      int slot = 1;
      for (int i = 0; i < erased.getArgumentTypes().length; i++) {
        Type given = erased.getArgumentTypes()[i];
        Type meant = exact.getArgumentTypes()[i];
        code.visitVarInsn(given.getOpcode(Opcodes.ILOAD), slot);
        slot += given.getSize();
        convert(code, given, meant);
        convert(code, meant, taken.get(captured + i));
      }
      boolean inInterface = body.isInterface();
      int call =
          makes
              ? Opcodes.INVOKESPECIAL
              : fixed
                  ? Opcodes.INVOKESTATIC
                  : inInterface ? Opcodes.INVOKEINTERFACE : Opcodes.INVOKEVIRTUAL;
      code.visitMethodInsn(call, body.getOwner(), body.getName(), body.getDesc(), inInterface);
      Type result =
          makes ? Type.getObjectType(body.getOwner()) : Type.getReturnType(body.getDesc());
      back(code, result, exact);
    }

    private void back(MethodVisitor code, Type result, Type exact) {
      Type wanted = erased.getReturnType();
      if (wanted == Type.VOID_TYPE) {
        if (result != Type.VOID_TYPE) {
          code.visitInsn(result.getSize() == 2 ? Opcodes.POP2 : Opcodes.POP);
        }
      } else {
        convert(code, result, exact.getReturnType());
        convert(code, exact.getReturnType(), wanted);
      }
      code.visitInsn(wanted.getOpcode(Opcodes.IRETURN));
    }

    /** The class that a value of a type is kept in; of an object its own. */
    static Type boxed(Type type) {
      return isPrimitive(type) ? Type.getObjectType(BOXES.get(type)) : type;
    }

    private static boolean isPrimitive(Type type) {
      return type.getSort() < Type.ARRAY;
    }

    /** Boxes, unboxes, widens or casts. */
    static void convert(MethodVisitor code, Type from, Type to) {
      if (from.equals(to)) {
        return;
      }
      if (isPrimitive(from) && isPrimitive(to)) {
        widen(code, from, to);
      } else if (isPrimitive(from)) {
        String box = BOXES.get(from);
        String shape = Type.getMethodDescriptor(Type.getObjectType(box), from);
        code.visitMethodInsn(Opcodes.INVOKESTATIC, box, "valueOf", shape, false);
      } else if (isPrimitive(to)) {
        String box = BOXES.get(to);
        code.visitTypeInsn(Opcodes.CHECKCAST, box);
        String shape = Type.getMethodDescriptor(to);
        code.visitMethodInsn(Opcodes.INVOKEVIRTUAL, box, to.getClassName() + "Value", shape, false);
      } else {
        code.visitTypeInsn(Opcodes.CHECKCAST, to.getInternalName());
      }
    }

    private static void widen(MethodVisitor code, Type from, Type to) {
      boolean small = from.getSort() <= Type.INT;
      if (small && to == Type.LONG_TYPE) {
        code.visitInsn(Opcodes.I2L);
      } else if (small && to == Type.DOUBLE_TYPE) {
        code.visitInsn(Opcodes.I2D);
      } else if (from == Type.LONG_TYPE && to == Type.DOUBLE_TYPE) {
        code.visitInsn(Opcodes.L2D);
      } else if (!small || to != Type.INT_TYPE) {
        throw new IllegalStateException("from " + from + " to " + to);
      }
    }
  }
}
