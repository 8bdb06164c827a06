package org.tallywright.bench.pages;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;

/** Something that a person opens or saves again and again. */
interface Page {
    String name();

    /** Opens it once more; what is returned undoes it before its statements are run bare, and does nothing for a read. */
    Undo visit(Visitor visitor) throws IOException;

    @FunctionalInterface
    interface Undo {
        void run(Connection connection) throws SQLException;
    }

    static Page read(String name, String path) {
        return new Page() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public Undo visit(Visitor visitor) throws IOException {
                visitor.get(path);
                return connection -> {};
            }
        };
    }

    static Page save(String name, SheetSaves sheets) {
        return new Page() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public Undo visit(Visitor visitor) throws IOException {
                SheetSaves.Sheet sheet = sheets.next();
                visitor.save(sheet.path(), sheet.fields());
                return connection -> SheetSaves.forget(connection, sheet);
            }
        };
    }
}
