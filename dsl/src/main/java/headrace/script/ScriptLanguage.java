package headrace.script;

import org.codehaus.groovy.control.CompilerConfiguration;
import org.codehaus.groovy.control.customizers.ImportCustomizer;

/**
 * How a script is compiled, the same at every door: notebook, terminal, headless run and tests.
 *
 * <p>Every registered word can be called by its bare name, every quantity class is known by its own, decimals and
 * quotients are doubles, and a minus before a number with a unit belongs to the number.
 */
public final class ScriptLanguage {
    /** The package in which the classes of notebook cells live. */
    public static final String CELLS = "cells";

    /**
     * The version of the script language. It rises when a script of before would mean something else; what differs is
     * then said in {@code LanguageChanges}.
     */
    public static final int VERSION = 1;

    private ScriptLanguage() {}

    /** Returns a new configuration, which the caller may add to. */
    public static CompilerConfiguration configuration() {
        CompilerConfiguration configuration = new CompilerConfiguration();
        configuration.setScriptBaseClass(HeadraceScript.class.getName());
        configuration.setSourceEncoding("UTF-8");
        ImportCustomizer imports = new ImportCustomizer();
        imports.addStarImports("headrace.units");
        imports.addImports("headrace.problem.Refusal");
        configuration.addCompilationCustomizers(imports, new WordImports(), new NumberRules());
        return configuration;
    }
}
