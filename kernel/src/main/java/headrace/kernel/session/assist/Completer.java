package headrace.kernel.session.assist;

import headrace.kernel.session.Completion;
import headrace.kernel.session.Completion.Candidate;
import headrace.kernel.session.Language;
import headrace.kernel.session.assist.Cursor.Call;
import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Token.Kind;
import headrace.kernel.session.source.Tokens;
import headrace.script.Vocabulary;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Finds what could stand at the cursor. */
public final class Completer {
    private static final List<String> KEYWORDS = List.of(
            "as",
            "assert",
            "break",
            "case",
            "catch",
            "class",
            "continue",
            "def",
            "default",
            "do",
            "else",
            "enum",
            "extends",
            "false",
            "final",
            "finally",
            "for",
            "if",
            "implements",
            "import",
            "in",
            "instanceof",
            "interface",
            "new",
            "null",
            "record",
            "return",
            "static",
            "switch",
            "throw",
            "trait",
            "true",
            "try",
            "var",
            "while");

    private final Scope scope;
    private final boolean java;

    /** Creates a completer over what a cell of a language could name. */
    public Completer(Scope scope, Language language) {
        this.scope = scope;
        java = language == Language.JAVA;
    }

    /** Returns what could stand at a place in a text, best first. */
    public Completion at(String code, int place) {
        Cursor cursor = new Cursor(code, place);
        if (cursor.inComment()) {
            return new Completion(place, place, List.of());
        }
        if (cursor.string().isPresent()) {
            return inString(cursor, cursor.string().get(), place);
        }
        Stream<Candidate> all;
        if (isImport(cursor)) {
            all = imports(cursor);
        } else if (cursor.follows(".") || cursor.follows("?.") || cursor.follows("*.")) {
            all = java ? JavaNames.members(scope, cursor) : members(cursor);
        } else {
            all = Stream.concat(java ? JavaNames.arguments(cursor) : choices(cursor), names(cursor, code));
        }
        return new Completion(cursor.start(), place, fitting(cursor.prefix(), all));
    }

    /** Keeps those that go on from what was written; those that differ in case come last. */
    private static List<Candidate> fitting(String prefix, Stream<Candidate> all) {
        String folded = prefix.toLowerCase(Locale.ROOT);
        Map<String, Candidate> fitting = new LinkedHashMap<>();
        all.filter(each -> each.text().toLowerCase(Locale.ROOT).startsWith(folded))
                .forEach(each -> fitting.putIfAbsent(each.text(), each));
        return fitting.values().stream()
                .sorted(Comparator.comparing(each -> each.text().startsWith(prefix) ? 0 : 1))
                .toList();
    }

    private Completion inString(Cursor cursor, Token string, int place) {
        boolean path = cursorCall(cursor).filter(Completer::takesPath).isPresent();
        String written = string.text().replaceFirst("^('''|\"\"\"|'|\"|\\$/|/)", "");
        int start = place - written.length() + written.lastIndexOf('/') + 1;
        return new Completion(start, place, path ? PathNames.after(written, scope.folder()) : List.of());
    }

    private static Optional<String> cursorCall(Cursor cursor) {
        return cursor.call().map(Call::name);
    }

    /** Words that read or save a file begin with that verb. */
    private static boolean takesPath(String call) {
        return call.matches("(read|save|write|load|open)[A-Z]?.*")
                || Set.of("File", "of", "get").contains(call);
    }

    private static boolean isImport(Cursor cursor) {
        for (int i = cursor.before().size() - 1; i >= 0; i--) {
            Token token = cursor.before().get(i);
            if (token.is("import")) {
                return true;
            }
            if (!(token.kind() == Kind.WORD || token.is("."))) {
                return false;
            }
        }
        return false;
    }

