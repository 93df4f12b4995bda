package headrace.kernel.session.source;

import headrace.kernel.session.source.Token.Kind;
import headrace.script.Vocabulary;
import headrace.script.java.JavaWords;
import headrace.units.Money;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Writes a line of Groovy, such as the example of a word, as Java says the same. What has no counterpart, such as a
 * block, stays as it is.
 */
public final class JavaForm {
    private final List<Token> tokens;
    private final Set<String> unnamed = JavaWords.unnamedChoices();
    private int at;

    private JavaForm(List<Token> tokens) {
        this.tokens = tokens;
    }

    /** Returns a line of Groovy in Java, or the line itself where Java cannot say it alike. */
    public static String of(String groovy) {
        List<Token> tokens = Tokens.of(groovy);
        if (tokens.stream().anyMatch(token -> token.is("{") || !token.closed())) {
            return groovy + " (in Groovy)";
        }
        JavaForm form = new JavaForm(tokens);
        StringBuilder text = new StringBuilder();
        if (tokens.size() > 1
                && tokens.get(0).kind() == Kind.WORD
                && tokens.get(1).is("=")) {
            text.append("var ").append(tokens.get(0).text()).append(" = ");
            form.at = 2;
        }
        while (form.at < tokens.size()) {
            text.append(form.expression());
            if (form.at < tokens.size()) {
                text.append(form.next().text());
            }
        }
        return text.toString();
    }

    private Token next() {
        return tokens.get(at++);
    }

    private boolean is(String text) {
        return at < tokens.size() && tokens.get(at).is(text);
    }

    /** Reads an expression up to a comma, a colon or a bracket that closes. */
    private String expression() {
        StringBuilder text = new StringBuilder();
        while (at < tokens.size() && !is(",") && !is(":") && tokens.get(at).kind() != Kind.CLOSE) {
            text.append(part(text.isEmpty()));
        }
        return text.toString();
    }

    private String part(boolean first) {
        Token token = next();
        if (first && token.is("-") && at < tokens.size() && tokens.get(at).kind() == Kind.NUMBER) {
            return number("-" + next().text());
        }
        return switch (token.kind()) {
            case NUMBER -> number(token.text());
            case STRING, LONG_STRING -> text(token.text());
            case WORD -> word(token);
            case OPEN -> token.is("[") ? list() : "(" + arguments() + ")";
            case OPERATOR -> token.is(".") ? "." : " " + token.text() + " ";
            default -> token.text();
        };
    }

    /** Returns a number with the unit that follows it. */
    private String number(String number) {
        String text = number;
        while (is(".") && at + 1 < tokens.size() && isUnit(tokens.get(at + 1).text())) {
            at++;
            text = next().text() + "(" + text + ")";
        }
        return text;
    }

    private static boolean isUnit(String word) {
        return word.equals("perKWh")
                || Money.CURRENCIES.contains(word)
                || Vocabulary.all().unitWords().stream()
                        .anyMatch(each -> each.unit().word().equals(word));
    }

    private static String text(String quoted) {
        int marks = quoted.startsWith("'''") || quoted.startsWith("\"\"\"") ? 3 : 1;
        return '"' + quoted.substring(marks, quoted.length() - marks).replace("\"", "\\\"") + '"';
    }

    private String word(Token token) {
        String name = token.text();
        if (is("(")) {
            at++;
            return name + "(" + arguments() + ")";
        }
        boolean member = at > 1 && tokens.get(at - 2).is(".");
        boolean noun = !member
                && Vocabulary.all().word(name).stream()
                        .flatMap(word -> word.methods().stream())
                        .anyMatch(method -> method.getParameterCount() == 0);
        return noun ? name + "()" : name;
    }

    /** Reads arguments up to their bracket; those by name come last. */
    private String arguments() {
        List<String> plain = new ArrayList<>();
        List<String> named = new ArrayList<>();
        while (at < tokens.size() && !is(")")) {
            if (tokens.get(at).kind() == Kind.WORD
                    && at + 1 < tokens.size()
                    && tokens.get(at + 1).is(":")) {
                String name = next().text();
                at++;
                String value = expression();
                boolean list = value.startsWith("List.of(") && !unnamed.contains(name) && value.contains(", ");
                named.add(
                        unnamed.contains(name)
                                ? "choice(\"" + name + "\", " + value + ")"
                                : name + "(" + (list ? value.substring(8, value.length() - 1) : value) + ")");
            } else {
                plain.add(expression());
            }
            if (is(",") || is(":")) {
                at++;
            }
        }
        at++;
        plain.addAll(named);
        return String.join(", ", plain);
    }

    private String list() {
        List<String> parts = new ArrayList<>();
        boolean map = false;
        while (at < tokens.size() && !is("]")) {
            boolean key = tokens.get(at).kind() == Kind.WORD
                    && at + 1 < tokens.size()
                    && tokens.get(at + 1).is(":");
            if (key) {
                map = true;
                parts.add('"' + next().text() + '"');
                at++;
            }
            parts.add(expression());
            if (is(",")) {
                at++;
            } else if (is(":")) {
                map = true;
                at++;
            }
        }
        at++;
        boolean copies = !map && parts.size() == 1 && is("*") && at + 1 < tokens.size();
        if (copies && tokens.get(at + 1).kind() == Kind.NUMBER) {
            at += 2;
            return "Collections.nCopies(" + tokens.get(at - 1).text() + ", " + parts.get(0) + ")";
        }
        return (map ? "Map.of(" : "List.of(") + String.join(", ", parts) + ")";
    }
}
