package headrace.kernel.install;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;

/**
 * What a front end must know to start this kernel.
 *
 * <p>Source: documentation of the Jupyter client, “Kernel specs”.
 *
 * @param command the program and its arguments, each for itself, so that none needs quotes; the front end puts a file
 *     in place of {@code {connection_file}}
 * @param language the name of the language of its cells
 */
record Description(List<String> command, String language) {
    /** Returns the description as front ends read it. */
    String json() {
        StringWriter text = new StringWriter();
        try (JsonWriter out = new JsonWriter(text)) {
            out.setIndent(" ");
            out.beginObject();
            out.name("argv").beginArray();
            for (String argument : command) {
                out.value(argument);
            }
            out.endArray();
            out.name("display_name").value("Headrace (" + language + ")");
            out.name("language").value(language.toLowerCase(Locale.ROOT));
            // a signal would end the process, a message stops the cell
            out.name("interrupt_mode").value("message");
            out.name("metadata").beginObject();
            out.name("supported_encryption").beginArray().value("curve").endArray();
            out.name("debugger").value(false);
            out.endObject().endObject();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text + "\n";
    }
}
