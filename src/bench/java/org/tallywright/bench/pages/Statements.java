package org.tallywright.bench.pages;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.ttddyy.dsproxy.proxy.ParameterSetOperation;

/** All that one request asked of the database, in order, and how to ask it again without the application. */
final class Statements {

    /** One call on a numbered connection; a statement where {@code sql} is not blank, else a method of the connection. */
    private record Call(
            String connection, String sql, List<List<ParameterSetOperation>> rows, String method, Object[] args) {}

    private final List<Call> calls = new ArrayList<>();

    synchronized void statement(String connection, String sql, List<List<ParameterSetOperation>> rows) {
        List<List<ParameterSetOperation>> copied = new ArrayList<>();
        rows.forEach(row -> copied.add(List.copyOf(row)));
        calls.add(new Call(connection, sql, copied, "", new Object[0]));
    }

    synchronized void method(String connection, String method, Object[] args) {
        calls.add(new Call(connection, "", List.of(), method, args));
    }

    int count() {
        return (int) calls.stream().filter(call -> !call.sql().isEmpty()).count();
    }

    List<String> texts() {
        return calls.stream()
                .map(call -> call.sql().isEmpty() ? call.method() : call.sql())
                .toList();
    }

    /** Runs them on bare connections, each of the request's connections on one of its own, and reads every row. */
    void run(List<Connection> bare) throws SQLException, ReflectiveOperationException {
        List<Connection> free = new ArrayList<>(bare);
        Map<String, Connection> held = new HashMap<>();
        for (Call call : calls) {
            if (call.method().equals("close")) {
                Connection back = held.remove(call.connection());
                if (back != null) {
                    free.add(0, back);
                }
                continue;
            }
            Connection connection = held.computeIfAbsent(call.connection(), id -> free.remove(0));
            if (call.sql().isEmpty()) {
                apply(connection, call);
            } else {
                ask(connection, call);
            }
        }
        for (Connection connection : bare) {
            if (!connection.getAutoCommit()) {
                connection.setAutoCommit(true);
            }
            connection.setReadOnly(false);
        }
    }

    private static void apply(Connection connection, Call call) throws SQLException {
        switch (call.method()) {
            case "commit" -> connection.commit();
            case "rollback" -> connection.rollback();
            case "setAutoCommit" -> connection.setAutoCommit((Boolean) call.args()[0]);
            case "setReadOnly" -> connection.setReadOnly((Boolean) call.args()[0]);
            default -> throw new IllegalArgumentException(call.method());
        }
    }

    private static void ask(Connection connection, Call call) throws SQLException, ReflectiveOperationException {
        try (PreparedStatement statement = connection.prepareStatement(call.sql())) {
            for (List<ParameterSetOperation> row : call.rows()) {
                for (ParameterSetOperation set : row) {
                    set.getMethod().invoke(statement, set.getArgs());
                }
                if (call.rows().size() > 1) {
                    statement.addBatch();
                }
            }
            if (call.rows().size() > 1) {
                statement.executeBatch();
            } else if (statement.execute()) {
                readAll(statement.getResultSet());
            }
        }
    }

    private static void readAll(ResultSet rows) throws SQLException {
        int columns = rows.getMetaData().getColumnCount();
        while (rows.next()) {
            for (int column = 1; column <= columns; column++) {
                rows.getObject(column);
            }
        }
    }
}
