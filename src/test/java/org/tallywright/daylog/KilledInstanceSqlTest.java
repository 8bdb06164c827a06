package org.tallywright.daylog;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * Eight people with two devices each save and change entries at once, half of the devices through an instance that is
 * killed in the middle: what was answered as saved is what is stored, entry by entry.
 */
@AppTest
class KilledInstanceSqlTest {
    private static final int PEOPLE = 8;
    private static final int SAVES_EACH = 14;
    private static final String PASSWORD = "plumb level square";

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

    @Autowired
    private JdbcConnectionDetails database;

    @TempDir
    Path folder;

    private final AtomicInteger saves = new AtomicInteger();
    private final AtomicInteger asked = new AtomicInteger();

    /** An entry as it was answered. */
    private record Known(String path, String what, int version, int minutes) {}

    @Test
    void whatWasAnsweredIsWhatIsStored() throws Exception {
        List<UUID> tasks = new ArrayList<>(days.job("Wall of bookcases", "Rip", "Joint", "Glue", "Sand", "Oil", "Hang")
                .tasks()
                .values());
        List<SignedIn> crew = crew();
        String here = "http://127.0.0.1:" + port;
        try (SecondInstance second = new SecondInstance(database, folder)) {
            ExecutorService threads = Executors.newFixedThreadPool(PEOPLE * 2 + 1);
            List<Callable<Map<UUID, Known>>> devices = new ArrayList<>();
            for (int n = 0; n < PEOPLE * 2; n++) {
                Device device = new Device(n % 2 == 0 ? here : second.home, here);
                device.signIn("crew-" + n / 2, PASSWORD);
                Random random = new Random(n);
                devices.add(() -> work(device, tasks, random));
            }
            Future<?> axe = threads.submit(() -> killAfterAThird(second));
            Map<UUID, Known> answered = new HashMap<>();
            for (Future<Map<UUID, Known>> device : threads.invokeAll(devices)) {
                answered.putAll(device.get());
            }
            axe.get();
            threads.shutdown();

            Map<UUID, Integer> stored = new HashMap<>();
            jdbc.sql("select id, minutes from time_entry").query(row -> {
                stored.put(row.getObject(1, UUID.class), row.getInt(2));
            });
            Map<UUID, Integer> expected = new HashMap<>();
            answered.forEach((id, entry) -> expected.put(id, entry.minutes()));
            assertThat(stored).isEqualTo(expected);
            assertThat(sum(stored)).isEqualTo(sum(expected)).isPositive();
            assertThat(saves.get()).isEqualTo(PEOPLE * 2 * SAVES_EACH);
            assertThat(asked.get()).as("asked about").isLessThan(saves.get() / 3);
            System.out.println("A killed instance: " + saves + " saves, " + asked + " asked about, " + stored.size()
                    + " entries of " + crew.size() + " people stored as answered");
        }
    }

    private static int sum(Map<UUID, Integer> minutes) {
        return minutes.values().stream().mapToInt(Integer::intValue).sum();
    }

    private List<SignedIn> crew() {
        String hash = encoder.encode(PASSWORD);
        List<SignedIn> crew = new ArrayList<>();
        for (int n = 0; n < PEOPLE; n++) {
            SignedIn one = people.person("Crew " + n, n == 0 ? Role.OWNER : Role.HELPER);
            String name = "crew-" + n;
            people.asShop(() -> jdbc.sql("update account set sign_in_name = ?, password_hash = ? where person_id = ?")
                    .params(name, hash, one.personId())
                    .update());
            crew.add(one);
        }
        return crew;
    }

    private Void killAfterAThird(SecondInstance second) throws InterruptedException {
        while (saves.get() < PEOPLE * 2 * SAVES_EACH / 3) {
            Thread.sleep(5);
        }
        second.kill();
        return null;
    }

    /** New entries, and changes of its own earlier ones, each sent until it is answered. */
    private Map<UUID, Known> work(Device device, List<UUID> tasks, Random random) throws InterruptedException {
        Map<UUID, Known> mine = new LinkedHashMap<>();
        for (int n = 0; n < SAVES_EACH; n++) {
            boolean change = !mine.isEmpty() && random.nextInt(3) == 0;
            UUID id = change ? new ArrayList<>(mine.keySet()).get(random.nextInt(mine.size())) : UUID.randomUUID();
            Known before = mine.get(id);
            String path = before == null ? "/days/2026-11-" + (20 + random.nextInt(5)) : before.path();
            String what = before == null ? "task:" + tasks.get(random.nextInt(tasks.size())) : before.what();
            int minutes = before == null ? 1 + random.nextInt(9) : before.minutes() + 1;
            String against = device.save(path, fields(id, before, what, minutes));
            saves.incrementAndGet();
            if (!against.isEmpty()) {
                // Something alike is on the day, perhaps by the other device: asked, and not saved.
                assertThat(against).containsAnyOf("was saved meanwhile", "is on this day already");
                asked.incrementAndGet();
                continue;
            }
            mine.put(id, new Known(path, what, before == null ? 0 : before.version() + 1, minutes));
        }
        return mine;
    }

    private static Map<String, String> fields(
            UUID id, @org.jspecify.annotations.Nullable Known before, String what, int minutes) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("act", "save");
        fields.put("row.0.id", id.toString());
        fields.put("row.0.version", before == null ? "" : String.valueOf(before.version()));
        fields.put("row.0.what", what);
        fields.put("row.0.class", "direct");
        fields.put("row.0.time", minutes + "m");
        return fields;
    }
}
