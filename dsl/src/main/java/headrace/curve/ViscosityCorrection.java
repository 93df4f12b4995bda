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
 * @param parameter B at the tested speed, from flow, head and speed at best efficiency in water
 */
record ViscosityCorrection(double parameter) {
    static final String BASIS = "another liquid: power goes with density; above B = 1 flow, head and efficiency by the"
            + " parameter method of ANSI/HI 9.6.7 (from memory), for one stage";

    private static final double MOST_SQUARE_MILLIMETRES_PER_SECOND = 4000;

    /**
     * Returns the correction of a curve for a liquid.
     *
     * @throws Refusal with {@code VISCOSITY_OUT_OF_RANGE} if the test itself was in a viscous liquid, or if the liquid
     *     is more viscous than the method reaches
     */
    static ViscosityCorrection of(Tested tested, SimilarityMap map, Liquid liquid) {
        double inTest = parameter(tested, map, tested.testedIn());
        if (inTest > 1) {
            throw new Refusal(
                    CurveProblem.VISCOSITY_OUT_OF_RANGE,
                    "Asked for the curve of " + tested.name() + " in " + liquid + ", but it was tested in "
                            + tested.testedIn() + ", where B is " + Numbers.print(inTest),
                    "The correction begins from a test in water, with B up to 1",
                    "Give the curve in water");
        }
        KinematicViscosity viscosity = liquid.kinematicViscosity();
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
        return new ViscosityCorrection(parameter);
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
        return new ViscousMap(plain, parameter);
    }
}
