package headrace.script;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.part.coil.CoilRating;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.data.HourlyLoadFile;
import headrace.data.LoadLogFile;
import headrace.data.MonthHourFile;
import headrace.data.NumberStyle;
import headrace.data.WeatherFile;
import headrace.energy.LoadProfile;
import headrace.energy.load.BranchYear;
import headrace.energy.load.ChangePoint;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.HourlyWeather;
import headrace.energy.load.LoadToFlow;
import headrace.energy.load.Sharing;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Time;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words about the load of a year: its hours, the weather, how load becomes flow, and how branches share it. */
public final class LoadWords implements Words {
    private static final String COMMA =
            "decimalComma: true for a file with decimal commas and semicolons between its cells; false unless chosen";
    private static final String HOURLY =
            "Reads the load of every hour of a year, as a share of design load; a change of"
                    + " clock is noted, any other missing or double hour refused.";
    private static final String HOURLY_EXAMPLE = "readHourlyLoad('demo-data/loads/tern-court-hours.csv')";
    private static final String DAYS =
            "Reads a typical day for each month, 24 hours times 12 months, and lays it over the year.";
    private static final String DAYS_EXAMPLE = "readTypicalDays('demo-data/loads/otterbank-days.csv')";
    private static final String WEATHER =
            "Reads the outdoor temperature of every hour of a year, from a CSV file or from an EPW file.";
    private static final String WEATHER_EXAMPLE = "weather = readWeather('demo-data/weather/fenmouth.csv')";
    private static final String LOG =
            "Reads a load profile from a log of flows, in steps of 1 % of design flow; gaps are left"
                    + " out and noted.";
    private static final String LOG_EXAMPLE = "readLoadLog('demo-data/loads/millrace-log.csv')";
    private static final String FLOWS = "How a year of hours divides over flows, as a load profile that compare takes.";
    private static final String BY =
            "by: how load becomes flow: constantDifference() unless chosen, emission(0.4), or a" + " coilFlow";
    private static final String BRANCHES =
            "branches: a circuit, whose terminals share the load in their order, or their"
                    + " design flows by name, as in branches: [near: 20.m3ph, far: 12.m3ph]; always needed";
    private static final String SEED = "seed: the seed of random shares, a whole number; 1 unless chosen";

    @Override
    public String subject() {
        return "Load of a year";
    }

    /** Reads a year of hours. */
    @Word(help = HOURLY, example = HOURLY_EXAMPLE)
    public static HourlyLoad readHourlyLoad(Object file) {
        return readHourlyLoad(Map.of(), file);
    }

    /** Reads a year of hours. */
    @Word(help = HOURLY, example = HOURLY_EXAMPLE, choices = COMMA)
    public static HourlyLoad readHourlyLoad(Map<String, ?> given, Object file) {
        NumberStyle style = FileWords.style("readHourlyLoad", given);
        return FileWords.read("readHourlyLoad", file, path -> HourlyLoadFile.read(path, style));
    }

    /** Reads typical days. */
    @Word(help = DAYS, example = DAYS_EXAMPLE)
    public static HourlyLoad readTypicalDays(Object file) {
        return readTypicalDays(Map.of(), file);
    }

    /** Reads typical days. */
    @Word(help = DAYS, example = DAYS_EXAMPLE, choices = COMMA)
    public static HourlyLoad readTypicalDays(Map<String, ?> given, Object file) {
        NumberStyle style = FileWords.style("readTypicalDays", given);
        return FileWords.read("readTypicalDays", file, path -> MonthHourFile.read(path, style));
    }

    /** Reads weather. */
    @Word(help = WEATHER, example = WEATHER_EXAMPLE)
    public static HourlyWeather readWeather(Object file) {
        return readWeather(Map.of(), file);
    }

    /** Reads weather. */
    @Word(help = WEATHER, example = WEATHER_EXAMPLE, choices = COMMA)
    public static HourlyWeather readWeather(Map<String, ?> given, Object file) {
        NumberStyle style = FileWords.style("readWeather", given);
        return FileWords.read("readWeather", file, path -> WeatherFile.read(path, style));
    }

    /** Reads a load profile from a log. */
    @Word(help = LOG, example = LOG_EXAMPLE)
    public static LoadProfile readLoadLog(Object file) {
        return readLoadLog(Map.of(), file);
    }

