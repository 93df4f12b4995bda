package headrace.kernel.outside;

import com.google.gson.Gson;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/**
 * A browser without a screen, driven over the open protocol WebDriver by Debian's chromedriver.
 *
 * <p>Source: W3C WebDriver, recommendation of 2018.
 */
final class Browser implements AutoCloseable {
    /** Ends a test whose page never comes; no figure of any kind. */
    private static final long HANGING_MILLISECONDS = 120_000;

    private static final String ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

    private final HttpClient http = HttpClient.newHttpClient();
    private final Process driver;
    private final String session;

    Browser(Path folder) {
        int port = FreePort.next();
        try {
            ProcessBuilder builder = new ProcessBuilder("/usr/bin/chromedriver", "--port=" + port)
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("chromedriver.log").toFile());
            builder.environment().put("HOME", folder.toString());
            driver = builder.start();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        String address = "http://127.0.0.1:" + port + "/session";
        waitFor("chromedriver", () -> answers("http://127.0.0.1:" + port + "/status"));
        List<String> arguments = List.of(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--window-size=1200,1100");
        Map<String, Object> options = Map.of("binary", "/usr/bin/chromium", "args", arguments);
        Map<String, Object> wanted = Map.of("alwaysMatch", Map.of("goog:chromeOptions", options));
        JsonElement made = post(address, Map.of("capabilities", wanted));
        session = address + "/" + made.getAsJsonObject().get("sessionId").getAsString();
    }

    static void needed() {
        Outside.needs("chromium", Path.of("/usr/bin/chromium"));
        Outside.needs("chromium-driver", Path.of("/usr/bin/chromedriver"));
    }

    void open(String address) {
        post(session + "/url", Map.of("url", address));
    }

    /** Runs a script in the page and returns what it returns. */
    JsonElement script(String script) {
        return post(session + "/execute/sync", Map.of("script", script, "args", List.of()));
    }

    boolean holds(String expression) {
        JsonElement value = script("return Boolean(" + expression + ");");
        return value.isJsonPrimitive() && value.getAsBoolean();
    }

    String text(String expression) {
        JsonElement value = script("return String(" + expression + ");");
        return value.getAsString();
    }

    /** Waits until an expression holds in the page. */
    void waitUntil(String expression) {
        waitFor(expression, () -> holds(expression));
    }

    void click(String selector) {
        waitUntil("document.querySelector('" + selector + "')");
        JsonObject found = post(session + "/element", Map.of("using", "css selector", "value", selector))
                .getAsJsonObject();
        post(session + "/element/" + found.get(ELEMENT).getAsString() + "/click", Map.of());
    }

    /** Presses keys one after another, at whatever has the focus; {@code \uE004} is Tab, {@code \uE008} Shift held. */
    void type(String keys) {
        List<Map<String, String>> presses = new ArrayList<>();
        boolean shift = false;
        for (char key : keys.toCharArray()) {
            presses.add(Map.of("type", "keyDown", "value", String.valueOf(key)));
            if (key == '\uE008') {
                shift = true;
                continue;
            }
            presses.add(Map.of("type", "keyUp", "value", String.valueOf(key)));
        }
        if (shift) {
            presses.add(Map.of("type", "keyUp", "value", "\uE008"));
        }
        post(
                session + "/actions",
                Map.of("actions", List.of(Map.of("type", "key", "id", "keyboard", "actions", presses))));
    }

    /** Writes what is seen to a file. */
    void screenshot(Path file) {
        try {
            Files.createDirectories(file.getParent());
            Files.write(
                    file,
                    Base64.getDecoder().decode(get(session + "/screenshot").getAsString()));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private boolean answers(String address) {
        try {
            return http.send(HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofString())
                            .statusCode()
                    == 200;
        } catch (IOException notYet) {
            return false;
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    static void waitFor(String what, BooleanSupplier condition) {
        long end = System.currentTimeMillis() + HANGING_MILLISECONDS;
        while (!condition.getAsBoolean()) {
            if (System.currentTimeMillis() > end) {
                throw new AssertionError("Never came to be: " + what);
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }
    }

    private JsonElement get(String address) {
        return send(HttpRequest.newBuilder(URI.create(address)).build());
    }

    private JsonElement post(String address, Map<String, ?> body) {
        return send(HttpRequest.newBuilder(URI.create(address))
                .header("Content-Type", "application/json; charset=utf-8")
                .POST(HttpRequest.BodyPublishers.ofString(new Gson().toJson(body)))
                .build());
    }

    private JsonElement send(HttpRequest request) {
        try {
            HttpResponse<String> response = http.send(request, HttpResponse.BodyHandlers.ofString());
            JsonObject answer = JsonParser.parseString(response.body()).getAsJsonObject();
            if (response.statusCode() != 200) {
                throw new AssertionError(request.uri() + ": " + answer);
            }
            return answer.get("value");
        } catch (IOException | InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() {
        try {
            send(HttpRequest.newBuilder(URI.create(session)).DELETE().build());
        } finally {
            driver.descendants().forEach(ProcessHandle::destroyForcibly);
            driver.destroyForcibly();
        }
    }
}
