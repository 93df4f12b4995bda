package headrace.script;

import headrace.control.ControlLaw;
import headrace.curve.PumpTest;
import headrace.data.PumpFile;
import headrace.drive.LossModel;
import headrace.energy.LoadProfile;
import headrace.liquid.Liquid;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.suction.SuctionSide;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.rule.PartLoadRule;
import headrace.selection.SelectionProblem;
import headrace.selection.Shortlist;
import headrace.selection.Shortlist.Dropped;
import headrace.selection.Wish;
import headrace.selection.Wish.Conditions;
import headrace.selection.Wish.Motors;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Words about choosing a pump. */
public final class SelectionWords implements Words {
    @Override
    public String subject() {
        return "Choosing a pump";
    }

    /** Ranks the pumps of a folder. */
    @Word(
            help =
                    "Ranks the pumps of a folder, or of a list of pump tests, for a duty and a load by what the wire gives in"
                            + " the year, with a reason for each one dropped.",
            example = "choose('demo-data/pumps', quadratic(duty(52.m3ph, 16.m), minimumHead: 25.percent),"
                    + " readLoadProfile('demo-data/loads/otterbank.csv'))",
            choices = {
                "liquid: what is pumped; the liquid of each test unless chosen",
                "suction: openSuction or closedSuction; NPSH is not judged, and that noted, unless chosen",
                "leastMinimumHead: the least share of design head that serves every branch; unknown unless chosen",
                "rule: a part-load rule; 30 % at half flow unless chosen",
                "region: an operating region; the usual one unless chosen",
                "ie: class of the motors, 2 to 4; 3 unless chosen",
                "losses: a loss model; losses of motor and drive apart, shares assumed, unless chosen",
                "leastSpeed: share of rated speed; 25 % unless chosen"
            })
    public static Shortlist choose(Map<String, ?> given, Object pumps, Object law, Object year) {
        Choices choices = Choices.of(
                "choose",
                given,
                "liquid",
                "suction",
                "leastMinimumHead",
                "rule",
                "region",
                "ie",
                "losses",
                "leastSpeed");
        Conditions usual = Conditions.USUAL;
        Conditions conditions = new Conditions(
                optional(choices, "liquid", Liquid.class),
                optional(choices, "suction", SuctionSide.class),
                usual.margin(),
                choices.object("region", OperatingRegion.class, usual.region()),
                choices.object("rule", PartLoadRule.class, usual.rule()),
                choices.has("leastMinimumHead") ? Optional.of(choices.ratio("leastMinimumHead")) : Optional.empty());
        Motors motors = new Motors(
                choices.whole("ie", 3),
                choices.object("losses", LossModel.class, LossModel.compared().get(0)),
                choices.ratio("leastSpeed", Ratio.percent(25)));
        Wish wish = new Wish(
                Wanted.object(ControlLaw.class, law, "the law of choose"),
                Wanted.object(LoadProfile.class, year, "the year of choose"),
                conditions,
                motors);
        if (pumps instanceof List<?> list) {
            return Shortlist.of(
                    wish,
                    list.stream()
                            .map(test -> Wanted.object(PumpTest.class, test, "a pump of choose"))
                            .toList());
        }
        return fromFolder(
                wish,
                Wanted.object(CharSequence.class, pumps, "the folder of choose").toString());
    }

    /** Ranks the pumps of a folder under usual conditions. */
    @Word(
            help =
                    "Ranks the pumps of a folder, or of a list of pump tests, for a duty and a load by what the wire gives in"
                            + " the year, with a reason for each one dropped.",
            example = "choose('demo-data/pumps', quadratic(duty(52.m3ph, 16.m), minimumHead: 25.percent),"
                    + " readLoadProfile('demo-data/loads/otterbank.csv'))")
    public static Shortlist choose(Object pumps, Object law, Object year) {
        return choose(Map.of(), pumps, law, year);
    }

    private static <T> Optional<T> optional(Choices choices, String name, Class<T> type) {
        return choices.has(name) ? Optional.of(choices.object(name, type)) : Optional.empty();
    }

    private static Shortlist fromFolder(Wish wish, String name) {
        List<PumpTest> tests = new ArrayList<>();
        List<Dropped> unread = new ArrayList<>();
        try (Steps readAndChosen = Work.steps("choosing among pumps", 2)) {
            readAndChosen.next();
            read(files(name), tests, unread);
            if (tests.isEmpty() && unread.isEmpty()) {
                throw noFolder(name);
            }
            readAndChosen.next();
            return Shortlist.of(wish, tests, unread);
        }
    }

    private static void read(List<Path> files, List<PumpTest> tests, List<Dropped> unread) {
        try (Steps steps = Work.steps("reading pump files", files.size())) {
            for (Path file : files) {
                steps.next();
                try {
                    tests.add(PumpFile.read(file));
                } catch (Refusal reason) {
                    unread.add(new Dropped(file.getFileName().toString(), reason));
                }
            }
        }
    }

    private static List<Path> files(String name) {
        Path folder = ScriptFolder.current().found(name);
        if (!Files.isDirectory(folder)) {
            throw noFolder(name);
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(file -> file.toString().toLowerCase(Locale.ROOT).endsWith(".csv"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw noFolder(name);
        }
    }

    private static Refusal noFolder(String name) {
        return new Refusal(
                        SelectionProblem.NO_CANDIDATES,
                        "Asked to choose among the pump files of '" + name + "'",
                        "It must be a folder with at least one file that ends in .csv",
                        "Name the folder, not a file in it")
                .at(Place.of(name));
    }
}
