package headrace.circuit.solve;

import headrace.circuit.part.LinkLaw;
import headrace.work.Work;
import java.util.Arrays;

/**
 * Solves a network for flows and heads, again and again with other demands and closing laws.
 *
 * <p>Newton's method on the flows and heads together, the flows eliminated: each step is one sparse symmetric system
 * for the heads (global gradient method), with exact slopes of the laws. Bounds of flows are taken by the
 * least-distance form of complementarity, so that each link in each step either follows its law or rests; the closing
 * law is one more equation, solved on the line that the step leaves open. A step that does not bring the equations
 * nearer is shortened. Where that does not settle, an interior path finds which links rest, and Newton's method ends
 * from there.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI: m³/s, m of the liquid.
 *   <dt>Limits
 *   <dd>Laws that never fall. With a head that is given, or that falls with flow, the solution is the only one; with
 *       others it is the one that was reached from the demands.
 *   <dt>Errors
 *   <dd>None; {@link NetworkSolution#converged} says whether the equations hold to {@link #TOLERANCE}, tested on the
 *       equations themselves and not on the size of the last step.
 *   <dt>Source
 *   <dd>Todini and Pilati, A gradient algorithm for the analysis of pipe networks (1988); Simpson and Elhay, Jacobian
 *       matrix for solving water distribution system equations with the Darcy-Weisbach head-loss model (2011); Gorev et
 *       al. (2022) on the test of convergence; Facchinei and Pang, Finite-Dimensional Variational Inequalities and
 *       Complementarity Problems (2003), chapter 9, on the complementarity. From memory, unconfirmed.
 * </dl>
 *
 * <p>Not for use by two threads at once: it keeps its work space.
 */
public final class NetworkSolver {
    /** To what share of the design flow and head the equations hold. */
    public static final double TOLERANCE = 1e-9;

    /** What is aimed at: further steps cost little, and small flows gain from them. */
    private static final double AIM = 1e-12;

    private static final int STEPS = 60;
    private static final int MISSES = 6;
    private static final double ARMIJO = 1e-4;
    private static final double SHORTEST = 1.0 / 64;

    private final Network network;
    private final Network.Scale scale;
    private final Iterate at;
    private final LinearStep step;
    private final ClosingLine line;
    private final Gain gain;
    private final double aim;
    private final double[] bestFlow;
    private final double[] bestHead;
    private Ladder ladder;
    private double bestSize;
    private double closing;
    private int iterations;

    private NetworkSolver(Network network, double aim) {
        this.network = network;
        this.aim = aim;
        scale = network.scale();
        at = new Iterate(network);
        step = new LinearStep(network, at);
        ladder = Ladder.of(network);
        gain = new Gain(at, step, scale.metres());
        bestFlow = new double[at.flow.length];
        bestHead = new double[at.head.length];
        line = new ClosingLine(scale.metres());
    }

    /** Prepares a network: the order of elimination is found once. */
    public static NetworkSolver of(Network network) {
        return new NetworkSolver(network, AIM);
    }

    /** Prepares a network to be solved to a coarser share of the design head, at most {@link #TOLERANCE}. */
    public static NetworkSolver of(Network network, double aim) {
        return new NetworkSolver(network, Math.min(aim, TOLERANCE));
    }

    /** Returns the network as it was given. */
    public Network network() {
        return network;
    }

    /**
     * Asks a link for another flow from now on.
     *
     * @param cubicMetresPerSecond the most that it takes, 0 or more; 0 takes it out of the network
     */
    public void ask(int link, double cubicMetresPerSecond) {
        at.ask(link, cubicMetresPerSecond);
    }

    /** Gives a link another law from now on. */
    public void replace(int link, LinkLaw law) {
        at.replace(link, law);
        ladder = null;
    }

    /** Returns the flow that a link is asked for now. */
    public double asked(int link) {
        return at.most[link];
    }

    /** Solves from the demands; the quick way where the shape allows it. */
    public NetworkSolution solve(ClosingLaw law) {
        if (ladder != null && law instanceof HeadSource source && ladder.solve(at, source)) {
            iterations = ladder.passes();
            at.evaluate();
            measure(law);
            if (within(TOLERANCE)) {
                return solution(true);
            }
        }
        at.start();
        return solveFrom(law);
    }

    /** Returns the flow in m³/s that the network takes from the pump at a head in m: it never falls. */
    public double flowAt(double metres) {
        return solve(ClosingLaw.constant(metres)).pump().cubicMetresPerSecond();
    }

    /**
     * Looks for heads at which a law and the network meet, from no head upwards.
     *
     * @param to the greatest head to look at, in m
     */
    public Scan scan(ClosingLaw law, double to) {
        return Scan.of(
                metres -> {
                    solve(ClosingLaw.constant(metres));
                    return metres - law.headMetres(at);
                },
                to);
    }

    /**
     * Returns the inverse of the gain at the solution just found, {@code 1 − d asked/d head}: 1 where the law does not
     * see the network, 0 where both run alike, below 0 where the law is the steeper one.
     *
     * @param valvesHeld whether the terminals hold their valves, or move them to deliver what is asked
     */
    public double inverseGain(ClosingLaw law, boolean valvesHeld) {
        return gain.inverse(law, valvesHeld);
    }

