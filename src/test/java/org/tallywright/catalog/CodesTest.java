package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;

class CodesTest {
    @Test
    void makesAShortPlainCode() {
        assertThat(Codes.from("Rip hard-wood, wide", Set.of()::contains)).isEqualTo("rip_hard_wood_wide");
        assertThat(Codes.from("  Möbel  ", Set.of()::contains)).isEqualTo("mobel");
    }

    @Test
    void countsOnWhereTheCodeIsTaken() {
        assertThat(Codes.from("Scribe", Set.of("scribe", "scribe_2")::contains)).isEqualTo("scribe_3");
    }

    @Test
    void hasACodeForNamesWithoutLatinLetters() {
        assertThat(Codes.from("木", Set.of()::contains)).isEqualTo("own");
        assertThat(Codes.from("x".repeat(120), Set.of()::contains)).matches("[a-z0-9_]{1,60}");
    }
}
