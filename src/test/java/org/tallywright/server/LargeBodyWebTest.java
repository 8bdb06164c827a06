package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.Crew;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/**
 * More than can be taken, sent by somebody who is signed in, over real HTTP: the answer is a page of ours with a sentence, no row
 * changes, and the next request is served.
 */
@AppTest
class LargeBodyWebTest {
    private static final int MEGABYTE = 1 << 20;
    private static final String FORM = "application/x-www-form-urlencoded";

    @LocalServerPort
    int port;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    Crew crew;

    @Autowired
    JdbcClient jdbc;

    private final HttpClient http =
            HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
    private String token = "";

    @BeforeEach
    void signIn() throws Exception {
        SignedIn ada = people.owner();
        jobs.running(ada, "Window seat");
        crew.accept(crew.invite(ada.personId(), ada), "ada", "plumb and level");
        token = tokenOf("/sign-in");
        assertThat(post("/sign-in", FORM, form("signInName=ada&password=plumb+and+level"))
                        .statusCode())
                .isEqualTo(302);
        token = tokenOf("/shop");
    }

    private String tokenOf(String path) throws Exception {
        Document page = Jsoup.parse(get(path).body());
        String found = page.select("input[name=_csrf]").val();
        assertThat(found).as(path).isNotEmpty();
        return found;
    }

    private String form(String fields) {
        return "_csrf=" + URLEncoder.encode(token, StandardCharsets.UTF_8) + "&" + fields;
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return http.send(request(path).GET().build(), BodyHandlers.ofString());
    }

    private HttpResponse<String> post(String path, String type, String body) throws IOException, InterruptedException {
        return http.send(
                request(path)
                        .header("Content-Type", type)
                        .POST(BodyPublishers.ofString(body))
                        .build(),
                BodyHandlers.ofString());
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
                // As a browser asks.
                .header("Accept", "text/html,application/xhtml+xml,*/*;q=0.8")
                .timeout(Duration.ofSeconds(60));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/days/2026-11-24",
                "/clients",
                "/jobs/26-001/bids",
                "/jobs/26-001/estimate/rates",
                "/materials/purchases",
                "/rates/import",
                "/sign-in"
            })
    void refusesAFormOfTenMegabytes(String path) throws Exception {
        refused(path, FORM, form("note=" + "x".repeat(10 * MEGABYTE)));
    }

    @Test
    void refusesAFileOfThirteenMegabytes() throws Exception {
        refused("/rates/import/preview", "multipart/form-data; boundary=cut", multipart(13 * MEGABYTE));
    }

    @Test
    void refusesAFileThatIsTooLargeInAFormThatIsNot() throws Exception {
        refused("/rates/import/preview", "multipart/form-data; boundary=cut", multipart(11 * MEGABYTE));
    }

    @Test
    void refusesAMultipartBodyWhereAFormIsWanted() throws Exception {
        refused("/clients", "multipart/form-data; boundary=cut", multipart(13 * MEGABYTE));
    }

    @Test
    void refusesABodyThatIsNoForm() throws Exception {
        refused("/clients?" + form("x=1"), "application/json", "{\"name\":\"" + "x".repeat(10 * MEGABYTE) + "\"}");
    }

    private String multipart(int size) {
        return part("_csrf", "", token)
                + part("id", "", "0199aaaa-bbbb-7ccc-8ddd-eeeeeeeeeeee")
                + part("file", "; filename=\"old.csv\"", "x".repeat(size))
                + "--cut--\r\n";
    }

    private static String part(String name, String more, String content) {
        return "--cut\r\nContent-Disposition: form-data; name=\"" + name + "\"" + more + "\r\n\r\n" + content + "\r\n";
    }

    @ParameterizedTest
    @ValueSource(strings = {"/jobs/%00", "/days/2026-11-24%00", "/c/%00abc", "/rates/import%00"})
    void refusesANullByteInTheAddress(String path) throws Exception {
        refused(path, FORM, form("note=x"));
        ourPage(get(path), 400, 404);
    }

    @Test
    void refusesNullBytesInFields() throws Exception {
        refused("/clients", FORM, form("id=%00&name=Orla%00Penhallow"));
        refused("/clients", FORM, form("na%00me=Orla"));
    }

    @ParameterizedTest
    @ValueSource(ints = {2_000, 7_000, 60_000})
    void refusesAVeryLongAddress(int length) throws Exception {
        String path = "/jobs/" + "a".repeat(length);
        ourPage(get(path), 400, 414);
        refused(path, FORM, form("note=x"));
        ourPage(get("/jobs?q=" + "a".repeat(length)), 400, 422);
    }

    private void refused(String path, String type, String body) throws Exception {
        Map<String, String> before = rows();
        ourPage(post(path, type, body), 400, 422);
        assertThat(rows()).isEqualTo(before);
        assertThat(get("/jobs").statusCode()).as("the shop goes on").isEqualTo(200);
    }

    private static void ourPage(HttpResponse<String> answer, int least, int most) {
        String said = answer.request().uri().toString();
        assertThat(answer.statusCode())
                .as(said.substring(0, Math.min(80, said.length())))
                .isBetween(least, most)
                .isNotEqualTo(403);
        assertThat(answer.headers().firstValue("Content-Type"))
                .hasValueSatisfying(type -> assertThat(type).startsWith("text/html"));
        Document page = Jsoup.parse(answer.body());
        assertThat(page.select("header.mast a[href=/]")).isNotEmpty();
        assertThat(page.select("main p, main table").text()).contains(" ");
        assertThat(page.text()).doesNotContain("Exception", "org.apache", "HTTP Status", "at org.");
    }

    /** How many rows each table has, and when the last was written. */
    private Map<String, String> rows() {
        Map<String, String> rows = new TreeMap<>();
        for (String table : jdbc.sql("""
                        select table_name from information_schema.tables where table_schema = 'public'
                        and table_type = 'BASE TABLE' and table_name not like 'spring_session%'
                        and table_name <> 'sign_in_attempt'""").query(String.class).list()) {
            rows.put(
                    table,
                    jdbc.sql("select count(*) || ' ' || coalesce(max(xmin::text::bigint), 0) from " + table)
                            .query(String.class)
                            .single());
        }
        return rows;
    }
}
