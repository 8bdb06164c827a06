package org.tallywright.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class IdsTest {
    @Test
    void areVersionSevenOfTheStandardVariant() {
        UUID id = Ids.next();
        assertThat(id.version()).isEqualTo(7);
        assertThat(id.variant()).isEqualTo(2);
    }

    /** As text, which is how PostgreSQL orders them; Java compares the halves as signed numbers. */
    @Test
    void growEvenWithinAMillisecondAndWhenTheClockStepsBack() {
        List<String> made = new ArrayList<>();
        long now = System.currentTimeMillis() + 60_000;
        for (int i = 0; i < 10_000; i++) {
            made.add(Ids.at(now - i % 7).toString());
        }
        assertThat(made).isSorted().doesNotHaveDuplicates();
    }

    @Test
    void differWhenMadeAtOnceByManyThreads() {
        List<UUID> made =
                IntStream.range(0, 20_000).parallel().mapToObj(i -> Ids.next()).toList();
        assertThat(new HashSet<>(made)).hasSize(20_000);
    }

    @Test
    void carryTheMillisecond() {
        long later = System.currentTimeMillis() + 3_600_000;
        assertThat(Ids.at(later).getMostSignificantBits() >>> 16).isEqualTo(later);
    }
}
