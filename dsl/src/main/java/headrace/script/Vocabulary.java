package headrace.script;

import headrace.problem.Nearest;
import headrace.units.Kind;
import headrace.units.Quantities;
import headrace.units.Unit;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.TreeMap;

/** All words of a script: those that registered themselves, and the units that may follow a number. */
public final class Vocabulary {
    private static final Vocabulary ALL = new Vocabulary();

    private final List<Class<?>> classes = new ArrayList<>();
    private final Map<String, Map<String, Entry>> bySubject = new TreeMap<>();

    private Vocabulary() {
        for (Words words : ServiceLoader.load(Words.class, Words.class.getClassLoader())) {
            classes.add(words.getClass());
            for (Method method : methods(words.getClass())) {
                bySubject
                        .computeIfAbsent(words.subject(), subject -> new TreeMap<>())
                        .merge(method.getName(), Entry.of(words.subject(), method), Entry::and);
            }
        }
    }

    /** Returns the words that registered themselves. */
    public static Vocabulary all() {
        return ALL;
    }

    /** Returns the classes of words, for what imports them. */
    public List<Class<?>> classes() {
        return List.copyOf(classes);
    }

    /** Returns the subjects, in the order of the alphabet. */
    public List<String> subjects() {
        return List.copyOf(bySubject.keySet());
    }

    /** Returns the words of a subject, in the order of the alphabet; none if there is no such subject. */
    public List<Entry> words(String subject) {
        return List.copyOf(bySubject.getOrDefault(subject, Map.of()).values());
    }

    /** Returns all words, subject by subject. */
    public List<Entry> words() {
        return bySubject.values().stream()
                .flatMap(words -> words.values().stream())
                .toList();
    }

    /** Returns a word, if there is one of that name. */
    public Optional<Entry> word(String name) {
        return words().stream().filter(word -> word.name().equals(name)).findFirst();
    }

    /** Returns the words nearest to a misspelt one, nearest first. */
    public List<String> nearest(String written) {
        return Nearest.to(written, words().stream().map(Entry::name).toList());
    }

    /** Returns the units that may follow a number, kind by kind. */
    public List<UnitWord> unitWords() {
        return Quantities.KINDS.stream()
                .flatMap(kind -> kind.units().stream().map(unit -> new UnitWord(unit, kind)))
                .toList();
    }

    private static List<Method> methods(Class<?> words) {
        return Arrays.stream(words.getMethods())
                .filter(method -> method.isAnnotationPresent(Word.class))
                .sorted(Comparator.comparing(Method::getParameterCount).thenComparing(Method::toGenericString))
                .toList();
    }

    /**
     * A unit that may follow a number.
     *
     * @param unit the unit
     * @param kind what it measures
     */
    public record UnitWord(Unit unit, Kind<?> kind) {}

    /**
     * One word.
     *
     * @param subject the subject it belongs to
     * @param name the word itself
     * @param help what it does
     * @param example a line that a reader could type
     * @param choices its named choices, each as {@code name: what it is}
     * @param signatures how it is called, such as {@code duty(flow, head)}, fewest arguments first
     * @param methods what it calls
     */
    public record Entry(
            String subject,
            String name,
            String help,
            String example,
            List<String> choices,
            List<String> signatures,
            List<Method> methods) {

        static Entry of(String subject, Method method) {
            Word word = method.getAnnotation(Word.class);
            return new Entry(
                    subject,
                    method.getName(),
                    word.help(),
                    word.example(),
                    List.of(word.choices()),
                    List.of(Signature.of(method)),
                    List.of(method));
        }

        /** Returns this with another way to call the word. */
        Entry and(Entry other) {
            return new Entry(
                    subject,
                    name,
                    help.contains(other.help) ? help : help + " " + other.help,
                    example,
                    joined(choices, other.choices),
                    joined(signatures, other.signatures),
                    joined(methods, other.methods));
        }

        /** Returns the names of its choices. */
        public List<String> choiceNames() {
            return choices.stream()
                    .map(choice -> choice.split(":", 2)[0].strip())
                    .toList();
        }

        /** Returns all that there is to say about the word, a few lines of text. */
        public String text() {
            StringBuilder text = new StringBuilder(String.join("\n", signatures))
                    .append("\n    ")
                    .append(help);
            choices.forEach(choice -> text.append("\n    ").append(choice));
            return text.append("\n    Example: ").append(example).toString();
        }

        private static <T> List<T> joined(List<T> some, List<T> others) {
            List<T> all = new ArrayList<>(some);
            others.stream().filter(one -> !all.contains(one)).forEach(all::add);
            return List.copyOf(all);
        }
    }
}
