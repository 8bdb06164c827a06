package org.tallywright.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.TestClock;

/** Both databases belong to a role that is no superuser. */
class BackupSqlTest {
    private static final long SEED = 20261125;

    static ScratchDatabase empty;
    static ScratchDatabase source;
    static byte[] file;
    static Manifest manifest;

    @TempDir
    Path folder;

    ScratchDatabase target;

    @BeforeAll
    static void makeAShop() throws SQLException, IOException {
        empty = ScratchDatabase.make("backup_empty").migrated();
        EveryType.create(empty);
        source = empty.copy("backup_source");
        new EveryType(SEED).fill(source, 400);
        source.run(
                "begin",
                "set local tallywright.person = 'shop'",
                "set local tallywright.at = '2026-11-25T18:40:00Z'",
                "insert into person values ('019abc00-0000-7000-8000-000000000001', 'Ada \"Dado\" Rabbet', 'owner', true,"
                        + " '2026-11-25T18:40:00.123456Z', 0)",
                "insert into wage values ('019abc00-0000-7000-8000-000000000002',"
                        + " '019abc00-0000-7000-8000-000000000001', '2026-01-01', 41.17, 31.5, 0)",
                "commit",
                "insert into sign_in_attempt (subject, at, failed) values ('ada', '2026-11-25T18:40:00Z', true)");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        manifest = new Backup(source.source(), new TestClock()).write(out);
        file = out.toByteArray();
    }

    @BeforeEach
    void makeAnEmptyShop() throws SQLException {
        target = empty.copy("backup_target");
    }

    @Test
    void restoresEveryTableAsItWas() throws Exception {
        Map<String, String> before = source.fingerprint();
        Manifest restored = new Restore(target.source()).intoEmptyShop(write(file));

        before.put("sign_in_attempt", "0 ");
        assertThat(target.fingerprint()).isEqualTo(before);
        assertThat(restored).isEqualTo(manifest);
        assertThat(restored.rows()).isGreaterThan(400);
        assertThat(restored.madeAt()).isEqualTo(TestClock.START);
    }

    @Test
    void writesTheSameFileFromTheRestoredShop() throws Exception {
        new Restore(target.source()).intoEmptyShop(write(file));
        Manifest again = new Backup(target.source(), new TestClock()).write(new ByteArrayOutputStream());
        assertThat(again).isEqualTo(manifest);
    }

    @Test
    void goesOnCountingWhereTheShopStood() throws Exception {
        new Restore(target.source()).intoEmptyShop(write(file));
        for (String sequence :
                new String[] {"every_type_id_seq", "by_default_id_seq", "counted", "audit_entry_id_seq"}) {
            assertThat(target.one("select last_value || ' ' || is_called from " + sequence))
                    .isEqualTo(source.one("select last_value || ' ' || is_called from " + sequence));
        }
        assertThat(target.one("select nextval('counted')")).isEqualTo("7");
        assertThat(target.one("insert into every_type (words) values ('next') returning id"))
                .isEqualTo("401");
    }

    @Test
    void leavesKeysAndTriggersInForce() throws Exception {
        String keys = "select string_agg(conrelid::regclass || conname || pg_get_constraintdef(oid), ';'"
                + " order by conname) from pg_constraint where contype = 'f'";
        new Restore(target.source()).intoEmptyShop(write(file));
        assertThat(target.one(keys)).isEqualTo(source.one(keys));
        assertThatThrownBy(() -> target.run("insert into tree values (77, 78)")).hasMessageContaining("tree_parent_fk");
        target.run("insert into tree values (77, 9)");
        assertThat(target.one("select count(*) from noted where what = '77'")).isEqualTo("1");
        assertThatThrownBy(() -> target.run("update person set name = 'x'")).hasMessageContaining("names nobody");
    }

    @Test
    void leavesSessionsAndSignInAttemptsOut() throws IOException {
        assertThat(manifest.tables())
                .extracting(Manifest.Table::name)
                .contains("person", "every_type", "Odd name")
                .doesNotContain(
                        "spring_session", "spring_session_attributes", "sign_in_attempt", "flyway_schema_history");
        assertThat(manifest.sequences()).extracting(Manifest.Sequence::name).doesNotContain("sign_in_attempt_id_seq");
    }

    @Test
    void refusesAShopThatIsNotEmpty() throws Exception {
        new Restore(target.source()).intoEmptyShop(write(file));
        refuses(write(file), "not empty");
    }

