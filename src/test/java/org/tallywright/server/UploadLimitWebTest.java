package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Collections;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.tallywright.AppTest;

/** A form with files that is too large is told so, not refused for a token that was never read. */
@AppTest
class UploadLimitWebTest {
    private static final byte[] MEGABYTE = new byte[1 << 20];

    @LocalServerPort
    int port;

    @Test
    void saysThatAFileIsTooLarge() throws Exception {
        HttpResponse<String> answer = post("/rates/import/preview", 13);
        assertThat(answer.statusCode()).isEqualTo(413);
        assertThat(answer.body()).contains("more than can be sent at once").doesNotContain("Exception");
    }

    @Test
    void takesMoreOfPhotosButNotAnyNumber() throws Exception {
        assertThat(post("/jobs/26-001/photos", 20).statusCode()).isEqualTo(403);
        HttpResponse<String> answer = post("/jobs/26-001/photos", 81);
        assertThat(answer.statusCode()).isEqualTo(413);
        assertThat(answer.body()).contains("more than can be sent at once");
    }

    private HttpResponse<String> post(String path, int megabytes) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
                .header("Content-Type", "multipart/form-data; boundary=sawdust")
                .header("Accept", "text/html")
                .timeout(Duration.ofSeconds(30))
                .POST(BodyPublishers.fromPublisher(
                        BodyPublishers.ofByteArrays(Collections.nCopies(megabytes, MEGABYTE)),
                        (long) megabytes * MEGABYTE.length))
                .build();
        return HttpClient.newHttpClient().send(request, BodyHandlers.ofString());
    }
}
