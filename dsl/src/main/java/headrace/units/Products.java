package headrace.units;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The products of two kinds that are a kind again. Each stands once: the factors may change places, and the product
 * divided by one factor is the other.
 *
 * <p>All are coherent: the SI value of the product is the product of the SI values.
 */
final class Products {
    /**
     * One product.
     *
     * @param one the one factor
     * @param other the other factor
     * @param product what they make
     */
    record Product(Kind<?> one, Kind<?> other, Kind<?> product) {}

    static final List<Product> ALL = List.of(
            new Product(Flow.KIND, Pressure.KIND, Power.KIND),
            new Product(Flow.KIND, Time.KIND, Volume.KIND),
            new Product(Flow.KIND, Density.KIND, MassFlow.KIND),
            new Product(Area.KIND, Velocity.KIND, Flow.KIND),
            new Product(MassFlow.KIND, Time.KIND, Mass.KIND),
            new Product(Density.KIND, Volume.KIND, Mass.KIND),
            new Product(Power.KIND, Time.KIND, Energy.KIND),
            new Product(Torque.KIND, Speed.KIND, Power.KIND),
            new Product(Length.KIND, Length.KIND, Area.KIND),
            new Product(Area.KIND, Length.KIND, Volume.KIND),
            new Product(Velocity.KIND, Time.KIND, Length.KIND),
            new Product(KinematicViscosity.KIND, Density.KIND, Viscosity.KIND));

    private Products() {}

    /** Returns what two kinds make, if they make one. */
    static Optional<Kind<?>> product(Kind<?> one, Kind<?> other) {
        return ALL.stream()
                .filter(each ->
                        each.one() == one && each.other() == other || each.one() == other && each.other() == one)
                .<Kind<?>>map(Product::product)
                .findFirst();
    }

    /** Returns what the quotient of two kinds is, if it is one. */
    static Optional<Kind<?>> quotient(Kind<?> whole, Kind<?> part) {
        return divisions(whole)
                .filter(each -> each.one() == part)
                .<Kind<?>>map(Product::other)
                .findFirst();
    }

    /** Returns what a kind can be multiplied by. */
    static List<Kind<?>> factors(Kind<?> kind) {
        return ALL.stream()
                .filter(each -> each.one() == kind || each.other() == kind)
                .<Kind<?>>map(each -> each.one() == kind ? each.other() : each.one())
                .toList();
    }

    /** Returns what a kind can be divided by, beside its own kind. */
    static List<Kind<?>> divisors(Kind<?> kind) {
        return divisions(kind).<Kind<?>>map(Product::one).distinct().toList();
    }

    /** Returns the products that make a kind, each with either factor first. */
    private static Stream<Product> divisions(Kind<?> kind) {
        return ALL.stream()
                .filter(each -> each.product() == kind)
                .flatMap(each -> Stream.of(each, new Product(each.other(), each.one(), kind)));
    }
}
