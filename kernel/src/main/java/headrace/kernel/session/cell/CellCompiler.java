package headrace.kernel.session.cell;

import groovy.lang.GroovyCodeSource;
import groovy.lang.Script;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.codehaus.groovy.ast.ClassHelper;
import org.codehaus.groovy.ast.ClassNode;
import org.codehaus.groovy.ast.MethodNode;
import org.codehaus.groovy.ast.ModuleNode;
import org.codehaus.groovy.control.CompilerConfiguration;

/**
 * Compiles the cells of one session, each seeing the imports and classes of those before it. Used by one thread at a
 * time.
 */
public final class CellCompiler {
    static {
        Exits.guard();
    }

    private final KeptImports imports = new KeptImports();
    private final Supplier<Set<String>> callable;
    private final Set<String> words;
    private final Set<String> defined = ConcurrentHashMap.newKeySet();
    private final CellLoader loader;
    private ModuleNode parsed;
    private KeptImports own;

    /**
     * Creates a compiler.
     *
     * @param language how every script is compiled, in a notebook or not; this adds what cells need
     * @param words the names that the language imports as words
     * @param callable answers with the names that earlier cells gave to methods and closures
     */
    public CellCompiler(CompilerConfiguration language, Set<String> words, Supplier<Set<String>> callable) {
        this.words = words;
        this.callable = callable;
        language.setScriptBaseClass(CellScript.class.getName());
        language.setPluginFactory(CellParser.with(this::rewrite));
        language.setParameters(true);
        language.setBytecodePostprocessor((name, bytecode) -> Weaver.weave(bytecode));
        loader = new CellLoader(CellCompiler.class.getClassLoader(), language);
    }

    /**
     * Compiles a cell.
     *
     * @param name the name of its class; its file is called the same, with {@code .groovy}
     * @throws org.codehaus.groovy.control.CompilationFailedException if it does not compile
     */
    public Compiled compile(String name, String code) {
        Class<?> type = loader.parseClass(new GroovyCodeSource(code, name + ".groovy", "/headrace/cell"), false);
        imports.add(own);
        List<String> classes = parsed.getClasses().stream()
                .map(ClassNode::getName)
                .filter(each -> !each.equals(name))
                .toList();
        classes.forEach(imports::hide);
        defined.addAll(classes);
        return new Compiled(type.asSubclass(Script.class), methods(), classes);
    }

    /** Lets the class of a cell that has ended be collected. */
    public void forget(Compiled compiled) {
        loader.forget(compiled.script());
    }

    /** Returns the loader of all the classes that cells define. */
    public ClassLoader loader() {
        return loader;
    }

    /** Returns the classes that cells define or import, by the name under which they are known. Any thread may ask. */
    public Map<String, String> knownTypes() {
        Map<String, String> known = new TreeMap<>(imports.types());
        defined.forEach(name -> known.put(name, name));
        return known;
    }

    /** Returns the imported packages, each with its last dot. Any thread may ask. */
    public Set<String> openPackages() {
        return Set.copyOf(imports.packages());
    }

    private List<String> methods() {
        Set<String> names = new LinkedHashSet<>();
        parsed.getMethods().stream().map(MethodNode::getName).forEach(names::add);
        return List.copyOf(names);
    }

    private Set<String> imported() {
        Set<String> names = new HashSet<>(words);
        names.addAll(imports.members());
        return names;
    }

    private void rewrite(ModuleNode module) {
        parsed = module;
        own = KeptImports.of(module);
        KeptVariables.rewrite(module.getStatementBlock());
        OwnNames.lead(module, callable.get(), imported());
        QuietAssignments.rewrite(module.getStatementBlock());
        imports.addTo(module);
        if (!module.getStaticImports().containsKey("sleep")) {
            module.addStaticImport(ClassHelper.make(Waiting.class), "pause", "sleep");
        }
    }
}
