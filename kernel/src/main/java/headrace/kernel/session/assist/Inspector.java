package headrace.kernel.session.assist;

import headrace.kernel.display.Display;
import headrace.kernel.display.Html;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.session.Language;
import headrace.kernel.session.assist.Cursor.Call;
import headrace.kernel.session.source.Token;
import headrace.script.Vocabulary;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Explains what stands at the cursor, or the word in whose parentheses it stands. */
public final class Inspector {
    private static final int FEW_LINES = 12;
    private static final int MANY_LINES = 400;

    private final Scope scope;
    private final boolean java;

    /** Creates an inspector over what a cell of a language could name. */
    public Inspector(Scope scope, Language language) {
        this.scope = scope;
        java = language == Language.JAVA;
    }

    /**
     * Explains what stands at a place in a text.
     *
     * @param detail 0 for a few lines, 1 for all there is to say
     */
    public Optional<MimeBundle> at(String code, int place, int detail) {
        int end = Math.min(Math.max(0, place), code.length());
        while (end < code.length() && Character.isJavaIdentifierPart(code.charAt(end))) {
            end++;
        }
        Cursor cursor = new Cursor(code, end);
        if (cursor.inComment() || cursor.string().isPresent() && cursor.call().isEmpty()) {
            return Optional.empty();
        }
        String name = cursor.prefix();
        Optional<Call> call = cursor.call();
        if (name.isEmpty() || cursor.string().isPresent()) {
            return call.flatMap(each -> word(each.name()));
        }
        if (cursor.follows(".") || cursor.follows("?.")) {
            return member(cursor, name);
        }
        boolean choice = code.substring(end).stripLeading().startsWith(java ? "(" : ":") && call.isPresent();
        return (choice ? choice(call.get(), name) : Optional.<MimeBundle>empty())
                .or(() -> variable(name, detail))
                .or(() -> method(name))
                .or(() -> word(name))
                .or(() -> java ? unit(name) : Optional.empty())
                .or(() -> scope.type(name).map(Inspector::type))
                .or(() -> call.flatMap(each -> word(each.name())));
    }

    private Optional<MimeBundle> word(String name) {
        return Vocabulary.all().word(name).map(word -> new WordPage(word, java).bundle());
    }

    private static Optional<MimeBundle> choice(Call call, String name) {
        return Vocabulary.all().word(call.name()).stream()
                .flatMap(word -> word.choices().stream())
                .filter(choice -> choice.split(":", 2)[0].strip().equals(name))
                .findFirst()
                .map(each -> plain(WordPage.wrapped(each)));
    }

    private Optional<MimeBundle> variable(String name, int detail) {
        if (!scope.variables().containsKey(name)) {
            return Optional.empty();
        }
        Object value = scope.variables().get(name);
        if (value == null) {
            return Optional.of(plain(name + " = null"));
        }
        List<String> lines = new ArrayList<>(text(value).lines().toList());
        int most = detail == 0 ? FEW_LINES : MANY_LINES;
        if (lines.size() > most) {
            lines.subList(most, lines.size()).clear();
            lines.add("…");
        }
        String between = lines.size() > 1 ? " =\n" : " = ";
        return Optional.of(plain(name + ": " + value.getClass().getSimpleName() + between + String.join("\n", lines)));
    }

    private static String text(Object value) {
        try {
            return Safe.isTold(value) ? Display.of(value).text() : "(shown when a cell shows it)";
        } catch (RuntimeException e) {
            return "(being changed by the running cell)";
        }
    }

    private Optional<MimeBundle> method(String name) {
        return Optional.ofNullable(scope.methods().get(name))
                .map(parameters -> plain(name + parameters + "\n    A method of this session."));
    }

    private Optional<MimeBundle> member(Cursor cursor, String name) {
        List<Token> owner = cursor.before().subList(0, cursor.before().size() - 1);
        return new Typing(scope).of(owner).flatMap(known -> {
            if (Number.class.isAssignableFrom(known.type())) {
                Optional<MimeBundle> unit = unit(name);
                if (unit.isPresent()) {
                    return unit;
                }
            }
            List<String> signatures = Members.signatures(known.type(), name);
            String from = known.type().getSimpleName();
            return signatures.isEmpty()
                    ? Members.of(known.type(), known.named()).stream()
                            .filter(each -> each.text().equals(name))
                            .findFirst()
                            .map(each -> plain(from + "." + name + ": " + each.signature()))
                    : Optional.of(plain(from + "\n    " + String.join("\n    ", signatures)));
        });
    }

    private Optional<MimeBundle> unit(String name) {
        return Vocabulary.all().unitWords().stream()
                .filter(word -> word.unit().word().equals(name))
                .findFirst()
                .map(word -> plain((java ? name + "(1)" : "1." + name) + " is a "
                        + word.kind().name() + " of 1 " + word.unit().symbol()));
    }

    private static MimeBundle type(Class<?> type) {
        List<String> lines = new ArrayList<>(List.of((type.isInterface() ? "interface " : "class ") + type.getName()));
        Stream.of(type.getConstructors())
                .filter(each -> Modifier.isPublic(each.getModifiers()))
                .map(each -> "    new " + type.getSimpleName()
                        + Stream.of(each.getParameterTypes())
                                .map(Class::getSimpleName)
                                .toList()
                                .toString()
                                .replace('[', '(')
                                .replace(']', ')'))
                .sorted()
                .forEach(lines::add);
        return plain(String.join("\n", lines));
    }

    private static MimeBundle plain(String text) {
        return bundle(text, element("pre", Html.escape(text)));
    }

    private static MimeBundle bundle(String text, String html) {
        return new MimeBundle(Map.of("text/plain", text, "text/html", html));
    }

    private static String element(String name, String html) {
        return "<" + name + ">" + html + "</" + name + ">";
    }
}