    /** Reads a load profile from a log. */
    @Word(
            help = LOG,
            example = "readLoadLog('demo-data/loads/millrace-log.csv', stretchedTo: 8760.h)",
            choices = {
                COMMA,
                "stretchedTo: the hours of a year to which the log is stretched; as they are unless chosen"
            })
    public static LoadProfile readLoadLog(Map<String, ?> given, Object file) {
        Choices choices = Choices.of("readLoadLog", given, "decimalComma", "stretchedTo");
        NumberStyle style = choices.yes("decimalComma", false) ? NumberStyle.DECIMAL_COMMA : NumberStyle.DECIMAL_POINT;
        Optional<Time> hours =
                choices.has("stretchedTo") ? Optional.of(choices.quantity("stretchedTo", Time.KIND)) : Optional.empty();
        return FileWords.read("readLoadLog", file, path -> LoadLogFile.read(path, style, hours));
    }

    /** Makes the profile of circulators. */
    @Word(
            help =
                    "The load profile of circulators over some hours: 6, 15, 35 and 44 % of them at 100, 75, 50 and 25 % of"
                            + " design flow (EC 641/2009).",
            example = "circulatorProfile(4940.h)")
    public static LoadProfile circulatorProfile(Object hours) {
        return LoadProfile.circulator(Wanted.quantity(Time.KIND, hours, "the hours of circulatorProfile"));
    }

    /** Makes a load of weather. */
    @Word(
            help =
                    "The load of every hour from the outdoor temperature: none beyond a change point, or a base, and from"
                            + " there on in proportion to 100 % at the design temperature. Below the change point it is heating,"
                            + " above it cooling.",
            example = "weatherLoad(weather, changePoint: 15.degC, design: -10.degC, base: 5.percent)",
            choices = {
                "changePoint: the outdoor temperature from which on there is a load; always needed",
                "design: the outdoor temperature at design load; always needed",
                "base: the load on the other side of the change point; none unless chosen",
                "most: the share of design above which the load does not rise, as in most: 100.percent; it rises unless"
                        + " chosen",
                "name: what it is called; that of the weather unless chosen"
            })
    public static HourlyLoad weatherLoad(Map<String, ?> given, Object weather) {
        Choices choices = Choices.of("weatherLoad", given, "changePoint", "design", "base", "most", "name");
        HourlyWeather outdoor = Wanted.object(HourlyWeather.class, weather, "the weather of weatherLoad");
        ChangePoint point = new ChangePoint(
                choices.quantity("changePoint", Temperature.KIND),
                choices.quantity("design", Temperature.KIND),
                choices.ratio("base", Ratio.ZERO));
        String name = choices.text("name", "load in the weather of " + outdoor.name());
        return choices.has("most") ? point.over(outdoor, name, choices.ratio("most")) : point.over(outdoor, name);
    }

    /** Turns load into flow in proportion. */
    @Word(
            help = "Load becomes flow with a constant temperature difference: flow goes with the load.",
            example = "constantDifference()")
    public static LoadToFlow constantDifference() {
        return LoadToFlow.constantDifference();
    }

    /** Turns load into flow as a coil needs it. */
    @Word(
            help =
                    "Load becomes flow as a coil needs it, by effectiveness and transfer units; with noLoad: while its supply"
                            + " is reset.",
            example =
                    "coilFlow(heat: 90.kW, water: 5.2.m3ph, liquid: water(70.degC), air: 3.kgps, enteringAir: 10.degC)",
            choices = {
                "heat: its heat at design; always needed",
                "water: its flow at design; always needed",
                "liquid: the liquid as it enters at design; always needed",
                "air: the flow of air; always needed",
                "enteringAir: the temperature of the air that enters; always needed",
                "noLoad: the temperature of the supply at no load, to which it is reset in proportion; not reset unless"
                        + " chosen"
            })
    public static LoadToFlow coilFlow(Map<String, ?> given) {
        Choices choices = Choices.of("coilFlow", given, "heat", "water", "liquid", "air", "enteringAir", "noLoad");
        CoilRating rating = new CoilRating(
                choices.quantity("heat", Power.KIND),
                choices.quantity("water", Flow.KIND),
                choices.object("liquid", Liquid.class),
                choices.quantity("air", MassFlow.KIND),
                choices.quantity("enteringAir", Temperature.KIND));
        return choices.has("noLoad")
                ? LoadToFlow.coil(rating, choices.quantity("noLoad", Temperature.KIND))
                : LoadToFlow.coil(rating);
    }

    /** Turns a year of loads into flows. */
    @Word(help = FLOWS, example = "loadFlows(readTypicalDays('demo-data/loads/otterbank-days.csv'))")
    public static LoadProfile loadFlows(Object load) {
        return loadFlows(Map.of(), load);
    }

