package headrace.kernel.session.java;

import groovy.lang.Closure;
import headrace.kernel.session.cell.CellCompiler;
import headrace.kernel.session.cell.Handover;
import headrace.kernel.session.cell.Variables;
import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Tokens;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.lang.model.SourceVersion;
import jdk.jshell.JShell;
import jdk.jshell.MethodSnippet;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.TypeDeclSnippet;
import jdk.jshell.VarSnippet;
import org.codehaus.groovy.runtime.MethodClosure;

/** What the two languages of a session have in common: each variable, method and class is one thing under one name. */
final class Shared {
    private final JShell shell;
    private final LiveClasses classes;
    private final Variables variables;
    private final CellCompiler groovy;
    private final Handover handover;
    private final Map<String, JavaVariable> places = new ConcurrentHashMap<>();
    private final Map<String, Map<String, Class<?>>> methods = new ConcurrentHashMap<>();
    private final Map<String, Closure<?>> brought = new HashMap<>();

    Shared(JShell shell, LiveClasses classes, Variables variables, CellCompiler groovy) {
        this.shell = shell;
        this.classes = classes;
        this.variables = variables;
        this.groovy = groovy;
        handover = Handover.between(variables);
    }

    /** What the variables of Java cells held at one time. */
    record Held(Map<String, Object> values, Map<String, JavaVariable> places) {}

    Held held() {
        Map<String, Object> values = new LinkedHashMap<>();
        places.forEach((name, place) -> values.put(name, place.value()));
        return new Held(values, Map.copyOf(places));
    }

    /** Declares in Java what Groovy cells have left behind and a text speaks of. */
    void bring(String code) {
        Set<String> names = Tokens.of(code).stream()
                .filter(token -> token.kind() == Token.Kind.WORD)
                .map(Token::text)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        names.addAll(places.keySet()); // a method of an earlier cell may speak of one that has changed its type since
        Map<String, Object> values = variables.values();
        for (String name : names) {
            if (!SourceVersion.isName(name)) {
                continue;
            }
            JavaVariable place = places.get(name);
            boolean led = place != null && variables.isLedTo(name, place);
            if (!led && values.containsKey(name)) {
                declare(name, values.get(name));
            }
            Closure<?> method = variables.method(name);
            if (method instanceof MethodClosure && brought.get(name) != method) {
                declare(name, (MethodClosure) method);
            }
        }
    }

    private void declare(String name, Object value) {
        Class<?> declared = variables.declared(name);
        String type = declared == null ? TypeText.of(value) : TypeText.of(declared);
        handover.give(value);
        List<SnippetEvent> events = shell.eval(type + " " + name + " = (" + type + ") " + handover.taking() + ";");
        for (SnippetEvent event : events) {
            if (event.causeSnippet() == null
                    && event.status() == Status.VALID
                    && event.snippet() instanceof VarSnippet variable) {
                lead(variable, declared != null);
            }
        }
    }

    private void declare(String name, MethodClosure method) {
        shell.methods().filter(each -> each.name().equals(name)).toList().forEach(shell::drop);
        methods.remove(name);
        for (Method each : method.getOwner().getClass().getDeclaredMethods()) {
            if (each.getName().equals(name) && !each.isSynthetic()) {
                shell.eval(stub(each));
            }
        }
        brought.put(name, method);
    }

    /** Returns a Java method that calls one of Groovy, with its types as far as Java can name them. */
    private String stub(Method method) {
        Class<?>[] types = method.getParameterTypes();
        String parameters = IntStream.range(0, types.length)
                .mapToObj(i -> TypeText.of(types[i]) + " " + method.getParameters()[i].getName())
                .collect(Collectors.joining(", ", "(", ")"));
        String arguments = Arrays.stream(method.getParameters())
                .map(each -> ", " + each.getName())
                .collect(Collectors.joining("", handover.calling(method.getName()), ")"));
        boolean nothing = method.getReturnType() == void.class;
        String type = nothing ? "void" : TypeText.of(method.getReturnType());
        String body = nothing ? arguments : "return (" + type + ") " + arguments;
        return type + " " + method.getName() + parameters + " { " + body + "; }";
    }

