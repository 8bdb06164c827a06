package org.tallywright;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TriesTest {
    @Test
    void namesTheSeedAndTheValuesOfAFailure() {
        assertThatThrownBy(() ->
                        Tries.of(1000, draw -> assertThat(draw.between(0, 99)).isLessThan(99)))
                .isInstanceOf(AssertionError.class)
                .hasMessageMatching("(?s)fails with -Dtries.seed=\\d+ on \\[99]");
    }

    @Test
    void drawsTheSameAgainFromTheSameSeed() {
        List<List<String>> runs = List.of(new ArrayList<>(), new ArrayList<>());
        for (List<String> run : runs) {
            Tries.of(50, draw -> run.add(draw.anyText(30) + draw.between(-5L, 5L)));
        }
        assertThat(runs.get(0)).isEqualTo(runs.get(1)).doesNotHaveDuplicates();
    }

    @Test
    void reachesBothEndsAndZeroOfAnyRange() {
        Set<Long> seen = new HashSet<>();
        Tries.of(1000, draw -> seen.add(draw.between(-999_999_999_999L, 999_999_999_999L)));
        assertThat(seen).contains(-999_999_999_999L, 999_999_999_999L, 0L).hasSizeGreaterThan(800);
        assertThat(seen).anyMatch(n -> n > 0 && n < 10_000);
    }

    @Test
    void writesEveryKindOfCharacter() {
        StringBuilder all = new StringBuilder();
        Tries.of(300, draw -> all.append(draw.anyText(20)));
        assertThat(all.chars()).anyMatch(c -> c == 0 || c < 0x20).anyMatch(c -> c >= 0xd800 && c < 0xe000);
    }
}
