package headrace.script;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.codehaus.groovy.ast.ClassHelper;
import org.codehaus.groovy.ast.ClassNode;
import org.codehaus.groovy.ast.MethodNode;
import org.codehaus.groovy.classgen.GeneratorContext;
import org.codehaus.groovy.control.CompilePhase;
import org.codehaus.groovy.control.SourceUnit;
import org.codehaus.groovy.control.customizers.CompilationCustomizer;

/**
 * Lets a script call every word by its bare name, and nothing else of the classes that hold them.
 *
 * <p>A plain import of all static members would bring the private helpers of these classes along: a variable of a
 * script that holds a block and is called like such a helper would then call the helper.
 */
final class WordImports extends CompilationCustomizer {
    private static final Map<String, ClassNode> WORDS = words();

    WordImports() {
        super(CompilePhase.CONVERSION);
    }

    private static Map<String, ClassNode> words() {
        Map<String, ClassNode> all = new LinkedHashMap<>();
        for (Class<?> words : Vocabulary.all().classes()) {
            ClassNode node = ClassHelper.makeWithoutCaching(words);
            for (MethodNode method : List.copyOf(node.getMethods())) {
                if (!method.isPublic()) {
                    node.removeMethod(method);
                }
            }
            all.put(words.getName(), node);
        }
        return all;
    }

    @Override
    public void call(SourceUnit source, GeneratorContext context, ClassNode type) {
        WORDS.forEach(source.getAST()::addStaticStarImport);
    }
}