    /** Returns by how much the flow through the pump grows with its head at the solution just found, in m²/s. */
    public double response(boolean valvesHeld) {
        return gain.response(valvesHeld);
    }

    /** Solves from given flows, one for each link. */
    public NetworkSolution solve(ClosingLaw law, double[] flows) {
        at.start();
        for (int l = 0; l < flows.length; l++) {
            at.flow[l] = at.live.isLive(l) ? flows[l] : 0;
        }
        return solveFrom(law);
    }

    private NetworkSolution solveFrom(ClosingLaw law) {
        iterations = 0;
        Arrays.fill(at.head, 0);
        at.head[network.source()] = law instanceof ClosingLaw.GivenHead given ? given.metres() : scale.metres();
        bestSize = Double.POSITIVE_INFINITY;
        boolean solved = begin(law) && (newton(law) || roundabout(law) && newton(law));
        restore(law);
        at.settle();
        at.live.fillHeads(at.head, at.most);
        return solution(solved);
    }

    /** Solves by the interior path first, so that a test can hold that way to the other. */
    NetworkSolution solveRoundabout(ClosingLaw law) {
        at.start();
        iterations = 0;
        Arrays.fill(at.head, 0);
        at.head[network.source()] = scale.metres();
        boolean solved = begin(law) && roundabout(law) && newton(law);
        at.settle();
        at.live.fillHeads(at.head, at.most);
        return solution(solved);
    }

    /** The first step brings the flows into balance with all demands delivered, whatever that does to the heads. */
    private boolean begin(ClosingLaw law) {
        at.evaluate();
        at.assumeDelivered();
        if (!stepFor(law)) {
            return false;
        }
        at.mark();
        move(law, 1);
        return true;
    }

    private boolean roundabout(ClosingLaw law) {
        iterations += new InteriorPath(at, scale).walk(step, law, line);
        if (law instanceof ClosingLaw.GivenHead given) {
            at.head[network.source()] = given.metres();
            at.evaluate();
        }
        measure(law);
        return true;
    }

    private boolean newton(ClosingLaw law) {
        int misses = 0;
        for (int i = 0; i < STEPS && misses < MISSES && !within(aim); i++) {
            Work.poll();
            if (!stepFor(law)) {
                return false;
            }
            misses += advance(law) ? 0 : 1;
        }
        return within(TOLERANCE);
    }

    private boolean stepFor(ClosingLaw law) {
        boolean open = !(law instanceof ClosingLaw.GivenHead);
        step.linearise();
        if (!step.solve(open)) {
            return false;
        }
        iterations++;
        if (open) {
            line.meet(step, law);
        }
        step.finish();
        return true;
    }

    /** Takes the step, or so much of it that the equations come nearer; else the best that was tried. */
    private boolean advance(ClosingLaw law) {
        double before = size();
        double best = Double.POSITIVE_INFINITY;
        double bestShare = 1;
        at.mark();
        for (double share = 1; share >= SHORTEST; share /= 2) {
            move(law, share);
            if (size() <= (1 - ARMIJO * share) * before) {
                return true;
            }
            if (size() < best) {
                best = size();
                bestShare = share;
            }
            if (before < AIM * AIM) {
                break;
            }
        }
        move(law, 0);
        keep();
        if (best < before || before > TOLERANCE * TOLERANCE) {
            move(law, bestShare);
        }
        return false;
    }

    /** Keeps the best iterate, in case that it gets no better. */
    private void keep() {
        if (size() < bestSize) {
            bestSize = size();
            System.arraycopy(at.flow, 0, bestFlow, 0, bestFlow.length);
            System.arraycopy(at.head, 0, bestHead, 0, bestHead.length);
        }
    }

    private void restore(ClosingLaw law) {
        if (!(size() <= bestSize)) {
            System.arraycopy(bestFlow, 0, at.flow, 0, bestFlow.length);
            System.arraycopy(bestHead, 0, at.head, 0, bestHead.length);
            at.evaluate();
            measure(law);
        }
    }

    private void move(ClosingLaw law, double share) {
        at.move(step, share);
        at.evaluate();
        measure(law);
    }

    private void measure(ClosingLaw law) {
        closing = law instanceof ClosingLaw.GivenHead ? 0 : at.head() - law.headMetres(at);
    }

    private double size() {
        double closed = closing / scale.metres();
        return at.squares + closed * closed;
    }

    private boolean within(double share) {
        return at.worst <= share * scale.metres() && Math.abs(closing) <= share * scale.metres();
    }

    private NetworkSolution solution(boolean solved) {
        double mass = at.imbalance();
        boolean good = solved && mass <= TOLERANCE * scale.cubicMetresPerSecond();
        return new NetworkSolution(
                at.flow,
                at.head,
                at.state,
                new NetworkSolution.Pump(at.flow(), at.head()),
                new NetworkSolution.Residuals(at.worst, at.worstLink, mass, closing),
                iterations,
                good);
    }
}
