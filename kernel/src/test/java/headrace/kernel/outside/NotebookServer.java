package headrace.kernel.outside;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Debian's notebook server, for one test. */
final class NotebookServer implements AutoCloseable {
    private final int port = FreePort.next();
    private final Process process;

    /**
     * Starts a server that shows the notebooks below a folder and knows a kernel.
     *
     * @param more options of the server's
     */
    NotebookServer(Path folder, InstalledKernel kernel, Path log, String... more) {
        List<String> command = new ArrayList<>(List.of(
                "/usr/bin/jupyter-notebook",
                "--allow-root",
                "--no-browser",
                "--ip=127.0.0.1",
                "--port=" + port,
                "--port-retries=0",
                "--NotebookApp.token=",
                "--NotebookApp.password=",
                "--notebook-dir=" + folder));
        command.addAll(List.of(more));
        try {
            ProcessBuilder builder =
                    new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile());
            builder.environment().putAll(kernel.environment());
            process = builder.start();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        Browser.waitFor("the notebook server", this::answers);
    }

    static void needed() {
        Outside.needs("jupyter-notebook", Path.of("/usr/bin/jupyter-notebook"));
    }

    String address(String notebook) {
        return "http://127.0.0.1:" + port + "/notebooks/" + notebook;
    }

    /** Returns where a file is that was given to the server as a static one. */
    String staticAddress(String file) {
        return "http://127.0.0.1:" + port + "/static/" + file;
    }

    private boolean answers() {
        try {
            HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/api"))
                    .build();
            return HttpClient.newHttpClient()
                            .send(request, HttpResponse.BodyHandlers.discarding())
                            .statusCode()
                    == 200;
        } catch (IOException notYet) {
            return false;
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    @Override
    public void close() {
        process.descendants().forEach(ProcessHandle::destroy);
        process.destroy();
        try {
            process.waitFor();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }
}
