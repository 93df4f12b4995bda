package headrace.kernel.session.java;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.Map;
import java.util.concurrent.locks.ReentrantLock;
import jdk.jshell.spi.ExecutionControl;
import jdk.jshell.spi.ExecutionControlProvider;
import jdk.jshell.spi.ExecutionEnv;
import jdk.jshell.spi.SPIResolutionException;

/**
 * Runs what the shell has compiled on the thread that asked for it, and keeps the very object that it ends with.
 *
 * <p>The shell is not for several threads at once. The lock is open while the user's code runs, so that questions about
 * the text of a cell can be answered meanwhile.
 */
final class LiveControl implements ExecutionControl, ExecutionControlProvider {
    private final LiveClasses classes;
    private final ReentrantLock shell;
    private Object value;
    private Throwable thrown;

    LiveControl(LiveClasses classes, ReentrantLock shell) {
        this.classes = classes;
        this.shell = shell;
    }

    /** Forgets how the last piece of code ended. */
    void begin() {
        value = null;
        thrown = null;
    }

    /** Returns what the last piece of code ended with, or null. */
    Object value() {
        return value;
    }

    /** Returns what the last piece of code threw, or null. */
    Throwable thrown() {
        return thrown;
    }

    @Override
    public String name() {
        return "live";
    }

    @Override
    public ExecutionControl generate(ExecutionEnv environment, Map<String, String> parameters) {
        return this;
    }

    @Override
    public void load(ClassBytecodes[] compiled) {
        classes.add(compiled);
    }

    @Override
    public void redefine(ClassBytecodes[] compiled) throws NotImplementedException {
        if (!classes.redefine(compiled)) {
            throw new NotImplementedException("The members of a class have changed");
        }
    }

    @Override
    public String invoke(String className, String methodName) throws RunException, InternalException {
        Method code;
        try {
            code = Class.forName(className, false, classes).getDeclaredMethod(methodName);
            code.setAccessible(true);
        } catch (ReflectiveOperationException | LinkageError e) {
            throw new InternalException(String.valueOf(e));
        }
        int held = shell.getHoldCount();
        for (int i = 0; i < held; i++) {
            shell.unlock();
        }
        try {
            value = code.invoke(null);
            return "";
        } catch (InvocationTargetException e) {
            throw told(e.getCause());
        } catch (IllegalAccessException | LinkageError | StackOverflowError | OutOfMemoryError e) {
            throw told(e);
        } finally {
            for (int i = 0; i < held; i++) {
                shell.lock();
            }
        }
    }

    private RunException told(Throwable failure) {
        Throwable cause = failure;
        if (cause instanceof ExceptionInInitializerError && cause.getCause() != null) {
            cause = cause.getCause();
        }
        thrown = cause;
        return cause instanceof SPIResolutionException unresolved
                ? new ResolutionException(unresolved.id(), unresolved.getStackTrace())
                : new UserException("", cause.getClass().getName(), new StackTraceElement[0]);
    }

    /** Nobody looks at the text of a variable: the object itself is at hand. */
    @Override
    public String varValue(String className, String name) {
        return "";
    }

    @Override
    public void addToClasspath(String path) {}

    /** A cell is stopped by what is woven into its classes. */
    @Override
    public void stop() {}

    @Override
    public Object extensionCommand(String command, Object argument) throws NotImplementedException {
        throw new NotImplementedException(command);
    }

    @Override
    public void close() {}
}
