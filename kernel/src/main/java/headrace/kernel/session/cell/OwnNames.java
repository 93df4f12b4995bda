package headrace.kernel.session.cell;

import java.util.HashSet;
import java.util.Set;
import org.codehaus.groovy.ast.CodeVisitorSupport;
import org.codehaus.groovy.ast.ModuleNode;
import org.codehaus.groovy.ast.expr.BinaryExpression;
import org.codehaus.groovy.ast.expr.ClosureExpression;
import org.codehaus.groovy.ast.expr.MethodCallExpression;
import org.codehaus.groovy.ast.expr.VariableExpression;
import org.codehaus.groovy.ast.stmt.ExpressionStatement;
import org.codehaus.groovy.syntax.Types;

/**
 * Lets a method or closure of the user's be called although a word has the same name: who defines {@code limit} wants
 * to call that. Groovy by itself would prefer the imported word wherever the cell does not define the method itself.
 */
final class OwnNames extends CodeVisitorSupport {
    private final Set<String> own;

    private OwnNames(Set<String> own) {
        this.own = own;
    }

    /**
     * Leads the calls of a parsed cell.
     *
     * @param known the names that earlier cells gave to methods and closures
     * @param imported the names that are imported as static members
     */
    static void lead(ModuleNode module, Set<String> known, Set<String> imported) {
        Set<String> own = new HashSet<>(known);
        module.getStatementBlock().getStatements().forEach(statement -> {
            if (statement instanceof ExpressionStatement line
                    && line.getExpression() instanceof BinaryExpression pair
                    && pair.getOperation().getType() == Types.EQUAL
                    && pair.getLeftExpression() instanceof VariableExpression variable
                    && pair.getRightExpression() instanceof ClosureExpression) {
                own.add(variable.getName());
            }
        });
        own.retainAll(imported);
        if (!own.isEmpty()) {
            OwnNames names = new OwnNames(own);
            module.getStatementBlock().visit(names);
            module.getMethods().forEach(method -> method.getCode().visit(names));
        }
    }

    @Override
    public void visitMethodCallExpression(MethodCallExpression call) {
        super.visitMethodCallExpression(call);
        if (call.isImplicitThis() && own.contains(call.getMethodAsString())) {
            VariableExpression script = new VariableExpression("this");
            script.setSourcePosition(call);
            call.setObjectExpression(script);
            call.setImplicitThis(false);
        }
    }
}