    private static Stream<Candidate> imports(Cursor cursor) {
        List<Token> tokens = cursor.before();
        StringBuilder name = new StringBuilder();
        for (int i = tokens.size() - 1;
                i >= 0 && !tokens.get(i).is("import") && !tokens.get(i).is("static");
                i--) {
            name.insert(0, tokens.get(i).text());
        }
        String folder = name.toString().replaceFirst("\\.$", "");
        return Stream.concat(
                TypeNames.packagesUnder(folder).stream().map(each -> new Candidate(each, "keyword", "package")),
                TypeNames.inPackage(folder).stream().map(each -> new Candidate(each, "keyword", "class")));
    }

    private Stream<Candidate> members(Cursor cursor) {
        List<Token> owner = cursor.before().subList(0, cursor.before().size() - 1);
        return new Typing(scope).of(owner).stream().flatMap(known -> members(known, cursor));
    }

    private static Stream<Candidate> members(Typing.Known known, Cursor cursor) {
        if (Number.class.isAssignableFrom(known.type()) && !known.named()) {
            return Stream.concat(UnitNames.at(cursor.call()), Members.of(known.type(), false).stream());
        }
        Stream<Candidate> keys = known.value() instanceof Map<?, ?> map && Safe.isOfJdk(map)
                ? Safe.keys(map).stream().map(key -> new Candidate(key, "property", "entry of the map"))
                : Stream.empty();
        return Stream.concat(keys, Members.of(known.type(), known.named()).stream());
    }

    private static Stream<Candidate> choices(Cursor cursor) {
        return cursor.call().filter(Call::atArgument).stream()
                .flatMap(call -> Vocabulary.all().word(call.name()).stream()
                        .flatMap(word -> word.choices().stream())
                        .filter(choice -> !call.choices().contains(nameOf(choice)))
                        .map(choice -> new Candidate(
                                nameOf(choice) + ": ",
                                "choice",
                                choice.substring(choice.indexOf(':') + 1).strip())));
    }

    private static String nameOf(String choice) {
        return choice.split(":", 2)[0].strip();
    }

    private Stream<Candidate> names(Cursor cursor, String code) {
        List<Candidate> all = new ArrayList<>();
        scope.variables()
                .forEach((name, value) -> all.add(new Candidate(
                        name,
                        "variable",
                        value == null ? "null" : value.getClass().getSimpleName())));
        scope.methods().forEach((name, parameters) -> all.add(new Candidate(name, "method", name + parameters)));
        if (java) {
            JavaNames.words().forEach(all::add);
        } else {
            Vocabulary.all()
                    .words()
                    .forEach(word -> all.add(
                            new Candidate(word.name(), "word", word.signatures().get(0))));
        }
        written(code, cursor).forEach(name -> all.add(new Candidate(name, "variable", "")));
        if (!cursor.prefix().isEmpty()) {
            scope.types().forEach((name, full) -> all.add(new Candidate(name, "keyword", full)));
            if (Character.isUpperCase(cursor.prefix().charAt(0))) {
                scope.openPackages()
                        .forEach(each -> TypeNames.inPackage(each.substring(0, each.length() - 1))
                                .forEach(name -> all.add(new Candidate(name, "keyword", each + name))));
            }
            (java ? JavaNames.KEYWORDS : KEYWORDS).forEach(each -> all.add(new Candidate(each, "keyword", "")));
            if (java) {
                JavaNames.units().forEach(all::add);
            }
        }
        return all.stream();
    }

    /** Names that stand elsewhere in the cell, such as those of variables that it has not assigned yet. */
    private static Stream<String> written(String code, Cursor cursor) {
        List<Token> tokens = Tokens.of(code);
        return IntStream.range(0, tokens.size())
                .filter(i -> tokens.get(i).kind() == Kind.WORD
                        && tokens.get(i).start() != cursor.start()
                        && (i == 0 || !tokens.get(i - 1).is(".")))
                .mapToObj(i -> tokens.get(i).text())
                .filter(name -> name.length() > 1 && !KEYWORDS.contains(name));
    }
}
