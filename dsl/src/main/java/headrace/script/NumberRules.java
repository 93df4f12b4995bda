package headrace.script;

import java.math.BigDecimal;
import org.codehaus.groovy.ast.ClassCodeExpressionTransformer;
import org.codehaus.groovy.ast.ClassHelper;
import org.codehaus.groovy.ast.ClassNode;
import org.codehaus.groovy.ast.expr.BinaryExpression;
import org.codehaus.groovy.ast.expr.ClosureExpression;
import org.codehaus.groovy.ast.expr.ConstantExpression;
import org.codehaus.groovy.ast.expr.Expression;
import org.codehaus.groovy.ast.expr.MethodCallExpression;
import org.codehaus.groovy.ast.expr.PropertyExpression;
import org.codehaus.groovy.ast.expr.StaticMethodCallExpression;
import org.codehaus.groovy.ast.expr.UnaryMinusExpression;
import org.codehaus.groovy.classgen.GeneratorContext;
import org.codehaus.groovy.control.CompilePhase;
import org.codehaus.groovy.control.SourceUnit;
import org.codehaus.groovy.control.customizers.CompilationCustomizer;
import org.codehaus.groovy.syntax.Types;

/**
 * The rules by which numbers are read in a script, where they differ from plain Groovy.
 *
 * <ul>
 *   <li>A decimal literal is a double, and so is every quotient of two numbers: {@code 1 / 3} is 0.333… and {@code 10 /
 *       4} is 2.5. Nothing else about whole numbers changes.
 *   <li>A minus before a number with a unit belongs to the number: {@code -12.degC} is twelve degrees below zero, not
 *       the negative of 12 °C. In {@code -(12.degC)} the minus stays where it is.
 * </ul>
 */
final class NumberRules extends CompilationCustomizer {
    NumberRules() {
        super(CompilePhase.CONVERSION);
    }

    @Override
    public void call(SourceUnit source, GeneratorContext context, ClassNode type) {
        new Rewriting(source).visitClass(type);
    }

    private static final class Rewriting extends ClassCodeExpressionTransformer {
        /** Where the parser notes that an expression stood in parentheses. */
        private static final String IN_PARENTHESES = "_INSIDE_PARENTHESES_LEVEL";

        private static final ClassNode OPERANDS = ClassHelper.make(Operands.class);

        private final SourceUnit source;

        Rewriting(SourceUnit source) {
            this.source = source;
        }

        @Override
        protected SourceUnit getSourceUnit() {
            return source;
        }

        @Override
        public Expression transform(Expression expression) {
            if (expression instanceof ConstantExpression constant && constant.getValue() instanceof BigDecimal value) {
                return literal(value.doubleValue(), constant);
            }
            if (expression instanceof ClosureExpression closure) {
                closure.visit(this);
                return closure;
            }
            Expression read = expression;
            if (expression instanceof UnaryMinusExpression minus && movesInside(minus.getExpression())) {
                read = minus.getExpression();
            }
            Expression transformed = super.transform(read);
            return transformed instanceof BinaryExpression binary ? calculated(binary) : transformed;
        }

        private static Expression calculated(BinaryExpression binary) {
            Expression right = binary.getRightExpression();
            switch (binary.getOperation().getType()) {
                case Types.DIVIDE, Types.DIVIDE_EQUAL -> binary.setRightExpression(call("divisor", right));
                case Types.MULTIPLY_EQUAL -> binary.setRightExpression(call("factor", right));
                case Types.MULTIPLY -> {
                    binary.setRightExpression(call("factor", right));
                    return call("product", binary);
                }
                default -> {}
            }
            return binary;
        }

        /** Moves a minus to the number at the front of a chain such as {@code 12.degC.toFahrenheit()}, if it is one. */
        private static boolean movesInside(Expression chain) {
            if (chain.getNodeMetaData(IN_PARENTHESES) != null) {
                return false;
            }
            if (chain instanceof MethodCallExpression call) {
                return movesInside(call.getObjectExpression());
            }
            if (!(chain instanceof PropertyExpression property)) {
                return false;
            }
            Expression owner = property.getObjectExpression();
            if (owner instanceof ConstantExpression constant && constant.getValue() instanceof Number number) {
                property.setObjectExpression(literal(-number.doubleValue(), owner));
                return true;
            }
            return movesInside(owner);
        }

        private static Expression call(String name, Expression operand) {
            StaticMethodCallExpression call = new StaticMethodCallExpression(OPERANDS, name, operand);
            call.setSourcePosition(operand);
            return call;
        }

        private static Expression literal(double value, Expression replaced) {
            ConstantExpression literal = new ConstantExpression(value);
            literal.setSourcePosition(replaced);
            return literal;
        }
    }
}
