package headrace.kernel.session.cell;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.apache.groovy.parser.antlr4.Antlr4ParserPlugin;
import org.codehaus.groovy.ast.MethodNode;
import org.codehaus.groovy.ast.ModuleNode;
import org.codehaus.groovy.control.ParserPlugin;
import org.codehaus.groovy.control.ParserPluginFactory;
import org.codehaus.groovy.control.SourceUnit;
import org.codehaus.groovy.syntax.Reduction;
import org.codehaus.groovy.syntax.SyntaxException;

/** Parses a cell and lets it be rewritten before Groovy makes a class of it. */
final class CellParser extends Antlr4ParserPlugin {
    private final Consumer<ModuleNode> rewriting;

    private CellParser(Consumer<ModuleNode> rewriting) {
        this.rewriting = rewriting;
    }

    /** Returns a factory of parsers that hand each parsed cell to the rewriting. */
    static ParserPluginFactory with(Consumer<ModuleNode> rewriting) {
        return new ParserPluginFactory() {
            @Override
            public ParserPlugin createParserPlugin() {
                return new CellParser(rewriting);
            }
        };
    }

    @Override
    public ModuleNode buildAST(SourceUnit source, ClassLoader loader, Reduction cst) {
        ModuleNode module = super.buildAST(source, loader, cst);
        refuseEntryPoints(module, source);
        rewriting.accept(module);
        return module;
    }

    /** A cell is a script: Groovy makes these two methods for it, and one of the user's would clash. */
    private static void refuseEntryPoints(ModuleNode module, SourceUnit source) {
        for (MethodNode method : List.copyOf(module.getMethods())) {
            String called = method.getName()
                    + Arrays.stream(method.getParameters())
                            .map(each -> each.getType().getNameWithoutPackage())
                            .collect(Collectors.joining(", ", "(", ")"));
            if (called.equals("run()") || called.equals("main(String[])")) {
                source.addErrorAndContinue(new SyntaxException(
                        "A cell cannot have a method " + called + ", since it is itself one: give it another name",
                        method.getLineNumber(),
                        method.getColumnNumber()));
            }
        }
    }
}
