package headrace.kernel.session.groovy;

import headrace.kernel.session.Fault;
import headrace.kernel.session.cell.Variables;
import headrace.kernel.session.groovy.CellSources.Source;
import headrace.kernel.session.java.JavaTrouble;
import headrace.kernel.session.java.JavaTrouble.Mistake;
import headrace.kernel.session.source.JavaForm;
import headrace.problem.Nearest;
import headrace.script.Vocabulary;
import headrace.script.java.JavaWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words why a Java cell did not compile: each mistake with the cell's line and a caret under the column. */
final class JavaFaults {
    private static final int MOST = 5;
    private static final Pattern SYMBOL = Pattern.compile("symbol:\\s+(\\w+) ([\\w$.]+)(\\(.*\\))?");
    private static final Pattern OWNER = Pattern.compile("location: variable \\w+ of type ([^\\n]+)");
    private static final Pattern OWNER_TYPE = Pattern.compile("location: (?:class|interface) ([\\w.$<>, ?]+)");
    private static final Pattern CALLED = Pattern.compile("(?:method|for) (\\w+)[( ]");
    private static final Pattern GIVEN = Pattern.compile("found:\\s+([^\\n]*)");
    private static final Pattern QUALIFIED = Pattern.compile("\\b(?:[a-z]\\w*\\.)+(?=[A-Z])");

    private final Variables variables;
    private final Set<String> types;

    /**
     * Creates the wording.
     *
     * @param types the names of classes that a cell may use, for what is misspelt
     */
    JavaFaults(Variables variables, Set<String> types) {
        this.variables = variables;
        this.types = types;
    }

    Fault of(JavaTrouble trouble, Source source) {
        List<String> lines = new ArrayList<>();
        trouble.mistakes().stream().limit(MOST).forEach(mistake -> {
            lines.addAll(text(mistake).lines().toList());
            lines.addAll(source.shown(mistake.start()));
        });
        String anchor = SessionProblem.CELL_NOT_UNDERSTOOD.anchor();
        String first = lines.get(0);
        lines.add("[" + anchor + "]");
        return new Fault(anchor, first, lines);
    }

    private String text(Mistake mistake) {
        String message = mistake.message();
        if (mistake.code().startsWith("compiler.err.cant.resolve")) {
            return unknown(message).orElse(plain(message));
        }
        if (mistake.code().startsWith("compiler.err.cant.apply")) {
            return wrongArguments(message).orElse(plain(message));
        }
        return plain(message);
    }

    private Optional<String> unknown(String message) {
        Matcher symbol = SYMBOL.matcher(message);
        if (!symbol.find()) {
            return Optional.empty();
        }
        String kind = symbol.group(1);
        String name = symbol.group(2);
        Matcher owner = OWNER.matcher(message);
        Matcher type = OWNER_TYPE.matcher(message);
        boolean member = owner.find() || type.find() && !type.group(1).isBlank();
        if (member) {
            String of =
                    bare(owner.reset().find() ? owner.group(1) : type.group(1)).strip();
            return Optional.of(of + " has nothing called '" + name + "'. "
                    + Nearest.sentence(Nearest.to(name, members(message)), "Look it up with Tab behind the dot") + ".");
        }
        if (kind.equals("class")) {
            return Optional.of("There is no class '" + name + "'. "
                    + Nearest.sentence(Nearest.to(name, types), "Import it, or define it in a cell") + ".");
        }
        Set<String> names = new TreeSet<>(variables.names());
        names.addAll(JavaWords.names());
        String help = kind.equals("variable") && Vocabulary.all().word(name).isPresent()
                ? "It is a word, and Java calls it with parentheses: " + name + "(...)"
                : Nearest.sentence(Nearest.to(name, names), "help() lists the words");
        return Optional.of("The cell says '" + name + "'. No word and no variable has that name"
                + (help.startsWith("It is") ? " alone" : "") + ". " + help + ".");
    }

    /** Returns what the variable, on whose type something is missing, can be asked. */
    private Set<String> members(String message) {
        Set<String> names = new TreeSet<>();
        Matcher variable = Pattern.compile("location: variable (\\w+) ").matcher(message);
        Object value = variable.find() ? variables.values().get(variable.group(1)) : null;
        if (value != null) {
            Arrays.stream(value.getClass().getMethods()).forEach(each -> names.add(each.getName()));
        }
        return names;
    }

    private static Optional<String> wrongArguments(String message) {
        Matcher called = CALLED.matcher(message);
        if (!called.find()) {
            return Optional.empty();
        }
        Matcher given = GIVEN.matcher(message);
        String what = given.find() ? bare(given.group(1)) : between(message);
        return Vocabulary.all()
                .word(called.group(1))
                .map(word -> "The word " + word.name() + " was given "
                        + (what.isBlank() || what.equals("no arguments") ? "nothing" : what) + ". It is used as "
                        + Nearest.either(word.signatures()) + ". An example: " + JavaForm.of(word.example()) + ".");
    }

    /** Returns what stands in the parentheses of the call in {@code no suitable method found for m(int)}. */
    private static String between(String message) {
        Matcher call = Pattern.compile("for \\w+\\(([^\\n]*)\\)").matcher(message);
        return call.find() ? bare(call.group(1)) : "";
    }

    private static String plain(String message) {
        String first = bare(message.lines().findFirst().orElse("The cell does not compile"));
        return Character.toUpperCase(first.charAt(0)) + first.substring(1);
    }

    private static String bare(String text) {
        return QUALIFIED.matcher(CellSources.bare(text)).replaceAll("");
    }
}
