package org.tallywright.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.boot.diagnostics.FailureAnalyzer;
import org.springframework.boot.web.server.PortInUseException;

class FailureSentenceTest {
    @Test
    void saysWhichPortIsTaken() {
        assertThat(sentence(new PortTakenAnalyzer(), new PortInUseException(8080)))
                .startsWith("Port 8080 is taken by another program");
    }

    @Test
    void handsARefusalOnFromBelow() {
        StartRefused refusal = new StartRefused("The barn is closed.");
        assertThat(sentence(new StartRefusedAnalyzer(), new IllegalStateException("bean", refusal)))
                .isEqualTo("The barn is closed.");
    }

    @Test
    void tellsTheWaysADatabaseMayStayClosed() {
        assertThat(sentence(new NoDatabaseAnalyzer(), new SQLException("refused.\nand more", "08001")))
                .startsWith("The database does not answer")
                .endsWith("(refused).");
        assertThat(sentence(new NoDatabaseAnalyzer(), new SQLException("wrong password", "28P01")))
                .startsWith("The database refuses the sign-in");
        assertThat(sentence(new NoDatabaseAnalyzer(), new SQLException("no database", "3D000")))
                .contains("does not exist");
    }

    @Test
    void leavesOtherFailuresOfTheDatabaseAlone() {
        assertThat(sentence(new NoDatabaseAnalyzer(), new SQLException("syntax error", "42601")))
                .isNull();
        assertThat(sentence(new NoDatabaseAnalyzer(), new SQLException("no state")))
                .isNull();
    }

    private static @Nullable String sentence(FailureAnalyzer analyzer, Throwable failure) {
        FailureAnalysis analysis = analyzer.analyze(failure);
        return analysis == null ? null : analysis.getDescription();
    }
}
