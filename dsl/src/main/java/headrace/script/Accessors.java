package headrace.script;

import groovy.lang.MetaMethod;
import groovy.lang.MissingPropertyException;
import org.codehaus.groovy.runtime.InvokerHelper;

/** Lets a script read what a value of ours tells without parentheses: {@code now.flow} for {@code now.flow()}. */
public final class Accessors {
    private Accessors() {}

    /** Asks a value of ours for what its method of that name tells; nothing changes for other values. */
    public static Object propertyMissing(Object self, String name) {
        MetaMethod method = InvokerHelper.getMetaClass(self).pickMethod(name, new Class<?>[0]);
        if (method == null || !method.getDeclaringClass().getName().startsWith("headrace.")) {
            throw new MissingPropertyException(name, self.getClass());
        }
        return method.doMethodInvoke(self, new Object[0]);
    }
}
