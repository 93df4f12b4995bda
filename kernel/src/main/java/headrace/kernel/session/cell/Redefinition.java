package headrace.kernel.session.cell;

import groovy.lang.Closure;
import groovy.lang.ExpandoMetaClass;
import groovy.lang.GroovyObject;
import groovy.lang.MetaMethod;
import java.lang.reflect.Modifier;
import org.codehaus.groovy.reflection.CachedClass;
import org.codehaus.groovy.reflection.ReflectionCache;

/**
 * Leads an earlier cell's calls of a method that a later cell has defined anew to the newest one.
 *
 * <p>Otherwise the other methods of the earlier cell would go on calling the old one, since a class prefers its own.
 */
final class Redefinition extends MetaMethod {
    private final String name;
    private final CachedClass cell;
    private final Variables newest;

    private Redefinition(MetaMethod old, CachedClass cell, Variables newest) {
        super(old.getNativeParameterTypes());
        this.name = old.getName();
        this.cell = cell;
        this.newest = newest;
    }

    /**
     * Leads the calls.
     *
     * @param old the earlier cell's method
     * @param newest answers for the newest method at each call
     */
    static void lead(Closure<?> old, String name, Variables newest) {
        GroovyObject script = (GroovyObject) old.getOwner();
        CachedClass cell = ReflectionCache.getCachedClass(script.getClass());
        ExpandoMetaClass changed = new ExpandoMetaClass(script.getClass(), false, true);
        script.getMetaClass().getMethods().stream()
                .filter(each -> each.getName().equals(name))
                .forEach(each -> changed.registerInstanceMethod(new Redefinition(each, cell, newest)));
        if (script.getMetaClass() instanceof ExpandoMetaClass before) {
            before.getExpandoMethods().forEach(changed::registerInstanceMethod);
        }
        changed.initialize();
        script.setMetaClass(changed);
    }

    @Override
    public int getModifiers() {
        return Modifier.PUBLIC;
    }

    @Override
    public String getName() {
        return name;
    }

    @Override
    public Class<?> getReturnType() {
        return Object.class;
    }

    @Override
    public CachedClass getDeclaringClass() {
        return cell;
    }

    @Override
    public Object invoke(Object object, Object[] arguments) {
        return newest.method(name).call(arguments);
    }
}
