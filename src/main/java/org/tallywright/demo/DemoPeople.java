package org.tallywright.demo;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/** The cast: owner, helper and bookkeeper with their dated pay, and the clients with their sites. */
@Component
class DemoPeople {
    /** Shown on the page, so that a visitor can be each of them. */
    static final String PASSWORD = "plumb level square";

    private final PasswordEncoder passwords;

    DemoPeople(PasswordEncoder passwords) {
        this.passwords = passwords;
    }

    void load(DemoLedger ledger) {
        people(ledger);
        clients(ledger);
    }

    private void people(DemoLedger ledger) {
        String hash = passwords.encode(PASSWORD);
        Set<String> seen = new HashSet<>();
        List<Object[]> persons = DemoLedger.list();
        List<Object[]> accounts = DemoLedger.list();
        List<Object[]> wages = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("people")) {
            String key = row.get("key");
            if (seen.add(key)) {
                UUID id = ledger.make("person/" + key);
                var since = DemoLedger.stamp(ledger.at(row.get("from_offset"), 480));
                persons.add(new Object[] {id, row.get("name"), row.get("role"), since});
                accounts.add(new Object[] {id, key, hash, since});
            }
            wages.add(new Object[] {
                ledger.make("wage/" + key + wages.size()),
                ledger.id("person/" + key),
                DemoLedger.day(ledger.date(row.get("from_offset"))),
                DemoLedger.number(row.get("wage_per_hour")),
                DemoLedger.number(row.get("burden_percent"))
            });
        }
        ledger.insert("insert into person (id, name, role, created_at, version) values (?, ?, ?, ?, 0)", persons);
        ledger.insert(
                "insert into account (person_id, sign_in_name, password_hash, created_at, version) values (?, ?, ?, ?, 0)",
                accounts);
        ledger.insert(
                "insert into wage (id, person_id, from_date, wage_amount, burden_percent, version) values (?, ?, ?, ?, ?, 0)",
                wages);
    }

    private static void clients(DemoLedger ledger) {
        List<Object[]> clients = DemoLedger.list();
        List<Object[]> sites = DemoLedger.list();
        for (DemoRow row : DemoFile.rows("clients")) {
            UUID client = ledger.make("client/" + row.get("key"));
            clients.add(new Object[] {client, row.get("name"), row.get("phone"), row.get("email")});
            sites.add(new Object[] {
                ledger.make("site/" + row.get("key")),
                client,
                row.get("site_address"),
                row.get("access_notes"),
                Integer.parseInt(row.get("one_way_minutes"))
            });
        }
        ledger.insert("insert into client (id, name, phone, email, version) values (?, ?, ?, ?, 0)", clients);
        ledger.insert(
                "insert into site (id, client_id, address, access_note, one_way_minutes, version) values (?, ?, ?, ?, ?, 0)",
                sites);
    }
}
