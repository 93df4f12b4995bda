package headrace.script.java;

import groovy.lang.Closure;
import groovyjarjarasm.asm.ClassWriter;
import groovyjarjarasm.asm.MethodVisitor;
import groovyjarjarasm.asm.Opcodes;
import groovyjarjarasm.asm.Type;
import headrace.script.Vocabulary;
import headrace.script.Word;
import headrace.units.Money;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import javax.lang.model.SourceVersion;

/**
 * Makes the class whose static methods are the words of a script, for Java to import: {@code import static
 * headrace.words.Words.*}.
 *
 * <p>Every registered word is there under its own name, so that none can be missing. A word with choices takes them
 * behind its arguments, as {@code quadratic(design, minimumHead(percent(40)))}; every choice and every unit is a method
 * of its own.
 */
public final class JavaWords {
    /** The name of the class. */
    public static final String NAME = "headrace.words.Words";

    private static final String INTERNAL = NAME.replace('.', '/');
    private static final String CHOICE = Type.getInternalName(Choice.class);
    private static final String UNITS = Type.getInternalName(Units.class);
    private static final String A_CHOICE = Type.getDescriptor(Choice.class);
    private static final String AN_OBJECT = "Ljava/lang/Object;";
    private static final String A_TEXT = "Ljava/lang/String;";

    /** So many choices may a word take whose names are the script's: four controls and eight presets. */
    private static final int MOST_OF_ANY_NAME = 12;

    private final ClassWriter out = new ClassWriter(ClassWriter.COMPUTE_MAXS);
    private final Set<String> made = new HashSet<>();

    private JavaWords() {}

    /** Returns the class. */
    public static byte[] bytecode() {
        JavaWords words = new JavaWords();
        words.out.visit(Opcodes.V17, Opcodes.ACC_PUBLIC | Opcodes.ACC_FINAL, INTERNAL, null, "java/lang/Object", null);
        for (Vocabulary.Entry word : Vocabulary.all().words()) {
            word.methods().forEach(method -> words.word(word, method));
        }
        Vocabulary.all()
                .unitWords()
                .forEach(each -> words.unit(each.unit().word(), each.kind().type()));
        Money.CURRENCIES.forEach(words::currency);
        words.prices();
        choiceNames().forEach(words::choice);
        words.anyChoice();
        words.out.visitEnd();
        return words.out.toByteArray();
    }

    /** Returns the names of choices that are no methods, since a word or a unit has the name. */
    public static Set<String> unnamedChoices() {
        Set<String> names = new TreeSet<>();
        Vocabulary.all().words().forEach(word -> names.addAll(word.choiceNames()));
        names.removeAll(choiceNames());
        names.remove(Word.ANY_NAME);
        return names;
    }

    private static Set<String> choiceNames() {
        Set<String> names = new TreeSet<>();
        Vocabulary.all().words().forEach(word -> names.addAll(word.choiceNames()));
        Vocabulary.all().words().forEach(word -> names.remove(word.name()));
        Vocabulary.all().unitWords().forEach(each -> names.remove(each.unit().word()));
        names.removeIf(SourceVersion::isKeyword);
        names.remove(Word.ANY_NAME);
        return names;
    }

    private void word(Vocabulary.Entry word, Method method) {
        Class<?>[] types = method.getParameterTypes();
        boolean choices = types.length > 0 && types[0] == Map.class;
        int most = choices ? mostChoices(word) : 0;
        for (int count = choices ? 1 : 0; count <= most; count++) {
            word(method, count);
        }
    }

    private static int mostChoices(Vocabulary.Entry word) {
        return word.choiceNames().contains(Word.ANY_NAME)
                ? MOST_OF_ANY_NAME
                : word.choices().size();
    }

    /** Writes a word that takes so many choices; exact numbers of them, so that none is taken for an argument. */
    private void word(Method method, int choices) {
        Class<?>[] types = method.getParameterTypes();
        int skipped = choices > 0 ? 1 : 0;
        List<Class<?>> plain = Arrays.asList(types).subList(skipped, types.length);
        StringBuilder taken = new StringBuilder("(");
        StringBuilder generic = new StringBuilder(plain.contains(Closure.class) ? "<T:" + AN_OBJECT + ">(" : "(");
        for (Class<?> type : plain) {
            taken.append(Type.getDescriptor(type == Closure.class ? Function.class : type));
            generic.append(type == Closure.class ? "Ljava/util/function/Function<TT;*>;" : Type.getDescriptor(type));
        }
        String behind = A_CHOICE.repeat(choices) + ")";
        String descriptor = taken + behind + Type.getDescriptor(method.getReturnType());
        int open = choices == 0 && method.isVarArgs() ? Opcodes.ACC_VARARGS : 0;
        MethodVisitor code = begin(method.getName(), descriptor, generic + behind + GenericText.returned(method), open);
        if (code == null) {
            return;
        }
        for (int i = skipped; i < types.length; i++) {
            code.visitParameter(method.getParameters()[i].getName(), 0);
        }
        for (int i = 0; i < choices; i++) {
            code.visitParameter(choices == 1 ? "choice" : "choice" + (i + 1), 0);
        }
        code.visitCode();
        if (choices > 0) {
            map(code, slots(plain), choices);
        }
        load(code, plain);
        call(
                code,
                Type.getInternalName(method.getDeclaringClass()),
                method.getName(),
                Type.getMethodDescriptor(method));
        end(code, Type.getType(method.getReturnType()));
    }

    private static int slots(List<Class<?>> types) {
        return types.stream().mapToInt(type -> Type.getType(type).getSize()).sum();
    }

