package org.tallywright.daylog;

import java.io.IOException;
import java.net.CookieManager;
import java.net.CookiePolicy;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;

/** A signed-in browser that sends a sheet until somebody answers, to one instance or, when that is gone, to another. */
final class Device {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final HttpClient line;
    private final String other;
    private String home;
    private String token = "";

    /** @param other where to go when the first does not answer any more */
    Device(String home, String other) {
        this.home = home;
        this.other = other;
        this.line = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .cookieHandler(new CookieManager(null, CookiePolicy.ACCEPT_ALL))
                .connectTimeout(PATIENCE)
                .build();
    }

    void signIn(String name, String password) throws IOException, InterruptedException {
        String page = line.send(request("/sign-in").GET().build(), BodyHandlers.ofString())
                .body();
        token = Objects.requireNonNull(Jsoup.parse(page).selectFirst("input[name=_csrf]"))
                .val();
        int status = post("/sign-in", Map.of("signInName", name, "password", password))
                .statusCode();
        if (status != 302) {
            throw new IOException("not signed in: " + status);
        }
        String account = line.send(request("/account").GET().build(), BodyHandlers.ofString())
                .body();
        token = Objects.requireNonNull(Jsoup.parse(account).selectFirst("input[name=_csrf]"))
                .val();
    }

    /** @return what was said against it, nothing where it was saved; a lost answer is asked for again, as a phone's queue does */
    String save(String path, Map<String, String> fields) throws InterruptedException {
        for (; ; ) {
            try {
                HttpResponse<String> answer = post(path, fields);
                if (answer.statusCode() < 500) {
                    return refusal(answer);
                }
            } catch (IOException gone) {
                home = other;
            }
        }
    }

    private static String refusal(HttpResponse<String> answer) {
        String to = answer.headers().firstValue("Location").orElse("");
        if (answer.statusCode() == 302 && !to.contains("/sign-in")) {
            return "";
        }
        return answer.statusCode() + " " + to
                + Jsoup.parse(answer.body())
                        .select(".error, .summary, .ask, main > p")
                        .text();
    }

    private HttpResponse<String> post(String path, Map<String, String> fields)
            throws IOException, InterruptedException {
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.put("_csrf", token);
        String body = all.entrySet().stream()
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return line.send(
                request(path)
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(BodyPublishers.ofString(body))
                        .build(),
                BodyHandlers.ofString());
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create(home + path)).timeout(PATIENCE).header("Accept", "text/html");
    }
}
