package headrace.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Keeps the typed methods for Java and the table for scripts together. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ProductsTest {
    @Test
    void each_typed_product_and_quotient_of_two_kinds_is_what_the_table_says() throws ReflectiveOperationException {
        int found = 0;
        for (Kind<?> kind : Quantities.KINDS) {
            for (Method method : kind.type().getDeclaredMethods()) {
                boolean operation =
                        method.getName().equals("times") || method.getName().equals("over");
                if (operation && !method.isBridge() && Quantity.class.isAssignableFrom(method.getReturnType())) {
                    agrees(kind, method);
                    found++;
                }
            }
        }
        assertTrue(found > 25, found + " methods found");
    }

    private static void agrees(Kind<?> kind, Method method) throws ReflectiveOperationException {
        Quantity<?> one = kind.make().apply(6);
        Kind<?> otherKind = Quantities.KINDS.stream()
                .filter(each -> each.type() == method.getParameterTypes()[0])
                .findFirst()
                .orElseThrow();
        Quantity<?> other = otherKind.make().apply(3);
        boolean times = method.getName().equals("times");
        Quantity<?> typed = (Quantity<?>) method.invoke(one, other);
        assertEquals(times ? 18 : 2, typed.si(), method.toString());
        assertEquals(times ? Arithmetic.times(one, other) : Arithmetic.over(one, other), typed, method.toString());
    }

    @Test
    void no_two_kinds_make_two_things() {
        List<String> pairs = new ArrayList<>();
        for (Products.Product each : Products.ALL) {
            pairs.add(each.one().name() + " · " + each.other().name());
            if (each.one() != each.other()) {
                pairs.add(each.other().name() + " · " + each.one().name());
            }
        }
        assertEquals(pairs.stream().distinct().toList(), pairs);
    }
}
