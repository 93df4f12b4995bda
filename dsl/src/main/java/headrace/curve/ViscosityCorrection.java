package headrace.curve;

import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.KinematicViscosity;
import headrace.units.Numbers;

/**
 * Decides whether, and by how much, the viscosity of a liquid changes a curve.
 *
 * <p>A small pump has a B above 1 in water already: what that does to it is in its test, so that the shares of another
 * liquid are taken relative to those of the test, an assumption of our own. A liquid no more viscous than that of the
 * test changes nothing.
 *
 * @param parameter B at the tested speed, from flow, head and speed at best efficiency in water; 0 for no correction
 * @param ofTest B of the test, at least 1
 */
record ViscosityCorrection(double parameter, double ofTest) {
    static final String BASIS = "another liquid: power goes with density; above B = 1 flow, head and efficiency by the"
            + " parameter method of ANSI/HI 9.6.7 (from memory), for one stage";

    private static final double MOST_SQUARE_MILLIMETRES_PER_SECOND = 4000;

    /** Water at its freezing point: a test in a liquid up to that is one in water. */
    private static final double WATERY_SQUARE_MILLIMETRES_PER_SECOND = 1.8;

    private static final double SAME = 1e-9;

    /**
     * Returns the correction of a curve for a liquid.
     *
     * @throws Refusal with {@code VISCOSITY_OUT_OF_RANGE} if the test itself was in a viscous liquid, or if the liquid
     *     is more viscous than the method reaches
     */
    static ViscosityCorrection of(Tested tested, SimilarityMap map, Liquid liquid) {
        double inTest = parameter(tested, map, tested.testedIn());
        double tests = tested.testedIn().kinematicViscosity().toSquareMillimetresPerSecond();
        if (inTest > 1 && tests > WATERY_SQUARE_MILLIMETRES_PER_SECOND) {
            throw new Refusal(
                    CurveProblem.VISCOSITY_OUT_OF_RANGE,
                    "Asked for the curve of " + tested.name() + " in " + liquid + ", but it was tested in "
                            + tested.testedIn() + ", where B is " + Numbers.print(inTest),
                    "The correction begins from a test in water, or in another liquid with B up to 1",
                    "Give the curve in water");
        }
        KinematicViscosity viscosity = liquid.kinematicViscosity();
        if (viscosity.toSquareMillimetresPerSecond() <= tests * (1 + SAME)) {
            return new ViscosityCorrection(0, 1);
        }
        double parameter = parameter(tested, map, liquid);
        boolean known = viscosity.toSquareMillimetresPerSecond() <= MOST_SQUARE_MILLIMETRES_PER_SECOND
                && parameter < ViscousMap.MOST;
        if (!known) {
            throw new Refusal(
                    CurveProblem.VISCOSITY_OUT_OF_RANGE,
                    "Asked for the curve of " + tested.name() + " in " + liquid + " of " + viscosity + ", where B is "
                            + Numbers.print(parameter),
                    "The method reaches up to 4000 mm²/s and to a B below 40",
                    "Warm the liquid, take a larger pump, or have the pump tested in the liquid");
        }
        return new ViscosityCorrection(parameter, Math.max(1, inTest));
    }

    private static double parameter(Tested tested, SimilarityMap map, Liquid liquid) {
        return ViscousMap.parameter(
                liquid.kinematicViscosity().toSquareMillimetresPerSecond(),
                Head.metres(map.headMetres(map.bestFlow(), 1)).metres(),
                Flow.cubicMetresPerSecond(map.bestFlow()).toCubicMetresPerHour(),
                tested.speed().toRevolutionsPerMinute());
    }

    /** Returns the corrected map: always able to, since B passes 1 as the speed falls. */
    PumpMap applied(SimilarityMap plain) {
        return new ViscousMap(plain, parameter, ofTest);
    }
}
