package org.tallywright.db;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tallywright.server.DataFolder;
import org.tallywright.server.StartRefused;

class ClusterTest {
    @TempDir
    Path temp;

    Cluster cluster;

    @BeforeEach
    void prepare() {
        cluster = new Cluster(DataFolder.prepare(temp.resolve("shop")));
    }

    @Test
    void movesAnUnfinishedClusterAsideAndKeepsWhatIsInIt() throws IOException {
        Files.createDirectories(cluster.data());
        Files.writeString(cluster.data().resolve("PG_VERSION"), "18\n");
        cluster.moveAsideUnfinished();
        assertThat(cluster.data()).doesNotExist();
        assertThat(temp.resolve("shop/unfinished-1/PG_VERSION")).exists();
    }

    @Test
    void movesASecondUnfinishedClusterBesideTheFirst() throws IOException {
        Files.createDirectories(temp.resolve("shop/unfinished-1"));
        Files.createDirectories(cluster.data());
        cluster.moveAsideUnfinished();
        assertThat(temp.resolve("shop/unfinished-2")).isDirectory();
    }

    @Test
    void leavesAFinishedClusterWhereItIs() throws IOException {
        Files.createDirectories(cluster.data());
        cluster.markComplete();
        cluster.moveAsideUnfinished();
        assertThat(cluster.data()).isDirectory();
        assertThat(cluster.complete()).isTrue();
    }

    @Test
    void isNotCompleteByItsMarkAlone() throws IOException {
        cluster.markComplete();
        assertThat(cluster.complete()).isFalse();
    }

    @Test
    void refusesAnotherMajorInItsOwnFolder() throws IOException {
        Files.createDirectories(cluster.data());
        Files.writeString(cluster.data().resolve("PG_VERSION"), "17\n");
        assertThatThrownBy(() -> cluster.refuseOtherMajor())
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("PostgreSQL 17")
                .hasMessageContaining("PostgreSQL 18");
    }

    @Test
    void refusesToStartAnEmptyShopBesideTheDataOfAnotherMajor() throws IOException {
        Files.createDirectories(temp.resolve("shop/pg19"));
        assertThatThrownBy(() -> cluster.refuseOtherMajor())
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("PostgreSQL 19");
    }

    @Test
    void acceptsItsOwnMajorBesideAnOlderFolder() throws IOException {
        Files.createDirectories(temp.resolve("shop/pg17"));
        Files.createDirectories(cluster.data());
        Files.writeString(cluster.data().resolve("PG_VERSION"), "18\n");
        cluster.refuseOtherMajor();
    }

    @Test
    void removesBinariesWhoseUnpackingBrokeOff() throws IOException {
        Path half = Files.createDirectories(cluster.binaries().resolve("PG-half/bin"));
        Files.writeString(half.resolve("postgres"), "not all of it");
        Path whole = Files.createDirectories(cluster.binaries().resolve("PG-whole"));
        Files.createFile(whole.resolve(".exists"));
        cluster.removeHalfUnpackedBinaries();
        assertThat(cluster.binaries().resolve("PG-half")).doesNotExist();
        assertThat(whole).isDirectory();
    }
}