    /** Turns a year of loads into flows. */
    @Word(
            help = FLOWS,
            example = "loadFlows(readTypicalDays('demo-data/loads/otterbank-days.csv'), by: emission(0.4))",
            choices = BY)
    public static LoadProfile loadFlows(Map<String, ?> given, Object load) {
        return load(load, "loadFlows").flows(way(Choices.of("loadFlows", given, "by")));
    }

    /** Shares a year among branches. */
    @Word(
            help = "What each branch of a circuit is asked for in every hour of a year.",
            example = "branchYear(readTypicalDays('demo-data/loads/otterbank-days.csv'), branches: [near: 20.m3ph, far:"
                    + " 12.m3ph], sharing: 'far')",
            choices = {
                BRANCHES,
                "sharing: 'even' unless chosen; 'near' or 'far' for the nearest or farthest branches first; 'random'; or"
                        + " 'off' and the name of a branch that is off, as in 'off attic'",
                SEED,
                BY
            })
    public static BranchYear branchYear(Map<String, ?> given, Object load) {
        Choices choices = Choices.of("branchYear", given, "branches", "sharing", "seed", "by");
        List<BranchYear.Asked> branches = branches(choices, "branchYear");
        return BranchYear.of(load(load, "branchYear"), branches, sharing(choices, branches));
    }

    /** Shares a year among branches in every way. */
    @Word(
            help = "The same year shared among the branches of a circuit in several ways: evenly, near and far branches"
                    + " first, each branch off in turn, and at random.",
            example =
                    "branchYears(readTypicalDays('demo-data/loads/otterbank-days.csv'), branches: [near: 20.m3ph, far:"
                            + " 12.m3ph])",
            choices = {BRANCHES, SEED, BY})
    public static List<BranchYear> branchYears(Map<String, ?> given, Object load) {
        Choices choices = Choices.of("branchYears", given, "branches", "seed", "by");
        List<BranchYear.Asked> branches = branches(choices, "branchYears");
        HourlyLoad year = load(load, "branchYears");
        List<Sharing> ways = Sharing.all(branches.size(), choices.whole("seed", 1));
        List<BranchYear> years = new ArrayList<>();
        try (Steps steps = Work.steps("years of the branches", ways.size())) {
            for (Sharing sharing : ways) {
                steps.next();
                years.add(BranchYear.of(year, branches, sharing));
            }
        }
        return List.copyOf(years);
    }

    private static HourlyLoad load(Object given, String word) {
        return Wanted.object(HourlyLoad.class, given, "the load of " + word);
    }

    private static LoadToFlow way(Choices choices) {
        Object by = choices.object("by", Object.class, LoadToFlow.constantDifference());
        return by instanceof EmissionLaw law
                ? LoadToFlow.emission(law)
                : Wanted.object(LoadToFlow.class, by, "the choice by:");
    }

    private static List<BranchYear.Asked> branches(Choices choices, String word) {
        Object given = choices.object("branches", Object.class);
        LoadToFlow way = way(choices);
        List<BranchYear.Asked> branches = new ArrayList<>();
        if (given instanceof Circuit circuit) {
            for (Branch terminal : circuit.terminals()) {
                branches.add(
                        new BranchYear.Asked(terminal.name(), terminal.design().orElseThrow(), way));
            }
            return branches;
        }
        Map<?, ?> named = Wanted.object(Map.class, given, "the choice branches: of " + word);
        named.forEach((name, flow) -> branches.add(new BranchYear.Asked(
                String.valueOf(name), Wanted.flow(flow, "the design flow of the branch " + name), way)));
        return branches;
    }

    private static Sharing sharing(Choices choices, List<BranchYear.Asked> branches) {
        String how = choices.text("sharing", "even");
        if (how.startsWith("off ")) {
            String off = how.substring("off ".length()).strip();
            for (int i = 0; i < branches.size(); i++) {
                if (branches.get(i).name().equals(off)) {
                    return Sharing.oneOff(i);
                }
            }
        }
        return switch (how) {
            case "even" -> Sharing.even();
            case "near" -> Sharing.near();
            case "far" -> Sharing.far();
            case "random" -> Sharing.random(choices.whole("seed", 1));
            default ->
                throw new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "'" + how + "' was given for the choice sharing: of branchYear",
                        "It must be 'even', 'near', 'far', 'random', or 'off' and the name of one of the branches "
                                + String.join(
                                        ", ",
                                        branches.stream()
                                                .map(BranchYear.Asked::name)
                                                .toList()),
                        "Choose one of these");
        };
    }
}
