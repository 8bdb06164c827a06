package org.tallywright.server;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** A database named in the environment that cannot be reached or lets us not in. Other SQL errors are not ours to explain. */
class NoDatabaseAnalyzer extends AbstractFailureAnalyzer<SQLException> {
    @Override
    protected @Nullable FailureAnalysis analyze(Throwable rootFailure, SQLException failure) {
        String what = sentence(String.valueOf(failure.getSQLState()));
        return what == null
                ? null
                : new FailureAnalysis(
                        what + " (" + firstLine(String.valueOf(failure.getMessage())) + ").", null, rootFailure);
    }

    /** Classes of the SQL standard: 08 connection, 28 authorisation; 3D000 is PostgreSQL's "no such database". */
    private static @Nullable String sentence(String state) {
        if (state.startsWith("08")) {
            return "The database does not answer; check SPRING_DATASOURCE_URL and that PostgreSQL runs";
        }
        if (state.startsWith("28")) {
            return "The database refuses the sign-in; check SPRING_DATASOURCE_USERNAME and SPRING_DATASOURCE_PASSWORD";
        }
        return state.equals("3D000") ? "The database in SPRING_DATASOURCE_URL does not exist; create it first" : null;
    }

    private static String firstLine(String message) {
        return message.lines().findFirst().orElse("").replaceAll("\\.$", "");
    }
}
