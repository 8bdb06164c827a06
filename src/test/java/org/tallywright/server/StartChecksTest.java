package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.Base64;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.mock.env.MockEnvironment;

class StartChecksTest {
    @TempDir
    Path folder;

    @Test
    void refusesATakenPort() throws Exception {
        try (ServerSocket other = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            MockEnvironment environment = at("127.0.0.1", other.getLocalPort());
            assertThatThrownBy(() -> check(environment))
                    .isInstanceOf(StartRefused.class)
                    .hasMessageStartingWith("Port " + other.getLocalPort() + " is taken by another program");
        }
    }

    @Test
    void letsAFreePortPassAndGivesItBack() throws Exception {
        int free;
        try (ServerSocket socket = new ServerSocket(0)) {
            free = socket.getLocalPort();
        }
        assertThatCode(() -> {
                    check(at("127.0.0.1", free));
                    check(at("0.0.0.0", free));
                    check(at("", 0));
                })
                .doesNotThrowAnyException();
    }

    @Test
    void refusesAnAddressOfAnotherMachineAndAPortThatIsNone() {
        assertThatThrownBy(() -> check(at("192.0.2.1", 8080)))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("\"192.0.2.1\" is no address of this machine");
        assertThatThrownBy(() -> check(new MockEnvironment().withProperty("server.port", "eighty")))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("\"eighty\"");
        assertThatThrownBy(() -> check(at("", 70_000))).isInstanceOf(StartRefused.class);
    }

    @Test
    void takesACertificateWithItsKey() throws Exception {
        Pair pair = pair("one");
        assertThatCode(() -> check(with(pair.certificate(), pair.key()))).doesNotThrowAnyException();
    }

    @Test
    void saysWhichFileOfACertificateIsNotThere() throws Exception {
        Pair pair = pair("one");
        assertThatThrownBy(() -> check(with("/no/such/cert.pem", pair.key())))
                .isInstanceOf(StartRefused.class)
                .hasMessage("The certificate file /no/such/cert.pem is not there or cannot be read;"
                        + " correct SERVER_SSL_CERTIFICATE.");
        assertThatThrownBy(() -> check(with(pair.certificate(), folder.toString())))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("SERVER_SSL_CERTIFICATE_PRIVATE_KEY");
        assertThatThrownBy(() -> check(with(pair.certificate(), null)))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("belong together");
    }

    @Test
    void saysWhatIsNoPemAndWhatDoesNotBelongTogether() throws Exception {
        Pair pair = pair("one");
        String text =
                Files.writeString(folder.resolve("notes.txt"), "oak, 12 lf").toString();
        assertThatThrownBy(() -> check(with(text, pair.key())))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("The certificate in " + text + " cannot be read");
        assertThatThrownBy(() -> check(with(pair.certificate(), text)))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("The key in " + text + " cannot be read");
        assertThatThrownBy(() -> check(with(pair.certificate(), pair("two").key())))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("is not the one of the certificate");
    }

    private static void check(MockEnvironment environment) {
        SpringApplication application = new SpringApplication(StartChecksTest.class);
        application.setWebApplicationType(WebApplicationType.SERVLET);
        new StartChecks().postProcessEnvironment(environment, application);
    }

    private static MockEnvironment at(String address, int port) {
        return new MockEnvironment()
                .withProperty("server.address", address)
                .withProperty("server.port", String.valueOf(port));
    }

    private static MockEnvironment with(String certificate, @Nullable String key) {
        MockEnvironment environment = at("127.0.0.1", 0).withProperty("server.ssl.certificate", certificate);
        return key == null ? environment : environment.withProperty("server.ssl.certificate-private-key", key);
    }

    private record Pair(String certificate, String key) {}

    /** As the switch for TLS makes them, written out as PEM files. */
    private Pair pair(String name) throws Exception {
        Path made = Files.createDirectories(folder.resolve(name));
        SelfSignedCertificate certificate = new SelfSignedCertificate(made);
        certificate.makeOnce();
        KeyStore store = KeyStore.getInstance("PKCS12");
        char[] password = certificate.password().toCharArray();
        try (var in = Files.newInputStream(certificate.store())) {
            store.load(in, password);
        }
        return new Pair(
                pem(
                        made.resolve("cert.pem"),
                        "CERTIFICATE",
                        store.getCertificate("tallywright").getEncoded()),
                pem(
                        made.resolve("key.pem"),
                        "PRIVATE KEY",
                        store.getKey("tallywright", password).getEncoded()));
    }

    private static String pem(Path file, String what, byte[] content) throws IOException {
        String body = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(content);
        return Files.writeString(file, "-----BEGIN " + what + "-----\n" + body + "\n-----END " + what + "-----\n")
                .toString();
    }
}
