package org.tallywright.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A key and a certificate that this machine signs itself, made once by the JDK's keytool and kept in a folder. */
final class SelfSignedCertificate {
    /** The longest life that common browsers accept for a certificate a user trusts by hand. */
    private static final int VALID_DAYS = 825;

    private final Path store;
    private final Path secret;

    SelfSignedCertificate(Path folder) {
        store = folder.resolve("tls.p12");
        secret = folder.resolve("tls-password");
    }

    Path store() {
        return store;
    }

    String password() throws IOException {
        return Files.readString(secret).strip();
    }

    void makeOnce() throws IOException {
        if (Files.exists(store) && Files.exists(secret)) {
            return;
        }
        Files.deleteIfExists(store);
        byte[] random = new byte[24];
        new SecureRandom().nextBytes(random);
        PrivateFiles.write(secret, HexFormat.of().formatHex(random));
        run(command());
    }

    private List<String> command() throws IOException {
        String tool = Path.of(System.getProperty("java.home"), "bin", "keytool").toString();
        return List.of(
                tool,
                "-genkeypair",
                "-alias",
                "tallywright",
                "-keyalg",
                "EC",
                "-groupname",
                "secp256r1",
                "-validity",
                Integer.toString(VALID_DAYS),
                "-dname",
                "CN=Tallywright",
                "-ext",
                "san=" + names(),
                "-storetype",
                "PKCS12",
                "-keystore",
                store.toString(),
                "-storepass:file",
                secret.toString());
    }

    private static String names() throws IOException {
        List<String> names = new ArrayList<>(List.of("dns:localhost"));
        String host = LocalNames.hostName();
        if (host.matches("[A-Za-z0-9]([A-Za-z0-9.-]*[A-Za-z0-9])?") && !host.equals("localhost")) {
            names.add("dns:" + host);
        }
        LocalNames.addresses().forEach(address -> names.add("ip:" + address));
        return String.join(",", names);
    }

    private static void run(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        try {
            if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
                throw new IOException("keytool failed: " + said);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while making a certificate", e);
        }
    }
}
