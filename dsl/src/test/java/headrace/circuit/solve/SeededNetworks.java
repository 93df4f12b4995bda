package headrace.circuit.solve;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.SquareLaw;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented networks of any size: a supply tree, a return tree, terminals between them, and chords that close loops. */
final class SeededNetworks {
    private final Random random;
    private final List<Link> links = new ArrayList<>();

    private SeededNetworks(long seed) {
        random = new Random(seed);
    }

    /** Laminar at first, then with the square of flow: the slope at no flow is not 0. */
    record MixedLaw(double linear, double square) implements LinkLaw {
        @Override
        public double headMetres(double q) {
            return q * (linear + square * Math.abs(q));
        }

        @Override
        public double slope(double q) {
            return linear + 2 * square * Math.abs(q);
        }
    }

    /** A check valve that opens at a head of its own. */
    record CheckLaw(double cracking, double square) implements LinkLaw {
        @Override
        public double headMetres(double q) {
            return cracking + square * q * Math.abs(q);
        }

        @Override
        public double slope(double q) {
            return 2 * square * Math.abs(q);
        }
    }

    /**
     * Returns a network with about so many branches, flows about 1 a terminal, heads about 10.
     *
     * @param loops whether chords, check valves and limiters are added
     */
    static Network of(long seed, int branches, boolean loops) {
        return new SeededNetworks(seed).network(branches, loops);
    }

    private Network network(int branches, boolean loops) {
        int taps = Math.max(1, branches / 3);
        int nodes = 2 + 2 * taps;
        double total = 0;
        for (int i = 0; i < taps; i++) {
            int supply = 2 + 2 * i;
            int before = i == 0 ? -1 : Math.max(0, i - 1 - random.nextInt(3));
            double through = Math.max(1, taps - i);
            plain(before < 0 ? 1 : 2 + 2 * before, supply, 2.0 / taps / (through * through));
            plain(supply + 1, before < 0 ? 0 : 3 + 2 * before, 2.0 / taps / (through * through));
            double demand = random.nextInt(8) == 0 ? 0 : 0.2 + random.nextDouble();
            links.add(Link.terminal(supply, supply + 1, new SquareLaw(2 + 3 * random.nextDouble()), demand));
            total += demand;
        }
        for (int c = 0; loops && c < 1 + taps / 4; c++) {
            chord(nodes, taps);
        }
        return Network.closed(nodes, 1, links, new Network.Scale(Math.max(1, total), 10));
    }

    private void chord(int nodes, int taps) {
        int a = 2 + random.nextInt(nodes - 2);
        int b = 2 + random.nextInt(nodes - 2);
        if (a == b) {
            return;
        }
        switch (random.nextInt(4)) {
            case 0 -> plain(a, b, 3 + random.nextDouble());
            case 1 -> links.add(Link.check(a, b, new CheckLaw(0.3, 1 + random.nextDouble())));
            case 2 -> links.add(Link.terminal(a, b, new SquareLaw(4), 0.3));
            default -> plain(a, b, 0.02 / taps);
        }
    }

    private void plain(int from, int to, double k) {
        links.add(Link.plain(
                from, to, random.nextBoolean() ? new SquareLaw(k) : new MixedLaw(k * random.nextDouble(), k)));
    }
}
