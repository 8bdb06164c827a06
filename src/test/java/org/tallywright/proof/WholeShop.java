package org.tallywright.proof;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.ZoneId;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.webmvc.test.autoconfigure.MockMvcPrint;
import org.springframework.boot.webmvc.test.autoconfigure.SpringBootMockMvcBuilderCustomizer;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.test.web.servlet.setup.SecurityMockMvcConfigurers;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.setup.DefaultMockMvcBuilder;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.context.WebApplicationContext;
import org.tallywright.calibration.HeldWork;
import org.tallywright.demo.DemoShop;
import org.tallywright.people.Crew;
import org.tallywright.people.SamplePeople;
import org.tallywright.setup.SetupCode;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * The demo shop with a lead, a client's link, an invitation and the {@link Planted} figures; kept aside, so that it can be put back
 * after whatever a request did to it.
 */
final class WholeShop {
    private final JdbcClient jdbc;
    private final MockMvc mvc;
    private final TransactionTemplate transaction;
    private final Map<Reader, SignedIn> people = new EnumMap<>(Reader.class);
    private final UUID job;
    private final String clientToken;
    private final String invitationToken;
    private String lastWrite = "";
    private Map<String, String> marks;

    WholeShop(ApplicationContext context) {
        jdbc = context.getBean(JdbcClient.class);
        mvc = quiet((WebApplicationContext) context);
        transaction = context.getBean(TransactionTemplate.class);
        context.getBean(DemoShop.class)
                .load(context.getBean(SetupCode.class).next().orElseThrow(), ZoneId.of("America/New_York"));
        context.getBean(SamplePeople.class).lead();
        for (Role role : Role.values()) {
            people.put(Reader.valueOf(role.name()), person(role));
        }
        job = jdbc.sql("""
                        select j.id from job j join time_entry e on e.job_id = j.id where j.state = 'running'
                        group by j.id order by count(*) desc limit 1""").query(UUID.class).single();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("set local session_replication_role = replica").update();
            Planted.into(jdbc, job, idOf(Reader.OWNER), idOf(Reader.HELPER));
            jdbc.sql(
                            "insert into past_import (id, file_name, imported_by, imported_at) values (?, 'old.csv', ?, now())")
                    .params(UUID.randomUUID(), idOf(Reader.OWNER))
                    .update();
        });
        context.getBean(HeldWork.class).run();
        clientToken = context.getBean(ClientLinks.class).make(job, "Sent by post", 90, idOf(Reader.OWNER));
        invitationToken = context.getBean(Crew.class).invite(idOf(Reader.LEAD), who(Reader.OWNER));
        transaction.executeWithoutResult(status -> Keeping.keep(jdbc));
        marks = byTable(Keeping.MARKS);
        lastWrite = writes();
    }

    /** As the shared one, but a failure does not print thousands of requests. */
    private static MockMvc quiet(WebApplicationContext context) {
        DefaultMockMvcBuilder builder = MockMvcBuilders.webAppContextSetup(context);
        SpringBootMockMvcBuilderCustomizer customizer = new SpringBootMockMvcBuilderCustomizer(context);
        customizer.setPrint(MockMvcPrint.NONE);
        customizer.customize(builder);
        return builder.apply(SecurityMockMvcConfigurers.springSecurity()).build();
    }

    private SignedIn person(Role role) {
        return jdbc.sql("select id, name from person where role = ? and active order by id limit 1")
                .param(role.code())
                .query((row, n) -> new SignedIn(row.getObject("id", UUID.class), row.getString("name"), role))
                .single();
    }

    /** The running job that the planted figures are in. */
    UUID job() {
        return job;
    }

    String clientToken() {
        return clientToken;
    }

    String invitationToken() {
        return invitationToken;
    }

    SignedIn who(Reader reader) {
        SignedIn me = people.get(reader);
        if (me == null) {
            throw new IllegalArgumentException(reader + " is nobody of the shop");
        }
        return me;
    }

    /** Of the owner for a stranger, who should not get far enough for it to matter. */
    UUID idOf(Reader reader) {
        return who(reader == Reader.STRANGER ? Reader.OWNER : reader).personId();
    }

    /** With the hidden token of forms, as a browser on a page of ours would send it. */
    MockHttpServletResponse ask(Reader reader, MockHttpServletRequestBuilder request) {
        return askWithoutToken(reader, request.with(csrf()));
    }

    MockHttpServletResponse askWithoutToken(Reader reader, MockHttpServletRequestBuilder request) {
        try {
            MockHttpServletRequestBuilder sent =
                    reader == Reader.STRANGER ? request : request.with(signedIn(who(reader)));
            return mvc.perform(sent).andReturn().getResponse();
        } catch (Exception thrown) {
            return broken(thrown);
        }
    }

    /** What a server would make of an exception that nobody caught. */
    private static MockHttpServletResponse broken(Exception thrown) {
        Throwable root = thrown;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        MockHttpServletResponse answer = new MockHttpServletResponse();
        answer.setStatus(500);
        String first = java.util.Arrays.stream(root.getStackTrace())
                .filter(line -> line.getClassName().startsWith("org.tallywright."))
                .findFirst()
                .map(StackTraceElement::toString)
                .orElse("");
        answer.setHeader("X-Broken", root + " " + first);
        return answer;
    }

    /** Whether any transaction wrote since the last look; a rolled back one counts. Cheap beside comparing all rows. */
    boolean wrote() {
        return !lastWrite.equals(writes());
    }

    private String writes() {
        return jdbc.sql("select pg_snapshot_xmax(pg_current_snapshot())::text")
                .query(String.class)
                .single();
    }

    /** A hash of the rows of each table that holds the shop's business; sessions and sign-in attempts do not. */
    Map<String, String> content() {
        return byTable(Keeping.HASHES);
    }

    private Map<String, String> byTable(String sql) {
        Map<String, String> values = new TreeMap<>();
        jdbc.sql(sql)
                .query((row, n) -> values.put(row.getString(1), String.valueOf(row.getString(2))))
                .list();
        return values;
    }

    /** Puts every row back, where anything was written. */
    void restore() {
        if (wrote()) {
            transaction.executeWithoutResult(status -> Keeping.changed(marks, byTable(Keeping.MARKS))
                    .forEach(table -> jdbc.sql(Keeping.restore(table)).update()));
            marks = byTable(Keeping.MARKS);
            lastWrite = writes();
        }
    }

    @Nullable
    String one(String sql, Object... values) {
        return jdbc.sql(sql)
                .params(values)
                .query((row, n) -> row.getString(1))
                .optional()
                .orElse(null);
    }

    int count(String from) {
        return jdbc.sql("select count(*) from " + from).query(Integer.class).single();
    }
}