    /** Takes notice of what a piece of a Java cell has defined. */
    void learn(List<SnippetEvent> events) {
        for (SnippetEvent event : events) {
            Snippet snippet = event.snippet();
            boolean defined = event.status() == Status.VALID || event.status() == Status.RECOVERABLE_DEFINED;
            if (!defined || snippet.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND) {
                continue;
            }
            if (snippet instanceof VarSnippet variable) {
                lead(variable, !variable.source().strip().startsWith("var "));
            } else if (snippet instanceof MethodSnippet method) {
                learn(method);
            } else if (snippet instanceof TypeDeclSnippet type) {
                groovy.know(type.name(), holder(snippet) + "$" + type.name());
            }
        }
    }

    private void learn(MethodSnippet method) {
        Map<String, Class<?>> forms = methods.computeIfAbsent(method.name(), name -> new ConcurrentHashMap<>());
        load(holder(method)).ifPresent(type -> forms.put(method.parameterTypes(), type));
        brought.remove(method.name());
        variables.keep(method.name(), new JavaMethod(method.name(), () -> List.copyOf(forms.values())));
    }

    private void lead(VarSnippet variable, boolean typed) {
        Optional<Class<?>> holder = load(holder(variable));
        if (holder.isEmpty()) {
            return;
        }
        try {
            Field field = holder.get().getDeclaredField(variable.name());
            field.setAccessible(true);
            JavaVariable place = new JavaVariable(field, typed);
            places.put(variable.name(), place);
            variables.lead(variable.name(), place);
        } catch (NoSuchFieldException e) {
            throw new IllegalStateException("The shell makes a field for " + variable.name(), e);
        }
    }

    private String holder(Snippet snippet) {
        return shell.sourceCodeAnalysis().wrapper(snippet).fullClassName();
    }

    private Optional<Class<?>> load(String name) {
        try {
            return Optional.of(Class.forName(name, false, classes));
        } catch (ClassNotFoundException | LinkageError e) {
            return Optional.empty();
        }
    }

    /**
     * Gives variables back what they held, where a definition made them anew and their type allows it.
     *
     * @return a sentence about each that has lost it
     */
    List<String> lost(List<SnippetEvent> events, Held before) {
        List<String> sentences = new ArrayList<>();
        String cause = events.stream()
                .filter(event -> event.causeSnippet() == null)
                .map(event -> nameOf(event.snippet()))
                .findFirst()
                .orElse("");
        for (SnippetEvent event : events) {
            if (event.causeSnippet() == null || !(event.snippet() instanceof VarSnippet variable)) {
                continue;
            }
            String name = variable.name();
            Object held = before.values().get(name);
            JavaVariable now = event.status() == Status.VALID ? places.get(name) : null;
            if (now == null) {
                places.remove(name);
                variables.removeVariable(name);
            }
            boolean keeps = now != null && (held == null || now.hold(held));
            if (!keeps && before.places().containsKey(name) && event.previousStatus() == Status.VALID) {
                sentences.add("The variable " + name + " was reset, since " + cause
                        + " was defined anew and the variable held one of the old. Run the line again that made it.");
            }
        }
        return sentences;
    }

    /** Returns the name of what a snippet defines, as the user knows it. */
    static String nameOf(Snippet snippet) {
        if (snippet instanceof MethodSnippet method) {
            return "The method " + method.name();
        }
        if (snippet instanceof TypeDeclSnippet type) {
            return "the class " + type.name();
        }
        return snippet instanceof VarSnippet variable ? "the variable " + variable.name() : "the cell";
    }

    void end() {
        handover.end();
    }
}
