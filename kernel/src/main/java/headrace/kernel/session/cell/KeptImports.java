package headrace.kernel.session.cell;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArraySet;
import org.codehaus.groovy.ast.ClassHelper;
import org.codehaus.groovy.ast.ClassNode;
import org.codehaus.groovy.ast.ImportNode;
import org.codehaus.groovy.ast.ModuleNode;

/**
 * The imports of earlier cells, given to each later one that does not import the same name itself. Changed by the cell
 * thread; what it tells may be asked by any.
 */
final class KeptImports {
    /** An imported member of a class. */
    private record Member(String type, String name) {}

    private final Map<String, String> types = new ConcurrentHashMap<>();
    private final Set<String> packages = new CopyOnWriteArraySet<>();
    private final Map<String, Member> members = new LinkedHashMap<>();
    private final Set<String> allMembers = new LinkedHashSet<>();

    /** Returns what a parsed cell imports itself. */
    static KeptImports of(ModuleNode module) {
        KeptImports own = new KeptImports();
        module.getImports().forEach(each -> own.types.put(each.getAlias(), each.getClassName()));
        module.getStarImports().forEach(each -> own.packages.add(each.getPackageName()));
        module.getStaticImports()
                .forEach((alias, each) -> own.members.put(alias, new Member(each.getClassName(), each.getFieldName())));
        module.getStaticStarImports().values().forEach(each -> own.allMembers.add(each.getClassName()));
        return own;
    }

    /** Keeps these imports of a cell that compiled; one that names the same thing as an earlier one replaces it. */
    void add(KeptImports own) {
        types.putAll(own.types);
        packages.addAll(own.packages);
        members.putAll(own.members);
        allMembers.addAll(own.allMembers);
    }

    /** Imports a class under its simple name. */
    void put(String name, String full) {
        types.put(name, full);
    }

    /** Returns the names under which classes are imported, each with the class's full name. */
    Map<String, String> types() {
        return types;
    }

    /** Returns the names under which members of classes are imported, one by one. */
    Set<String> members() {
        return members.keySet();
    }

    /** Returns the imported packages, each with its last dot. */
    Set<String> packages() {
        return packages;
    }

    /**
     * Adds the imports to a parsed cell. Classes are named anew each time, so that one which the user has redefined
     * meanwhile is found in its newest form.
     */
    void addTo(ModuleNode module) {
        types.forEach((alias, type) -> {
            boolean defined = module.getClasses().stream()
                    .anyMatch(each -> each.getNameWithoutPackage().equals(alias));
            if (!defined && module.getImport(alias) == null) {
                module.addImport(alias, ClassHelper.make(type));
            }
        });
        packages.forEach(module::addStarImport);
        Map<String, ImportNode> own = module.getStaticImports();
        members.forEach((alias, member) -> {
            if (!own.containsKey(alias)) {
                ClassNode type = ClassHelper.make(member.type());
                module.addStaticImport(type, member.name(), alias);
            }
        });
        allMembers.forEach(type -> module.addStaticStarImport(type, ClassHelper.make(type)));
    }
}
