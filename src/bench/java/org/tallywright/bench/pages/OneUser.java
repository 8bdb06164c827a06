package org.tallywright.bench.pages;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;

/** One page of one shop by one user: over HTTP, and its recorded statements bare, turn by turn. */
final class OneUser {
    final Times http = new Times();
    final Times bare = new Times();
    private final BenchShop shop;
    private final Page page;
    private final Visitor visitor;
    private final List<Connection> connections;
    private int statements;

    OneUser(BenchShop shop, Page page, Visitor visitor, List<Connection> connections) {
        this.shop = shop;
        this.page = page;
        this.visitor = visitor;
        this.connections = connections;
    }

    void warm(int times) throws IOException {
        for (int n = 0; n < times; n++) {
            page.visit(visitor);
        }
    }

    void turn(boolean counted) throws IOException, SQLException, ReflectiveOperationException {
        Statements tape = new Statements();
        shop.recorder.start(tape);
        long start = System.nanoTime();
        Page.Undo undo = page.visit(visitor);
        long taken = System.nanoTime() - start;
        shop.recorder.stop();
        undo.run(connections.get(0));
        long bareStart = System.nanoTime();
        tape.run(connections);
        long bareTaken = System.nanoTime() - bareStart;
        statements = tape.count();
        if (counted) {
            http.add(taken);
            bare.add(bareTaken);
        }
        if (Boolean.getBoolean("bench.sql") && !counted) {
            tape.texts().forEach(text -> System.out.println(page.name() + ": " + text.replaceAll("\\s+", " ")));
            System.setProperty("bench.sql", "false");
        }
    }

    int statements() {
        return statements;
    }
}
