package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/**
 * Saves over a line that breaks at every step, by seeded chance: nothing is lost and nothing doubled, row by row in the
 * database, and what gathered is made there in its order. {@code -Dcuts=200} makes that many runs, {@code -Dcuts.seed=7}
 * begins with that seed.
 */
@AppTest
class CutsBrowserTest {
    private static final int RUNS = Integer.getInteger("cuts", 20);
    private static final int SEED = Integer.getInteger("cuts.seed", 1);
    private static final int BATCH = 50;
    private static final String[] TASKS = {
        "Rip", "Plane", "Joint", "Sand", "Glue", "Fit", "Scribe", "Oil", "Hang", "Trim"
    };

    /** Fills one row and sends the form, as a tap on "Save the day" does; answers with the entry's id. */
    private static final String SAVE = """
            ([task, minutes, edit]) => {
              const rows = [...document.querySelectorAll('.day > .sheet > .row')].filter(row => row.querySelector('label')?.textContent.includes(task)
                && (row.querySelector('[name$=".version"]').value !== '') === edit);
              const row = rows[0];
              if (!row) return null;
              const id = row.querySelector('[name$=".id"]').value;
              row.querySelector('[data-hours]').value = minutes + 'm';
              document.querySelector('form.day').requestSubmit(document.querySelector('main button.button[value=save]'));
              return id;
            }""";

    /** Fifty saves that gathered while there was no signal, on five days. */
    private static final String GATHER = """
            async ([person, tasks, first, days]) => {
              const ids = [];
              for (let n = 0; n < 50; n++) {
                const id = crypto.randomUUID();
                ids.push(id);
                await Queue.keep({ person, path: '/days/' + days[n % days.length], fields: [], rows: [{ id, version: '', what: 'task:' + tasks[Math.floor(n / 5)], class: 'direct',
                  time: (first + n) + 'm', note: '', reason: '', title: 'Sand' }] });
              }
              return ids;
            }""";

    @LocalServerPort
    private int port;

    @Autowired
    private SamplePeople people;

    @Autowired
    private SampleDays days;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private PasswordEncoder encoder;

    private final Map<String, String> expected = new HashMap<>();
    private final Set<String> logged = new HashSet<>();
    private final List<String> inOrder = new ArrayList<>();

    @Test
    void nothingIsLostAndNothingDoubled() {
        SignedIn ada = people.owner();
        Phone.mayEnter(people, jdbc, encoder, ada);
        SampleDays.SampleJob job = days.job("Window seat, north bay", TASKS);
        long begun = System.nanoTime();
        Map<Wire.Cut, Integer> cuts = new HashMap<>();
        try (Phone phone = new Phone(port)) {
            phone.signIn(ada);
            for (int seed = SEED; seed < SEED + RUNS; seed++) {
                emptyDays();
                if (seed % 4 == 0) {
                    batch(phone, ada, job, new Random(seed), cuts);
                } else {
                    sheets(phone, ada, new Random(seed), cuts);
                }
                phone.signalIsBack(ada);
                assertThat(stored()).as("seed " + seed).isEqualTo(expected);
                assertThat(madeTwice()).as("seed " + seed).isZero();
                if (!inOrder.isEmpty()) {
                    assertThat(made()).as("seed " + seed).isEqualTo(inOrder);
                }
            }
            System.out.printf(
                    "Broken lines: %d runs in %.0f s, cuts %s, %d saves on the line%n",
                    RUNS, (System.nanoTime() - begun) / 1e9, cuts, phone.wire.saves());
        }
    }

    /** A few saves of a day, each with its own cut, edits of what is already saved among them. */
    private void sheets(Phone phone, SignedIn ada, Random chance, Map<Wire.Cut, Integer> cuts) {
        LocalDate day = SampleDays.TODAY.minusDays(chance.nextInt(3));
        phone.tab.open("/days/" + day);
        int saves = 2 + chance.nextInt(2);
        for (int n = 0; n < saves; n++) {
            Wire.Cut cut = Wire.Cut.values()[chance.nextInt(4)];
            cuts.merge(cut, 1, Integer::sum);
            phone.wire.plan(List.of());
            if (phone.wire.isDown() && chance.nextBoolean()) {
                phone.signalIsBack(ada);
            }
            phone.wire.plan(List.of(cut));
            save(phone, day, chance, 10 + n);
        }
        phone.wire.plan(List.of());
    }