    private static void load(MethodVisitor code, List<Class<?>> types) {
        int slot = 0;
        for (Class<?> type : types) {
            code.visitVarInsn(Type.getType(type).getOpcode(Opcodes.ILOAD), slot);
            if (type == Closure.class) {
                call(
                        code,
                        Type.getInternalName(FunctionClosure.class),
                        "of",
                        "(Ljava/util/function/Function;)" + Type.getDescriptor(Closure.class));
            }
            slot += Type.getType(type).getSize();
        }
    }

    /** Loads the choices, which stand in the slots from this on, as one map. */
    private static void map(MethodVisitor code, int from, int count) {
        code.visitIntInsn(Opcodes.BIPUSH, count);
        code.visitTypeInsn(Opcodes.ANEWARRAY, CHOICE);
        for (int i = 0; i < count; i++) {
            code.visitInsn(Opcodes.DUP);
            code.visitIntInsn(Opcodes.BIPUSH, i);
            code.visitVarInsn(Opcodes.ALOAD, from + i);
            code.visitInsn(Opcodes.AASTORE);
        }
        call(code, CHOICE, "map", "([" + A_CHOICE + ")Ljava/util/Map;");
    }

    private void unit(String word, Class<?> type) {
        if (SourceVersion.isKeyword(word)) {
            return;
        }
        MethodVisitor code = begin(word, "(D)" + Type.getDescriptor(type), null, 0);
        if (code != null) {
            code.visitParameter("value", 0);
            code.visitCode();
            code.visitVarInsn(Opcodes.DLOAD, 0);
            code.visitLdcInsn(word);
            call(code, UNITS, "of", "(D" + A_TEXT + ")Lheadrace/units/Quantity;");
            code.visitTypeInsn(Opcodes.CHECKCAST, Type.getInternalName(type));
            end(code, Type.getType(type));
        }
    }

    private void currency(String name) {
        String money = Type.getDescriptor(Money.class);
        MethodVisitor code = begin(name, "(D)" + money, null, 0);
        if (code != null) {
            code.visitParameter("amount", 0);
            code.visitCode();
            code.visitVarInsn(Opcodes.DLOAD, 0);
            code.visitLdcInsn(name);
            call(code, UNITS, "money", "(D" + A_TEXT + ")" + money);
            end(code, Type.getType(Money.class));
        }
    }

    private void prices() {
        for (Class<?> amount : List.of(double.class, Money.class)) {
            String descriptor = "(" + Type.getDescriptor(amount) + ")Lheadrace/units/EnergyPrice;";
            MethodVisitor code = begin("perKWh", descriptor, null, 0);
            if (code != null) {
                code.visitParameter("amount", 0);
                code.visitCode();
                load(code, List.of(amount));
                call(code, UNITS, "perKWh", descriptor);
                end(code, Type.getReturnType(descriptor));
            }
        }
    }

    private void choice(String name) {
        MethodVisitor one = begin(name, "(" + AN_OBJECT + ")" + A_CHOICE, null, 0);
        if (one != null) {
            one.visitParameter("value", 0);
            one.visitCode();
            one.visitLdcInsn(name);
            load(one, List.of(Object.class));
            call(one, CHOICE, "choice", "(" + A_TEXT + AN_OBJECT + ")" + A_CHOICE);
            end(one, Type.getType(Choice.class));
        }
        String several = AN_OBJECT + AN_OBJECT + "[" + AN_OBJECT + ")" + A_CHOICE;
        MethodVisitor more = begin(name, "(" + several, null, Opcodes.ACC_VARARGS);
        if (more != null) {
            List.of("first", "second", "more").forEach(each -> more.visitParameter(each, 0));
            more.visitCode();
            more.visitLdcInsn(name);
            load(more, List.of(Object.class, Object.class, Object[].class));
            call(more, CHOICE, "several", "(" + A_TEXT + several);
            end(more, Type.getType(Choice.class));
        }
    }

    private void anyChoice() {
        String descriptor = "(" + A_TEXT + AN_OBJECT + ")" + A_CHOICE;
        MethodVisitor code = begin("choice", descriptor, null, 0);
        if (code != null) {
            List.of("name", "value").forEach(each -> code.visitParameter(each, 0));
            code.visitCode();
            load(code, List.of(String.class, Object.class));
            call(code, CHOICE, "choice", descriptor);
            end(code, Type.getType(Choice.class));
        }
    }

    /** Begins a method, or answers null where one is called in the same way already. */
    private MethodVisitor begin(String name, String descriptor, String generic, int access) {
        String called = name + descriptor.substring(0, descriptor.indexOf(')'));
        return made.add(called)
                ? out.visitMethod(Opcodes.ACC_PUBLIC | Opcodes.ACC_STATIC | access, name, descriptor, generic, null)
                : null;
    }

    private static void call(MethodVisitor code, String owner, String name, String descriptor) {
        code.visitMethodInsn(Opcodes.INVOKESTATIC, owner, name, descriptor, false);
    }

    private static void end(MethodVisitor code, Type returned) {
        code.visitInsn(returned.getOpcode(Opcodes.IRETURN));
        code.visitMaxs(0, 0);
        code.visitEnd();
    }

    /** Returns the names of the words, choices and units that the class has, for what imports it. */
    public static List<String> names() {
        List<String> names = new ArrayList<>(choiceNames());
        Vocabulary.all().words().forEach(word -> names.add(word.name()));
        Vocabulary.all().unitWords().forEach(each -> names.add(each.unit().word()));
        names.addAll(Money.CURRENCIES);
        names.addAll(List.of("perKWh", "choice"));
        return Collections.unmodifiableList(names);
    }
}
