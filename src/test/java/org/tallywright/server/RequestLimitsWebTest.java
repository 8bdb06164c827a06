package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.tallywright.AppTest;

@AppTest
class RequestLimitsWebTest {
    private static final int MEGABYTE = 1 << 20;

    @LocalServerPort
    int port;

    @Test
    void answersAFormOfTenMegabytesWithTooLarge() throws Exception {
        HttpResponse<String> answer = post("name=" + "x".repeat(10 * MEGABYTE));
        assertThat(answer.statusCode()).isEqualTo(413);
        assertThat(answer.body()).doesNotContain("Exception", "org.apache", "at org.");
    }

    @Test
    void answersThousandsOfFieldsWithARefusal() throws Exception {
        HttpResponse<String> answer = post("a=1&".repeat(5000));
        assertThat(answer.statusCode()).isBetween(400, 499);
    }

    private HttpResponse<String> post(String form) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/sign-in"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .timeout(Duration.ofSeconds(30))
                .POST(BodyPublishers.ofString(form))
                .build();
        return HttpClient.newHttpClient().send(request, BodyHandlers.ofString());
    }
}
