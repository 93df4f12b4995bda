package headrace.report;

/** The cautions that stand beside a result. */
public final class Caution {
    /** Beside every result of a calculation. */
    public static final String ESTIMATE =
            "An engineering estimate, not a certified rating. The maker's limits, licensed practice"
                    + " and local code decide";

    static final String OVERSPEED = "Above the tested speed the head grows with the square of speed: hold the highest"
            + " head against the weakest part and the relief setting";
    /** A drive restarts by itself. */
    public static final String RESTART =
            "A drive restarts by itself. Lock out, tag out and wait until its DC bus has discharged"
                    + " before you touch the machine";

    static final String RETUNING = "Change one parameter of a drive at a time, log it, and watch for hunting";
    static final String SENSOR =
            "Where a sensor is removed an alarm goes with it: say what replaces it, and which speed"
                    + " the drive takes when control fails";

    static final String DEAD_HEAD =
            "Against a closed valve a pump heats what it holds and can burst. Keep the way open, and do not take any time"
                    + " for a permission";
    static final String SUCTION =
            "A low fill pressure, a hot return, a clogged strainer and altitude all take NPSH away: see what it is on site";
    static final String HOT = "Above 60 °C the liquid scalds: open vents only when it is cold";
    static final String FLASHING = "Above 100 °C it flashes into steam where its pressure is lost";
    static final String FREEZING = "Near its freezing point: look for where flow stops first, and keep a least flow";

    static final String ROTATION = "Check the rotation after any work on the wiring, on the pump itself and not on the"
            + " display of the drive; live work is for those who are qualified for it";

    private Caution() {}
}
