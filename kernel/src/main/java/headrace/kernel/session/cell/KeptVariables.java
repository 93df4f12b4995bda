package headrace.kernel.session.cell;

import java.util.ArrayList;
import java.util.List;
import org.codehaus.groovy.ast.ClassHelper;
import org.codehaus.groovy.ast.ClassNode;
import org.codehaus.groovy.ast.expr.ArgumentListExpression;
import org.codehaus.groovy.ast.expr.BinaryExpression;
import org.codehaus.groovy.ast.expr.CastExpression;
import org.codehaus.groovy.ast.expr.ClassExpression;
import org.codehaus.groovy.ast.expr.ConstantExpression;
import org.codehaus.groovy.ast.expr.DeclarationExpression;
import org.codehaus.groovy.ast.expr.EmptyExpression;
import org.codehaus.groovy.ast.expr.Expression;
import org.codehaus.groovy.ast.expr.MethodCallExpression;
import org.codehaus.groovy.ast.expr.TupleExpression;
import org.codehaus.groovy.ast.expr.VariableExpression;
import org.codehaus.groovy.ast.stmt.BlockStatement;
import org.codehaus.groovy.ast.stmt.ExpressionStatement;
import org.codehaus.groovy.ast.stmt.Statement;
import org.codehaus.groovy.syntax.Token;
import org.codehaus.groovy.syntax.Types;

/**
 * Turns the declarations at the top of a cell into assignments to the session's variables, so that they outlive the
 * cell: {@code int y = 3.7} becomes {@code y = (int) 3.7}.
 *
 * <p>The session keeps the type too, so that a later cell can assign only what can be made one of it; a declaration
 * without a type, such as {@code def y}, makes the variable take anything again.
 */
final class KeptVariables {
    private KeptVariables() {}

    /** Rewrites the declarations among these statements; those inside of blocks stay local. */
    static void rewrite(BlockStatement top) {
        List<Statement> rewritten = new ArrayList<>();
        for (Statement statement : top.getStatements()) {
            if (statement instanceof ExpressionStatement line
                    && line.getExpression() instanceof DeclarationExpression declaration
                    && declaration.getAnnotations().stream()
                            .allMatch(note -> note.getClassNode().getName().endsWith("Field"))) {
                variables(declaration).forEach(each -> rewritten.add(asStatement(declared(each), line)));
                assignments(declaration).forEach(each -> rewritten.add(asStatement(each, line)));
            } else {
                rewritten.add(statement);
            }
        }
        top.getStatements().clear();
        top.getStatements().addAll(rewritten);
    }

    private static List<VariableExpression> variables(DeclarationExpression declaration) {
        return declaration.isMultipleAssignmentDeclaration()
                ? declaration.getTupleExpression().getExpressions().stream()
                        .map(VariableExpression.class::cast)
                        .toList()
                : List.of(declaration.getVariableExpression());
    }

    /** Tells the session the type of a variable. */
    private static Expression declared(VariableExpression variable) {
        Expression type = variable.isDynamicTyped()
                ? new ConstantExpression(null)
                : new ClassExpression(variable.getOriginType());
        Expression session = new MethodCallExpression(
                new VariableExpression("this"), "getBinding", MethodCallExpression.NO_ARGUMENTS);
        return new MethodCallExpression(
                session, "declare", new ArgumentListExpression(new ConstantExpression(variable.getName()), type));
    }

    private static List<Expression> assignments(DeclarationExpression declaration) {
        if (!declaration.isMultipleAssignmentDeclaration()) {
            VariableExpression variable = declaration.getVariableExpression();
            Expression value = declaration.getRightExpression();
            return List.of(assignment(variable, value instanceof EmptyExpression ? unset(variable) : value));
        }
        List<Expression> all = new ArrayList<>();
        TupleExpression names = new ArgumentListExpression(declaration.getTupleExpression().getExpressions().stream()
                .map(each -> (Expression) untyped((VariableExpression) each))
                .toList());
        names.setSourcePosition(declaration.getTupleExpression());
        all.add(assign(names, declaration.getRightExpression(), declaration));
        for (Expression each : declaration.getTupleExpression().getExpressions()) {
            VariableExpression variable = (VariableExpression) each;
            if (!variable.isDynamicTyped()) {
                all.add(assignment(variable, untyped(variable)));
            }
        }
        return all;
    }

    private static Expression assignment(VariableExpression variable, Expression value) {
        Expression cast = value;
        if (!variable.isDynamicTyped()) {
            cast = new CastExpression(variable.getOriginType(), value);
            cast.setSourcePosition(value);
        }
        return assign(untyped(variable), cast, variable);
    }

    private static Expression assign(Expression left, Expression right, Expression place) {
        Expression assigned = new BinaryExpression(left, Token.newSymbol(Types.EQUAL, -1, -1), right);
        assigned.setSourcePosition(place);
        return assigned;
    }

    private static VariableExpression untyped(VariableExpression variable) {
        VariableExpression bare = new VariableExpression(variable.getName());
        bare.setSourcePosition(variable);
        return bare;
    }

    /** Returns what a variable without a value holds in Groovy: null, or the zero of its primitive type. */
    private static Expression unset(VariableExpression variable) {
        ClassNode type = variable.getOriginType();
        if (ClassHelper.isPrimitiveBoolean(type)) {
            return new ConstantExpression(false);
        }
        boolean zero = !variable.isDynamicTyped() && ClassHelper.isPrimitiveType(type);
        return new ConstantExpression(zero ? Integer.valueOf(0) : null);
    }

    private static Statement asStatement(Expression expression, Statement original) {
        Statement statement = new ExpressionStatement(expression);
        statement.setSourcePosition(original);
        return statement;
    }
}
