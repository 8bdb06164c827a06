package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.tallywright.AppTest;

/** Asked over a bare socket: no client of ours would send such addresses. */
@AppTest
class RefusalPageWebTest {
    @LocalServerPort
    int port;

    @ParameterizedTest
    @ValueSource(strings = {"/jobs/%00", "/jobs/a%2Fb", "/c/%zz", "/jobs/%5C", "/jobs/[26]", "/jobs/<b>"})
    void answersAnAddressThatTheWebServerRefusesWithAPageOfOurs(String address) throws Exception {
        String answer = ask("GET " + address + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        assertThat(answer)
                .startsWith("HTTP/1.1 400")
                .contains("This server cannot read that address.", "To the first page", "default-src 'none'")
                .doesNotContain("Exception", "Tomcat", "apache", "HTTP Status", "<b>");
    }

    @Test
    void leavesPagesOfTheApplicationAlone() throws Exception {
        assertThat(ask("GET /no-such-page HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"))
                .doesNotContain("cannot read that address");
    }

    private String ask(String request) throws IOException {
        try (Socket socket = new Socket("localhost", port)) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
