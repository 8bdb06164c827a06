package org.tallywright.bench.pages;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.HttpURLConnection;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;

/** One signed-in person with a kept connection, as a browser has it; the answer is read to its end. */
final class Visitor {
    private final String home;
    private final Map<String, String> cookies = new LinkedHashMap<>();
    private String token = "";

    Visitor(String home) {
        this.home = home;
    }

    /** Signs in by the form, and keeps the form token for later saves. */
    Visitor signIn(String name, String password) throws IOException {
        readToken("/sign-in");
        expect(post("/sign-in", Map.of("signInName", name, "password", password)), 302, "/sign-in");
        readToken("/account");
        return this;
    }

    private void readToken(String path) throws IOException {
        HttpURLConnection line = open(path, false);
        line.setRequestProperty("Accept-Encoding", "identity");
        String page = new String(line.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        expect(line.getResponseCode(), 200, path);
        keepCookies(line);
        token = Objects.requireNonNull(Jsoup.parse(page).selectFirst("input[name=_csrf]"), "form token")
                .val();
    }

    void get(String path) throws IOException {
        HttpURLConnection line = open(path, true);
        drain(line);
        expect(line.getResponseCode(), 200, path);
    }

    void save(String path, Map<String, String> fields) throws IOException {
        expect(post(path, fields), 302, path);
    }

    private int post(String path, Map<String, String> fields) throws IOException {
        HttpURLConnection line = open(path, true);
        line.setRequestMethod("POST");
        line.setDoOutput(true);
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.put("_csrf", token);
        byte[] body = all.entrySet().stream()
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"))
                .getBytes(StandardCharsets.UTF_8);
        line.setFixedLengthStreamingMode(body.length);
        line.setRequestProperty("Content-Type", "application/x-www-form-urlencoded");
        try (OutputStream out = line.getOutputStream()) {
            out.write(body);
        }
        drain(line);
        keepCookies(line);
        return line.getResponseCode();
    }

    private HttpURLConnection open(String path, boolean gzip) throws IOException {
        HttpURLConnection line =
                (HttpURLConnection) URI.create(home + path).toURL().openConnection();
        line.setInstanceFollowRedirects(false);
        line.setUseCaches(false);
        line.setReadTimeout(30_000);
        line.setRequestProperty("Accept", "text/html");
        if (gzip) {
            line.setRequestProperty("Accept-Encoding", "gzip");
        }
        line.setRequestProperty(
                "Cookie",
                cookies.entrySet().stream()
                        .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
                        .collect(Collectors.joining("; ")));
        return line;
    }

    private static void drain(HttpURLConnection line) throws IOException {
        InputStream body = line.getResponseCode() < 400 ? line.getInputStream() : line.getErrorStream();
        if (body != null) {
            try (body) {
                body.transferTo(OutputStream.nullOutputStream());
            }
        }
    }

    private void keepCookies(HttpURLConnection line) {
        for (String cookie : line.getHeaderFields().getOrDefault("Set-Cookie", List.of())) {
            String[] pair = cookie.split(";", 2)[0].split("=", 2);
            cookies.put(pair[0], pair[1]);
        }
    }

    private static void expect(int status, int wanted, String path) throws IOException {
        if (status != wanted) {
            throw new IOException(path + " answered " + status + " instead of " + wanted);
        }
    }
}
