package org.tallywright.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class PrecedenceTest {
    private static final UUID MILL = new UUID(0, 1);
    private static final UUID GLUE = new UUID(0, 2);
    private static final UUID SAND = new UUID(0, 3);

    private final Precedence order = new Precedence(Map.of(GLUE, Set.of(MILL), SAND, Set.of(GLUE)));

    @Test
    void seesWhatComesFirstOverSeveralSteps() {
        assertThat(order.isBefore(MILL, GLUE)).isTrue();
        assertThat(order.isBefore(MILL, SAND)).isTrue();
        assertThat(order.isBefore(SAND, MILL)).isFalse();
        assertThat(order.isBefore(MILL, MILL)).isFalse();
    }

    @Test
    void endsOnACircle() {
        Precedence circle = new Precedence(Map.of(GLUE, Set.of(MILL), MILL, Set.of(GLUE)));
        assertThat(circle.isBefore(MILL, MILL)).isTrue();
        assertThat(circle.isBefore(SAND, MILL)).isFalse();
    }
}