    @Test
    void refusesAFileOfAnotherVersion() throws Exception {
        refuses(
                write(change((name, bytes) -> name.equals(Manifest.ENTRY)
                        ? replace(
                                bytes,
                                "\"schemaVersion\" : \"" + manifest.schemaVersion() + "\"",
                                "\"schemaVersion\" : \"001\"")
                        : bytes)),
                "is of version 001");
    }

    @Test
    void refusesAFileWithAnotherLayout() throws Exception {
        refuses(
                write(change((name, bytes) ->
                        name.equals(Manifest.ENTRY) ? replace(bytes, "\"format\" : 1", "\"format\" : 2") : bytes)),
                "has layout 2");
    }

    @Test
    void refusesAFileWithOtherTables() throws Exception {
        target.run("alter table ranked add column later int");
        refuses(write(file), "not those of this version");
    }

    @Test
    void refusesAFileWithOneAlteredFigure() throws Exception {
        refuses(
                write(change(
                        (name, bytes) -> name.equals("tables/wage.csv") ? replace(bytes, "41.17", "41.18") : bytes)),
                "damaged");
    }

    @Test
    void refusesAFileWithALostRow() throws Exception {
        refuses(
                write(change((name, bytes) ->
                        name.equals("tables/ranked.csv") ? replace(bytes, "\"2\",\"1\"\n", "") : bytes)),
                "damaged");
    }

    @Test
    void refusesAFileWithAValueThatDoesNotFit() throws Exception {
        refuses(
                write(change(
                        (name, bytes) -> name.equals("tables/wage.csv") ? replace(bytes, "41.17", "a lot") : bytes)),
                "damaged");
    }

    @Test
    void refusesAFileThatWasCutOff() throws Exception {
        byte[] half = Arrays.copyOf(file, file.length / 2);
        refuses(write(half), "damaged");
    }

    /** What a browser is left with where the line, or the reading of the database, breaks while it is sent. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.001, 0.01, 0.1, 0.25, 0.75, 0.9, 0.99, 0.999, 1})
    void refusesAFileThatWasCutOffAnywhere(double share) throws Exception {
        int kept = Math.min((int) (file.length * share), file.length - 1);
        refuses(write(Arrays.copyOf(file, kept)), "damaged");
    }

    @Test
    void refusesWhatIsLeftWhereTheReadingBreaksOff() throws Exception {
        ByteArrayOutputStream sent = new ByteArrayOutputStream();
        OutputStream breaking = new FilterOutputStream(sent) {
            @Override
            public void write(byte[] bytes, int from, int length) throws IOException {
                sent.write(bytes, from, length);
                if (sent.size() > file.length / 3) {
                    throw new IOException("the line broke");
                }
            }
        };
        assertThatThrownBy(() -> new Backup(source.source(), new TestClock()).write(breaking))
                .isInstanceOf(IOException.class);
        assertThat(sent.size()).isBetween(1, file.length - 1);
        refuses(write(sent.toByteArray()), "damaged");
    }

    @Test
    void refusesAFileWithoutItsLastTables() throws Exception {
        refuses(write(without(Manifest.ENTRY)), "not a backup file");
        refuses(write(without("tables/wage.csv")), "damaged");
    }

    @Test
    void refusesAFlippedBit() throws Exception {
        byte[] flipped = file.clone();
        flipped[flipped.length / 2] ^= 1;
        refuses(write(flipped), "damaged");
    }

    @Test
    void refusesOtherFiles() throws Exception {
        refuses(write("a letter".getBytes(StandardCharsets.UTF_8)), "damaged");
        refuses(folder.resolve("nothing.zip"), "no backup file");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("letter.txt"));
        }
        refuses(write(bytes.toByteArray()), "not a backup file");
    }

    private void refuses(Path path, String reason) throws SQLException {
        Map<String, String> before = target.fingerprint();
        assertThatThrownBy(() -> new Restore(target.source()).intoEmptyShop(path))
                .isInstanceOf(RestoreRefused.class)
                .hasMessageContaining(reason);
        assertThat(target.fingerprint()).isEqualTo(before);
    }

    private Path write(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("backup.zip"), bytes);
    }

    private static byte[] replace(byte[] bytes, String old, String other) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        assertThat(text).contains(old);
        return text.replace(old, other).getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] without(String left) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(file));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                if (!entry.getName().equals(left)) {
                    out.putNextEntry(new ZipEntry(entry.getName()));
                    in.transferTo(out);
                }
            }
        }
        return bytes.toByteArray();
    }

    /** The file zipped again with some entries changed, so that only our own checks can find it. */
    private static byte[] change(BiFunction<String, byte[], byte[]> change) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(file));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write(change.apply(entry.getName(), in.readAllBytes()));
            }
        }
        return bytes.toByteArray();
    }
}
