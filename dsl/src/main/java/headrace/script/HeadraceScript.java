package headrace.script;

import groovy.lang.MissingPropertyException;
import groovy.lang.Script;
import java.lang.reflect.Method;
import org.codehaus.groovy.runtime.InvokerHelper;

/** The base of every script and notebook cell. The words themselves come by import. */
public abstract class HeadraceScript extends Script {
    /** Lets a word without arguments stand without parentheses, as a noun does. */
    public Object propertyMissing(String name) {
        for (Vocabulary.Entry word : Vocabulary.all().word(name).stream().toList()) {
            for (Method method : word.methods()) {
                if (method.getParameterCount() == 0) {
                    return InvokerHelper.invokeStaticMethod(method.getDeclaringClass(), name, new Object[0]);
                }
            }
        }
        throw new MissingPropertyException(name, getClass());
    }
}
