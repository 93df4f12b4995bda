package headrace.kernel.session.cell;

import groovyjarjarasm.asm.ClassReader;
import groovyjarjarasm.asm.ClassVisitor;
import groovyjarjarasm.asm.ClassWriter;
import groovyjarjarasm.asm.Label;
import groovyjarjarasm.asm.MethodVisitor;
import groovyjarjarasm.asm.Opcodes;
import groovyjarjarasm.asm.Type;
import java.lang.reflect.Field;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.codehaus.groovy.control.BytecodeProcessor;
import org.codehaus.groovy.control.CompilerConfiguration;

/**
 * Weaves into every class of a cell a check whether to stop, at each method entry and before each jump back, and turns
 * calls that end the process into an error.
 *
 * <p>The woven calls take nothing from the stack and leave nothing on it that was not there, so that frames stay valid.
 */
public final class Weaver extends ClassVisitor {
    private static final int API = Opcodes.ASM9;
    private static final String STOP = Type.getInternalName(Stop.class);
    private static final String EXITS = Type.getInternalName(Exits.class);

    private Weaver(ClassVisitor next) {
        super(API, next);
    }

    /** Returns the class with the checks woven in. */
    public static byte[] weave(byte[] bytecode) {
        ClassReader reader = new ClassReader(bytecode);
        ClassWriter writer = new ClassWriter(reader, 0);
        reader.accept(new Weaver(writer), 0);
        return writer.toByteArray();
    }

    /**
     * Weaves the checks also into what Groovy compiles while a cell runs, by {@code Eval} or a {@code GroovyShell} of
     * the cell's own. Only one that brings a configuration of its own goes without.
     */
    static void weaveByDefault() {
        try {
            Field processor = CompilerConfiguration.class.getDeclaredField("bytecodePostprocessor");
            processor.setAccessible(true); // the configuration that all share refuses to be changed otherwise
            BytecodeProcessor weaving = (name, bytecode) -> weave(bytecode);
            processor.set(CompilerConfiguration.DEFAULT, weaving);
        } catch (NoSuchFieldException | IllegalAccessException e) {
            throw new IllegalStateException("This version of Groovy keeps its configuration otherwise", e);
        }
    }

    @Override
    public MethodVisitor visitMethod(
            int access, String name, String descriptor, String signature, String[] exceptions) {
        return new Body(super.visitMethod(access, name, descriptor, signature, exceptions));
    }

    private static final class Body extends MethodVisitor {
        private final Set<Label> passed = new HashSet<>();

        Body(MethodVisitor next) {
            super(API, next);
        }

        @Override
        public void visitCode() {
            super.visitCode();
            check();
        }

        @Override
        public void visitLabel(Label label) {
            passed.add(label);
            super.visitLabel(label);
        }

        @Override
        public void visitJumpInsn(int opcode, Label label) {
            checkBefore(label);
            super.visitJumpInsn(opcode, label);
        }

        @Override
        public void visitTableSwitchInsn(int least, int greatest, Label other, Label... labels) {
            checkBefore(other);
            checkBefore(labels);
            super.visitTableSwitchInsn(least, greatest, other, labels);
        }

        @Override
        public void visitLookupSwitchInsn(Label other, int[] keys, Label[] labels) {
            checkBefore(other);
            checkBefore(labels);
            super.visitLookupSwitchInsn(other, keys, labels);
        }

        @Override
        public void visitMethodInsn(int opcode, String owner, String name, String descriptor, boolean isInterface) {
            boolean ends = name.equals("exit") || name.equals("halt");
            if (ends && owner.equals("java/lang/System")) {
                super.visitMethodInsn(Opcodes.INVOKESTATIC, EXITS, "exit", "(I)V", false);
            } else if (ends && owner.equals("java/lang/Runtime")) {
                super.visitMethodInsn(Opcodes.INVOKESTATIC, EXITS, "exit", "(Ljava/lang/Runtime;I)V", false);
            } else {
                super.visitMethodInsn(opcode, owner, name, descriptor, isInterface);
            }
        }

        private void checkBefore(Label... targets) {
            if (Arrays.stream(targets).anyMatch(passed::contains)) {
                check();
            }
        }

        private void check() {
            super.visitMethodInsn(Opcodes.INVOKESTATIC, STOP, "check", "()V", false);
        }
    }
}
