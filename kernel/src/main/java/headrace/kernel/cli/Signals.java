package headrace.kernel.cli;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;

/**
 * Hears the signals that the operating system sends to this process.
 *
 * <p>Java has no public way to do that; what most Java runtimes have is called by name, so that one without it still
 * serves, and dies of an interrupt signal as it always did.
 */
final class Signals {
    private Signals() {}

    /** Lets a signal such as {@code INT} do this, and not end the process. */
    static void on(String name, Runnable action) {
        try {
            Class<?> signal = Class.forName("sun.misc.Signal");
            Class<?> handler = Class.forName("sun.misc.SignalHandler");
            InvocationHandler call = (proxy, method, arguments) -> {
                if (method.getName().equals("handle")) {
                    action.run();
                    return null;
                }
                return method.getName().equals("equals") ? proxy == arguments[0] : (Object) name.hashCode();
            };
            Object heard = Proxy.newProxyInstance(handler.getClassLoader(), new Class<?>[] {handler}, call);
            signal.getMethod("handle", signal, handler)
                    .invoke(null, signal.getConstructor(String.class).newInstance(name), heard);
        } catch (ReflectiveOperationException notHere) {
            return; // this runtime has no signals, or keeps this one to itself
        }
    }
}
