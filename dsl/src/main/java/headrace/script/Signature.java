package headrace.script;

import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Writes how a word is called: the arguments by their names, the choices last, as their user writes them. */
final class Signature {
    private Signature() {}

    static String of(Method method) {
        List<String> arguments = new ArrayList<>();
        boolean choices = false;
        for (Parameter parameter : method.getParameters()) {
            if (Map.class.isAssignableFrom(parameter.getType())) {
                choices = true;
            } else {
                arguments.add(parameter.isVarArgs() ? parameter.getName() + "…" : parameter.getName());
            }
        }
        if (choices) {
            arguments.add("choices…");
        }
        return method.getName() + "(" + String.join(", ", arguments) + ")";
    }
}
