package headrace.kernel.session.cell;

import groovy.lang.GroovyCodeSource;
import groovy.lang.Script;
import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Tokens;
import headrace.script.ScriptLanguage;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.IntStream;
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
        Weaver.weaveByDefault();
    }

    /**
     * Where the classes of cells live, so that Java cells can name them. A class that is defined anew gets a package of
     * its own, behind which stands a number: what is compiled against the old one goes on with it.
     */
    private static final String PACKAGE = ScriptLanguage.CELLS;

    private static final Set<String> DEFINING = Set.of("class", "interface", "enum", "record", "trait");

    private static final String SCRIPTS = PACKAGE + "\\d*\\.(Cell|Aside|Warm)(_\\d+)?(\\$.*)?";

    private final Map<String, byte[]> bytecode = new ConcurrentHashMap<>();
    private final KeptImports imports = new KeptImports();
    private final Supplier<Set<String>> callable;
    private final Set<String> words;
    private final Map<String, String> defined = new ConcurrentHashMap<>();
    private final CellLoader loader;
    private ModuleNode parsed;
    private String ownPackage = PACKAGE;
    private int redefinitions = 1;
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
        language.setBytecodePostprocessor(this::woven);
        loader = new CellLoader(CellCompiler.class.getClassLoader(), language);
    }

    /**
     * Compiles a cell.
     *
     * @param name the name of its class; its file is called the same, with {@code .groovy}
     * @throws org.codehaus.groovy.control.CompilationFailedException if it does not compile
     */
    public Compiled compile(String name, String code) {
        ownPackage = packageFor(code);
        Class<?> type = loader.parseClass(new GroovyCodeSource(code, name + ".groovy", "/headrace/cell"), false);
        imports.add(own);
        List<String> classes = parsed.getClasses().stream()
                .map(ClassNode::getName)
                .filter(each -> !each.equals(type.getName()))
                .toList();
        classes.stream().filter(each -> !each.contains("$")).forEach(each -> know(simple(each), each));
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
        known.putAll(defined);
        return known;
    }

    /** Returns the imported packages, each with its last dot. Any thread may ask. */
    public Set<String> openPackages() {
        return Set.copyOf(imports.packages());
    }

    /** Returns the classes that Groovy cells define, by their full names. Any thread may ask. */
    public Map<String, byte[]> bytecode() {
        return bytecode;
    }

    /** Finds the classes of Java cells there from now on. */
    public void alsoIn(ClassLoader java) {
        loader.alsoIn(java);
    }

    /** Lets a class that a Java cell defined be known by its simple name. */
    public void know(String name, String full) {
        defined.put(name, full);
        imports.put(name, full);
    }

    /** Returns the newest classes that cells define, full names by simple ones. Any thread may ask. */
    public Map<String, String> defined() {
        return Map.copyOf(defined);
    }

    private byte[] woven(String name, byte[] compiled) {
        byte[] woven = Weaver.weave(compiled);
        if (!name.matches(SCRIPTS)) {
            bytecode.put(name, woven);
        }
        return woven;
    }

    /** Returns the package for a cell: a new one if it defines a class that there is already. */
    private String packageFor(String code) {
        List<Token> tokens = Tokens.of(code);
        boolean anew = IntStream.range(1, tokens.size())
                .anyMatch(i -> DEFINING.contains(tokens.get(i - 1).text())
                        && defined.containsKey(tokens.get(i).text()));
        return anew ? PACKAGE + ++redefinitions : PACKAGE;
    }

    /** Puts what a cell defines into a package of its own, unless it says itself where that belongs. */
    private void putIntoPackage(ModuleNode module) {
        if (module.getPackageName() == null) {
            module.setPackageName(ownPackage + ".");
            rename(module.getScriptClassDummy()); // first: the module notes the name of its script once
            module.getClasses().forEach(this::rename);
        }
    }

    private void rename(ClassNode type) {
        if (!type.getName().startsWith(ownPackage + ".")) {
            type.setName(ownPackage + "." + type.getName());
        }
    }

    private static String simple(String full) {
        return full.substring(full.lastIndexOf('.') + 1);
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
        putIntoPackage(module);
        imports.addTo(module);
        if (!module.getStaticImports().containsKey("sleep")) {
            module.addStaticImport(ClassHelper.make(Waiting.class), "pause", "sleep");
        }
    }
}