    private void save(Phone phone, LocalDate day, Random chance, int minutes) {
        Page page = phone.tab.page;
        String task = TASKS[chance.nextInt(3)];
        int queued = phone.tab.page.url().isEmpty()
                ? 0
                : (int) page.evaluate(
                        "() => Queue.of(document.documentElement.dataset.person).then(all => all.length)");
        page.evaluate("() => { window.before = true }");
        // A second entry on one task and day would be asked about, as it should; so it is an edit where one can be.
        String id = (String) page.evaluate(SAVE, List.of(task, minutes, true));
        if (id == null && !logged.add(day + task)) {
            return;
        }
        if (id == null) {
            id = (String) page.evaluate(SAVE, List.of(task, minutes, false));
        }
        expected.put(id, day + " " + minutes);
        phone.until(
                "async queued => window.before === undefined && document.readyState === 'complete'"
                        + " || (await Queue.of(document.documentElement.dataset.person)).length > queued"
                        + " && !document.querySelector('form[aria-busy]')",
                queued);
    }

    /** The line breaks once or twice on the way through fifty saves. */
    private void batch(
            Phone phone, SignedIn ada, SampleDays.SampleJob job, Random chance, Map<Wire.Cut, Integer> cuts) {
        phone.tab.open("/account");
        phone.wire.cut(); // the page and the worker send by themselves too: not before the next break is planned
        List<String> dates = new ArrayList<>();
        for (int back = 0; back < 5; back++) {
            dates.add(SampleDays.TODAY.minusDays(back).toString());
        }
        List<?> ids = (List<?>) phone.tab.page.evaluate(
                GATHER,
                List.of(
                        ada.personId().toString(),
                        Stream.of(TASKS).map(task -> job.task(task).toString()).toList(),
                        5,
                        dates));
        for (int n = 0; n < BATCH; n++) {
            expected.put((String) ids.get(n), dates.get(n % 5) + " " + (5 + n));
            inOrder.add((String) ids.get(n));
        }
        for (int times = 1 + chance.nextInt(2); times > 0; times--) {
            Wire.Cut cut = Wire.Cut.values()[1 + chance.nextInt(3)];
            cuts.merge(cut, 1, Integer::sum);
            List<Wire.Cut> plan = new ArrayList<>();
            for (int passed = chance.nextInt(BATCH / 3); passed > 0; passed--) {
                plan.add(Wire.Cut.NONE);
            }
            plan.add(cut);
            phone.wire.plan(plan);
            phone.wire.mend();
            phone.tab.page.evaluate(
                    "person => Queue.send(person)", ada.personId().toString());
            assertThat(phone.wire.isDown())
                    .as("the line broke within the batch")
                    .isTrue();
        }
        phone.wire.plan(List.of());
    }

    private void emptyDays() {
        expected.clear();
        logged.clear();
        inOrder.clear();
        people.asShop(() -> jdbc.sql("delete from time_entry").update());
        jdbc.sql("delete from audit_entry where subject = 'time_entry'").update();
    }

    private Map<String, String> stored() {
        Map<String, String> stored = new HashMap<>();
        jdbc.sql("select id::text, on_date || ' ' || minutes as said from time_entry")
                .query(row -> {
                    assertThat(stored.put(row.getString(1), row.getString(2))).isNull();
                });
        return stored;
    }

    /** The entries in the order in which the server made them. */
    private List<String> made() {
        return jdbc.sql(
                        "select subject_id from audit_entry where subject = 'time_entry' and act = 'insert' order by id")
                .query(String.class)
                .list();
    }

    private int madeTwice() {
        return jdbc.sql("""
                        select count(*) from (select 1 from audit_entry where subject = 'time_entry' and act = 'insert'
                        group by subject_id having count(*) > 1) twice""").query(Integer.class).single();
    }
}
