import static org.objectweb.asm.Opcodes.*;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Type;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.FieldInsnNode;
import org.objectweb.asm.tree.IntInsnNode;
import org.objectweb.asm.tree.InvokeDynamicInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;

/**
 * Makes lambdas, and {@code equals} and {@code hashCode} of records, into plain classes and calls, in place. As the
 * compiler leaves them, each place is linked when it is first come by, which costs a cold process some tenth of a
 * millisecond; a check of one house comes by a thousand. Run by the build as a single source file, with ASM's core and
 * tree on the class path:
 *
 * <pre>java PlainCalls.java FOLDER-OF-CLASSES</pre>
 *
 * <p>Lambdas of one nest that have the same interface share a class, and are told apart in it by a number: a class of its own for
 * each is most of what a lambda costs a cold process then. The class becomes a member of the nest, so that it may call private
 * methods. What has been rewritten before is left as it is; classes made for lambdas that are no longer there are deleted.
 */
final class PlainCalls {
  private static final String LAMBDAS = "java/lang/invoke/LambdaMetafactory";
  private static final String RECORDS = "java/lang/runtime/ObjectMethods";
  private static final String MARK = "$Lambda";
  private static final String BODY = "lambda$";
  private static final String OBJECT = "java/lang/Object";
  /** So that the method which tells them apart stays within what the Java machine compiles at all. */
  private static final int MOST_TOGETHER = 200;

  /** Every class of the folder by its internal name, then those made for lambdas too. */
  private final Map<String, ClassNode> classes = new TreeMap<>();

  private final Set<String> changed = new HashSet<>();

  /** Places where a lambda is made, by their nest and what the lambda is to its users. */
  private final Map<String, List<Place>> lambdas = new TreeMap<>();

  private static final class Place {
    final ClassNode host;
    final MethodNode method;
    final InvokeDynamicInsnNode call;

    Place(ClassNode host, MethodNode method, InvokeDynamicInsnNode call) {
      this.host = host;
      this.method = method;
      this.call = call;
    }

