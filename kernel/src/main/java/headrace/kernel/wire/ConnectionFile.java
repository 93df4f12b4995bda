package headrace.kernel.wire;

import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where a front end wants the kernel to listen, and the secret that they share.
 *
 * <p>Source: Jupyter messaging protocol 5.5, “Connection files”. Fields that this kernel does not know are passed over.
 *
 * @param address the address of every socket, without its port
 * @param ports the ports
 * @param signature the signature that the secret makes
 * @param curve the keys of an encrypted connection, or empty
 */
public record ConnectionFile(String address, Ports ports, Signature signature, Curve curve) {
    private static final int Z85_KEY = 40;

    /** The ports of the five channels. */
    public record Ports(int shell, int iopub, int stdin, int control, int heartbeat) {}

    /**
     * The kernel's own pair of keys for an encrypted connection, in Z85; both empty where none is wanted.
     *
     * @param publicKey what every front end knows
     * @param secretKey what only this kernel knows
     */
    public record Curve(String publicKey, String secretKey) {
        /** Returns whether the connection is to be encrypted. */
        public boolean wanted() {
            return !publicKey.isEmpty();
        }

        /** Says nothing of the secret. */
        @Override
        public String toString() {
            return wanted() ? "encrypted" : "plain";
        }
    }

    /** Reads a connection file. */
    public static ConnectionFile read(Path file) {
        try {
            return of(new Fields(Json.object(Files.readAllBytes(file))));
        } catch (IOException | IllegalArgumentException | StackOverflowError bad) {
            throw new Refusal(
                            WireProblem.UNREADABLE_CONNECTION_FILE,
                            "The kernel was asked to listen where the connection file says, but that is missing or is"
                                    + " no connection file (" + bad.getMessage() + ")",
                            "A connection file is written by a notebook front end when it starts a kernel",
                            "Open a notebook and choose the kernel there, rather than starting it by hand")
                    .at(Place.of(file.toString()));
        }
    }

    private static ConnectionFile of(Fields fields) {
        String transport = fields.text("transport", "tcp");
        if (!transport.equals("tcp")) {
            throw new Refusal(
                    WireProblem.UNSUPPORTED_TRANSPORT,
                    "The front end asks for the transport " + transport,
                    "This kernel speaks tcp only",
                    "Let the front end start its kernels with the transport tcp, which is its default");
        }
        Ports ports = new Ports(
                port(fields, "shell_port"),
                port(fields, "iopub_port"),
                port(fields, "stdin_port"),
                port(fields, "control_port"),
                port(fields, "hb_port"));
        Signature signature = Signature.of(fields.text("signature_scheme", "hmac-sha256"), fields.text("key", ""));
        return new ConnectionFile("tcp://" + fields.text("ip", "127.0.0.1"), ports, signature, curve(fields));
    }

    private static Curve curve(Fields fields) {
        Curve curve = new Curve(fields.text("curve_publickey", ""), fields.text("curve_secretkey", ""));
        boolean none = curve.publicKey().isEmpty() && curve.secretKey().isEmpty();
        if (!none && (curve.publicKey().length() != Z85_KEY || curve.secretKey().length() != Z85_KEY)) {
            throw new IllegalArgumentException("its pair of curve keys is none");
        }
        return curve;
    }

    private static int port(Fields fields, String name) {
        int port = fields.whole(name, -1);
        if (port < 0 || port > 65535) {
            throw new IllegalArgumentException("its field " + name + " is no port");
        }
        return port;
    }
}
