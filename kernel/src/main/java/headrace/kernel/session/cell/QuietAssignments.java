package headrace.kernel.session.cell;

import java.util.List;
import org.codehaus.groovy.ast.expr.BinaryExpression;
import org.codehaus.groovy.ast.expr.ConstantExpression;
import org.codehaus.groovy.ast.expr.Expression;
import org.codehaus.groovy.ast.expr.PostfixExpression;
import org.codehaus.groovy.ast.expr.PrefixExpression;
import org.codehaus.groovy.ast.stmt.BlockStatement;
import org.codehaus.groovy.ast.stmt.BreakStatement;
import org.codehaus.groovy.ast.stmt.ExpressionStatement;
import org.codehaus.groovy.ast.stmt.IfStatement;
import org.codehaus.groovy.ast.stmt.Statement;
import org.codehaus.groovy.ast.stmt.SwitchStatement;
import org.codehaus.groovy.ast.stmt.TryCatchStatement;
import org.codehaus.groovy.syntax.Types;

/**
 * Makes a cell that ends with an assignment end without a value: who writes {@code flow = 52.m3ph} has seen it already;
 * who writes {@code flow} wants to see it.
 */
final class QuietAssignments {
    private QuietAssignments() {}

    /** Adds an empty result wherever these statements end with an assignment, and where there is none at all. */
    static void rewrite(BlockStatement block) {
        List<Statement> statements = block.getStatements();
        if (statements.isEmpty()) {
            statements.add(nothing());
            return;
        }
        int end = statements.size();
        if (end > 1 && statements.get(end - 1) instanceof BreakStatement) {
            end--;
        }
        Statement last = statements.get(end - 1);
        if (last instanceof ExpressionStatement line && assigns(line.getExpression())) {
            statements.add(end, nothing());
        } else {
            inside(last);
        }
    }

    private static void inside(Statement statement) {
        if (statement instanceof BlockStatement block) {
            if (!block.isEmpty()) {
                rewrite(block);
            }
        } else if (statement instanceof IfStatement branch) {
            branch.setIfBlock(quiet(branch.getIfBlock()));
            branch.setElseBlock(quiet(branch.getElseBlock()));
        } else if (statement instanceof TryCatchStatement attempt) {
            inside(attempt.getTryStatement());
            attempt.getCatchStatements().forEach(each -> inside(each.getCode()));
        } else if (statement instanceof SwitchStatement choice) {
            choice.getCaseStatements().forEach(each -> inside(each.getCode()));
            inside(choice.getDefaultStatement());
        }
    }

    private static Statement quiet(Statement branch) {
        if (branch instanceof ExpressionStatement line && assigns(line.getExpression())) {
            BlockStatement block = new BlockStatement();
            block.setSourcePosition(branch);
            block.addStatement(branch);
            block.addStatement(nothing());
            return block;
        }
        inside(branch);
        return branch;
    }

    private static boolean assigns(Expression expression) {
        return expression instanceof BinaryExpression pair
                        && Types.isAssignment(pair.getOperation().getType())
                || expression instanceof PostfixExpression
                || expression instanceof PrefixExpression;
    }

    private static Statement nothing() {
        return new ExpressionStatement(new ConstantExpression(null));
    }
}