    Type[] captured() {
      return Type.getArgumentTypes(call.desc);
    }
  }

  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    PlainCalls calls = new PlainCalls();
    calls.read(folder);
    List.copyOf(calls.classes.values()).stream().filter(c -> !c.name.contains(MARK)).forEach(calls::rewrite);
    calls.lambdas.values().forEach(calls::together);
    calls.write(folder);
  }

  private void read(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : (Iterable<Path>) files.filter(f -> f.toString().endsWith(".class"))::iterator) {
        ClassNode read = new ClassNode();
        new ClassReader(Files.readAllBytes(file)).accept(read, 0);
        classes.put(read.name, read);
      }
    }
  }

  private void write(Path folder) throws IOException {
    for (ClassNode each : classes.values()) {
      Path file = folder.resolve(each.name + ".class");
      if (each.name.contains(MARK) && !members(classes.get(nestHost(each))).contains(each.name)) {
        Files.delete(file); // its lambda is gone
      } else if (changed.contains(each.name)) {
        ClassWriter bytes = new ClassWriter(ClassWriter.COMPUTE_MAXS);
        each.accept(bytes);
        Files.write(file, bytes.toByteArray());
      }
    }
  }

  private static String nestHost(ClassNode member) {
    return member.nestHostClass == null ? member.name : member.nestHostClass;
  }

  private static List<String> members(ClassNode nest) {
    return nest == null || nest.nestMembers == null ? List.of() : nest.nestMembers;
  }

  private void rewrite(ClassNode host) {
    showBodies(host);
    for (MethodNode method : host.methods) {
      for (AbstractInsnNode each : method.instructions.toArray()) {
        if (!(each instanceof InvokeDynamicInsnNode)) {
          continue;
        }
        InvokeDynamicInsnNode call = (InvokeDynamicInsnNode) each;
        if (isLambda(call)) {
          String alike = nestHost(host) + " " + Type.getReturnType(call.desc) + call.name + call.bsmArgs[0];
          lambdas.computeIfAbsent(alike, k -> new ArrayList<>()).add(new Place(host, method, call));
        } else if (call.bsm.getOwner().equals(RECORDS) && !call.name.equals("toString")) {
          recordMethod(host, method, call);
          changed.add(host.name);
          break;
        }
      }
    }
  }

  // Lambdas

  /**
   * Names the bodies of lambdas anew, and shows them. They are methods like any others from now on; tools that follow calls
   * pass over those that a compiler marks as its own, or that have the name it gives to the bodies of lambdas.
   */
  private static void showBodies(ClassNode host) {
    Set<String> bodies = new HashSet<>();
    each(host, call -> {
      Handle work = (Handle) call.bsmArgs[1];
      if (isLambda(call) && work.getOwner().equals(host.name) && work.getName().startsWith(BODY)) {
        bodies.add(work.getName());
      }
    });
    each(host, call -> {
      Handle work = (Handle) call.bsmArgs[1];
      if (work.getOwner().equals(host.name) && bodies.contains(work.getName())) {
        call.bsmArgs[1] = new Handle(work.getTag(), work.getOwner(), shown(work.getName()), work.getDesc(), work.isInterface());
      }
    });
    for (MethodNode method : host.methods) {
      if (bodies.contains(method.name)) {
        method.name = shown(method.name);
        method.access &= ~ACC_SYNTHETIC;
      }
    }
  }

  private static String shown(String body) {
    return "body$" + body.substring(BODY.length());
  }

  /** Every call of a class that makes a lambda, of whatever sort. */
  private static void each(ClassNode host, Consumer<InvokeDynamicInsnNode> done) {
    for (MethodNode method : host.methods) {
      for (AbstractInsnNode each : method.instructions) {
        if (each instanceof InvokeDynamicInsnNode && ((InvokeDynamicInsnNode) each).bsm.getOwner().equals(LAMBDAS)) {
          done.accept((InvokeDynamicInsnNode) each);
        }
      }
    }
  }

  /** Lambdas that can be serialized or have more than one interface have another maker, and stay as they are. */
  private static boolean isLambda(InvokeDynamicInsnNode call) {
    return call.bsm.getOwner().equals(LAMBDAS) && call.bsm.getName().equals("metafactory");
  }

  private void together(List<Place> alike) {
    for (int from = 0; from < alike.size(); from += MOST_TOGETHER) {
      List<Place> some = alike.subList(from, Math.min(alike.size(), from + MOST_TOGETHER));
      if (some.size() == 1) {
        alone(some.get(0));
      } else {
        shared(some);
      }
    }
  }

  /** One class for several lambdas: which of them an object is, and what that one has captured. */
  private void shared(List<Place> places) {
    InvokeDynamicInsnNode first = places.get(0).call;
    ClassNode made = newClass(places.get(0).host, Type.getReturnType(first.desc).getInternalName());
    List<Type> fields = fields(places);
    constructor(made, fields.toArray(new Type[0]));
    MethodVisitor code = made.visitMethod(ACC_PUBLIC, first.name, ((Type) first.bsmArgs[0]).getDescriptor(), null, null);
    Label[] cases = new Label[places.size()];
    Arrays.setAll(cases, i -> new Label());
    code.visitVarInsn(ALOAD, 0);
    code.visitFieldInsn(GETFIELD, made.name, "captured0", "I");
    code.visitTableSwitchInsn(0, cases.length - 1, cases[cases.length - 1], cases);
    Set<String> makers = new HashSet<>();
    for (int i = 0; i < cases.length; i++) {
      Place place = places.get(i);
      int[] held = places(place.captured(), fields);
      code.visitLabel(cases[i]);
      code.visitFrame(F_SAME, 0, null, 0, null);
      work(code, made, place.call, held, fields);
      List<Type> given = new ArrayList<>(Arrays.asList(place.captured()));
      given.add(Type.INT_TYPE);
      String with = Type.getMethodDescriptor(Type.getReturnType(first.desc), given.toArray(new Type[0]));
      if (makers.add(with)) {
        maker(made, with, given, held, fields);
      }
      place.method.instructions.insertBefore(place.call, new IntInsnNode(SIPUSH, i));
      place.method.instructions.set(place.call, new MethodInsnNode(INVOKESTATIC, made.name, "with", with, false));
      changed.add(place.host.name);
    }
  }

  /** The number that tells which lambda it is, then as many fields of each kind as the one that captures most of that kind needs. */
  private static List<Type> fields(List<Place> places) {
    List<Type> fields = new ArrayList<>(List.of(Type.INT_TYPE));
    for (Place place : places) {
      List<Type> free = new ArrayList<>(fields.subList(1, fields.size()));
      for (Type each : place.captured()) {
        if (!free.remove(stored(each))) {
          fields.add(stored(each));
        }
      }
    }
    return fields;
  }

  /** Which field holds each of what a lambda captures. */
  private static int[] places(Type[] captured, List<Type> fields) {
    int[] held = new int[captured.length];
    Set<Integer> taken = new HashSet<>();
    for (int i = 0; i < captured.length; i++) {
      int at = 1;
      while (taken.contains(at) || !fields.get(at).equals(stored(captured[i]))) {
        at++;
      }
      taken.add(at);
      held[i] = at;
    }
    return held;
  }

  /** As what a captured value is kept where others may have been captured in its place. */
  private static Type stored(Type type) {
    return primitive(type) ? type : Type.getObjectType(OBJECT);
  }

  /** Makes an object from what is captured and the number of its lambda; fields that another lambda needs stay empty. */
  private static void maker(ClassNode made, String with, List<Type> given, int[] held, List<Type> fields) {
    MethodVisitor code = made.visitMethod(ACC_STATIC, "with", with, null, null);
    int[] slots = new int[given.size()];
    for (int i = 1; i < slots.length; i++) {
      slots[i] = slots[i - 1] + given.get(i - 1).getSize();
    }
    code.visitTypeInsn(NEW, made.name);
    code.visitInsn(DUP);
    code.visitVarInsn(ILOAD, slots[slots.length - 1]);
    for (int field = 1; field < fields.size(); field++) {
      Type type = fields.get(field);
      int from = -1;
      for (int i = 0; i < held.length; i++) {
        from = held[i] == field ? i : from;
      }
      if (from >= 0) {
        code.visitVarInsn(type.getOpcode(ILOAD), slots[from]);
      } else {
        code.visitInsn(nothing(type));
      }
    }
    code.visitMethodInsn(INVOKESPECIAL, made.name, "<init>",
        Type.getMethodDescriptor(Type.VOID_TYPE, fields.toArray(new Type[0])), false);
    code.visitInsn(ARETURN);
  }

  private static int nothing(Type type) {
    switch (type.getSort()) {
      case Type.LONG :
        return LCONST_0;
      case Type.FLOAT :
        return FCONST_0;
      case Type.DOUBLE :
        return DCONST_0;
      case Type.OBJECT :
        return ACONST_NULL;
      default :
        return ICONST_0;
    }
  }

  /** A class of its own for a lambda that has no like: its one object takes the place of the call, or a call that makes one. */
  private void alone(Place place) {
    place.method.instructions.set(place.call, lambda(place.host, place.call));
    changed.add(place.host.name);
  }

  private AbstractInsnNode lambda(ClassNode host, InvokeDynamicInsnNode call) {
    Type[] captured = Type.getArgumentTypes(call.desc);
    ClassNode made = newClass(host, Type.getReturnType(call.desc).getInternalName());
    constructor(made, captured);
    body(made, call, captured);
    if (captured.length == 0) {
      String type = "L" + made.name + ";";
      made.visitField(ACC_STATIC | ACC_FINAL, "ONE", type, null, null);
      MethodVisitor first = made.visitMethod(ACC_STATIC, "<clinit>", "()V", null, null);
      instance(first, made.name, captured);
      first.visitFieldInsn(PUTSTATIC, made.name, "ONE", type);
      first.visitInsn(RETURN);
      return new FieldInsnNode(GETSTATIC, made.name, "ONE", type);
    }
    MethodVisitor maker = made.visitMethod(ACC_STATIC, "with", call.desc, null, null);
    instance(maker, made.name, captured);
    maker.visitInsn(ARETURN);
    return new MethodInsnNode(INVOKESTATIC, made.name, "with", call.desc, false);
  }

  private ClassNode newClass(ClassNode host, String function) {
    ClassNode nest = classes.get(nestHost(host));
    if (nest.nestMembers == null) {
      nest.nestMembers = new ArrayList<>();
    }
    changed.add(nest.name);
    ClassNode made = new ClassNode();
    String name = nest.name + MARK + nest.nestMembers.size();
    made.visit(host.version, ACC_FINAL | ACC_SUPER, name, null, OBJECT, new String[]{function});
    made.nestHostClass = nest.name;
    nest.nestMembers.add(name);
    classes.put(name, made);
    changed.add(name);
    return made;
  }

  private static void constructor(ClassNode made, Type[] captured) {
    MethodVisitor code = made.visitMethod(0, "<init>", Type.getMethodDescriptor(Type.VOID_TYPE, captured), null, null);
    code.visitVarInsn(ALOAD, 0);
    code.visitMethodInsn(INVOKESPECIAL, OBJECT, "<init>", "()V", false);
    int slot = 1;
    for (int i = 0; i < captured.length; i++) {
      made.visitField(ACC_PRIVATE | ACC_FINAL, "captured" + i, captured[i].getDescriptor(), null, null);
      code.visitVarInsn(ALOAD, 0);
      code.visitVarInsn(captured[i].getOpcode(ILOAD), slot);
      code.visitFieldInsn(PUTFIELD, made.name, "captured" + i, captured[i].getDescriptor());
      slot += captured[i].getSize();
    }
    code.visitInsn(RETURN);
  }

  private static void instance(MethodVisitor code, String type, Type[] captured) {
    code.visitTypeInsn(NEW, type);
    code.visitInsn(DUP);
    int slot = 0;
    for (Type each : captured) {
      code.visitVarInsn(each.getOpcode(ILOAD), slot);
      slot += each.getSize();
    }
    code.visitMethodInsn(INVOKESPECIAL, type, "<init>", Type.getMethodDescriptor(Type.VOID_TYPE, captured), false);
  }

  /** The method of the interface: what was captured and its own parameters, given to the method that does the work. */
  private static void body(ClassNode made, InvokeDynamicInsnNode call, Type[] captured) {
    String erased = ((Type) call.bsmArgs[0]).getDescriptor();
    int[] held = new int[captured.length];
    Arrays.setAll(held, i -> i);
    work(made.visitMethod(ACC_PUBLIC, call.name, erased, null, null), made, call, held, Arrays.asList(captured));
  }

  /**
   * @param held which field has each of what was captured
   * @param fields the types of the fields
   */
  private static void work(MethodVisitor code, ClassNode made, InvokeDynamicInsnNode call, int[] held, List<Type> fields) {
    Type[] captured = Type.getArgumentTypes(call.desc);
    Type erased = (Type) call.bsmArgs[0];
    Handle work = (Handle) call.bsmArgs[1];
    Type actual = (Type) call.bsmArgs[2];
    Type owner = Type.getObjectType(work.getOwner());
    boolean makes = work.getTag() == H_NEWINVOKESPECIAL;
    List<Type> wanted = new ArrayList<>(Arrays.asList(Type.getArgumentTypes(work.getDesc())));
    if (makes) {
      code.visitTypeInsn(NEW, work.getOwner());
      code.visitInsn(DUP);
    } else if (work.getTag() != H_INVOKESTATIC) {
      wanted.add(0, owner);
    }
    int next = 0;
    for (int i = 0; i < captured.length; i++) {
      code.visitVarInsn(ALOAD, 0);
      Type field = fields.get(held[i]);
      code.visitFieldInsn(GETFIELD, made.name, "captured" + held[i], field.getDescriptor());
      convert(code, field, captured[i], wanted.get(next++));
    }
    int slot = 1;
    for (int i = 0; i < erased.getArgumentTypes().length; i++) {
      Type given = erased.getArgumentTypes()[i];
      code.visitVarInsn(given.getOpcode(ILOAD), slot);
      convert(code, given, actual.getArgumentTypes()[i], wanted.get(next++));
      slot += given.getSize();
    }
    code.visitMethodInsn(instruction(work), work.getOwner(), work.getName(), work.getDesc(), work.isInterface());
    Type result = makes ? owner : Type.getReturnType(work.getDesc());
    Type returned = erased.getReturnType();
    if (returned != Type.VOID_TYPE) {
      convert(code, result, result, returned);
    } else if (result != Type.VOID_TYPE) {
      code.visitInsn(result.getSize() == 2 ? POP2 : POP);
    }
    code.visitInsn(returned.getOpcode(IRETURN));
  }

  private static int instruction(Handle work) {
    switch (work.getTag()) {
      case H_INVOKESTATIC :
        return INVOKESTATIC;
      case H_NEWINVOKESPECIAL :
        return INVOKESPECIAL;
      case H_INVOKEINTERFACE :
        return INVOKEINTERFACE;
      case H_INVOKEVIRTUAL :
      case H_INVOKESPECIAL : // a private method, which others of its nest call like any other
        return work.isInterface() ? INVOKEINTERFACE : INVOKEVIRTUAL;
      default :
        throw new AssertionError(work);
    }
  }

  /**
   * Makes the value on the stack fit.
   *
   * @param from its type there
   * @param known what it is known to be: the same, or a narrower one that erasure hides
   */
  private static void convert(MethodVisitor code, Type from, Type known, Type to) {
    if (primitive(from) && primitive(to)) {
      widen(code, from, to);
    } else if (primitive(from)) {
      String box = box(from);
      code.visitMethodInsn(INVOKESTATIC, box, "valueOf", "(" + from.getDescriptor() + ")L" + box + ";", false);
    } else if (primitive(to)) {
      Type held = PRIMITIVES.stream().filter(p -> box(p).equals(known.getInternalName())).findAny().orElse(to);
      code.visitTypeInsn(CHECKCAST, box(held));
      code.visitMethodInsn(INVOKEVIRTUAL, box(held), held.getClassName() + "Value", "()" + held.getDescriptor(), false);
      widen(code, held, to);
    } else if (!to.getInternalName().equals(OBJECT) && !to.equals(from)) {
      code.visitTypeInsn(CHECKCAST, to.getInternalName());
    }
  }

  private static final List<Type> PRIMITIVES = List.of(
      Type.BOOLEAN_TYPE, Type.BYTE_TYPE, Type.CHAR_TYPE, Type.SHORT_TYPE,
      Type.INT_TYPE, Type.LONG_TYPE, Type.FLOAT_TYPE, Type.DOUBLE_TYPE);

  private static boolean primitive(Type type) {
    return type.getSort() < Type.ARRAY;
  }

  private static String box(Type primitive) {
    String name = primitive.getClassName();
    switch (name) {
      case "int" :
        return "java/lang/Integer";
      case "char" :
        return "java/lang/Character";
      default :
        return "java/lang/" + Character.toUpperCase(name.charAt(0)) + name.substring(1);
    }
  }

  private static void widen(MethodVisitor code, Type from, Type to) {
    if (from.equals(to) || from.getSort() < Type.INT && to == Type.INT_TYPE) {
      return;
    }
    String step = (from.getSort() <= Type.INT ? "I" : from.getDescriptor()) + to.getDescriptor();
    Integer instruction = Map.of("IJ", I2L, "IF", I2F, "ID", I2D, "JF", L2F, "JD", L2D, "FD", F2D).get(step);
    if (instruction == null) {
      throw new AssertionError("a " + from.getClassName() + " does not widen to a " + to.getClassName());
    }
    code.visitInsn(instruction);
  }

  // Records

  private static void recordMethod(ClassNode host, MethodNode method, InvokeDynamicInsnNode call) {
    List<Handle> fields = Arrays.stream(call.bsmArgs).skip(2).map(Handle.class::cast).toList();
    method.instructions.clear();
    if (call.name.equals("hashCode")) {
      hashCode(method, fields);
    } else {
      equals(host, method, fields);
    }
  }

  private static void hashCode(MethodNode code, List<Handle> fields) {
    code.visitInsn(ICONST_0);
    for (Handle field : fields) {
      code.visitIntInsn(BIPUSH, 31);
      code.visitInsn(IMUL);
      load(code, 0, field);
      Type type = Type.getType(field.getDesc());
      String owner = primitive(type) ? box(type) : "java/util/Objects";
      String of = primitive(type) ? type.getDescriptor() : "Ljava/lang/Object;";
      code.visitMethodInsn(INVOKESTATIC, owner, "hashCode", "(" + of + ")I", false);
      code.visitInsn(IADD);
    }
    code.visitInsn(IRETURN);
  }

  private static void equals(ClassNode host, MethodNode code, List<Handle> fields) {
    Label differ = new Label();
    code.visitVarInsn(ALOAD, 1);
    code.visitTypeInsn(INSTANCEOF, host.name);
    code.visitJumpInsn(IFEQ, differ);
    code.visitVarInsn(ALOAD, 1);
    code.visitTypeInsn(CHECKCAST, host.name);
    code.visitVarInsn(ASTORE, 2);
    for (Handle field : fields) {
      load(code, 0, field);
      load(code, 2, field);
      code.visitJumpInsn(compare(code, Type.getType(field.getDesc())), differ);
    }
    code.visitInsn(ICONST_1);
    code.visitInsn(IRETURN);
    code.visitLabel(differ);
    code.visitFrame(F_SAME, 0, null, 0, null);
    code.visitInsn(ICONST_0);
    code.visitInsn(IRETURN);
  }

  private static void load(MethodNode code, int variable, Handle field) {
    code.visitVarInsn(ALOAD, variable);
    code.visitFieldInsn(GETFIELD, field.getOwner(), field.getName(), field.getDesc());
  }

  /** Compares the two values on the stack as {@code equals} of a record has to; gives the jump for those that differ. */
  private static int compare(MethodNode code, Type type) {
    if (!primitive(type)) {
      code.visitMethodInsn(INVOKESTATIC, "java/util/Objects", "equals", "(Ljava/lang/Object;Ljava/lang/Object;)Z", false);
      return IFEQ;
    }
    if (type.getSort() <= Type.INT) {
      return IF_ICMPNE;
    }
    String two = "(" + type.getDescriptor() + type.getDescriptor() + ")I";
    code.visitMethodInsn(INVOKESTATIC, box(type), "compare", two, false); // NaN equals itself here
    return IFNE;
  }
}
