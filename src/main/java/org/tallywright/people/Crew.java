package org.tallywright.people;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Token;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Takes people in, gives them their role, pay and way to sign in. */
@Service
@Transactional
public class Crew {
    private static final Duration INVITATION_LASTS = Duration.ofDays(7);

    private final Persons persons;
    private final Accounts accounts;
    private final WageRows wages;
    private final JdbcClient jdbc;
    private final PasswordEncoder passwords;
    private final Trail trail;
    private final SaveTurn turn;
    private final Clock clock;

    Crew(
            Persons persons,
            Accounts accounts,
            WageRows wages,
            JdbcClient jdbc,
            PasswordEncoder passwords,
            Trail trail,
            SaveTurn turn,
            Clock clock) {
        this.persons = persons;
        this.accounts = accounts;
        this.wages = wages;
        this.jdbc = jdbc;
        this.passwords = passwords;
        this.trail = trail;
        this.turn = turn;
        this.clock = clock;
    }

    /** The first person of a shop, who owns it; called by set-up inside its own transaction and trail. */
    public SignedIn firstOwner(UUID id, String name, String signInName, String password) {
        Person person = persons.save(new Person(id, name(name), Role.OWNER, clock.instant()));
        Account account = accounts.save(newAccount(id, signInName, password));
        return new SignedIn(id, person.name(), Role.OWNER, account.sessionEpoch());
    }

    /** Takes a person in; the same id and content again is a repeat of the same save. */
    public void takeIn(UUID id, String name, Role role, SignedIn by) {
        trail.by(by.personId());
        Optional<Person> there = persons.findById(id);
        if (there.isEmpty()) {
            persons.save(new Person(id, name(name), role, clock.instant()));
        } else if (!there.get().name().equals(name(name)) || there.get().role() != role) {
            throw new Stale("person");
        }
    }

    public void change(UUID id, int version, String name, Role role, boolean active, SignedIn by) {
        trail.by(by.personId());
        Person person = persons.findById(id).orElseThrow(() -> new NotHere("person"));
        if (person.version() != version) {
            throw new Stale("person", beside(person, name, role, active));
        }
        boolean sameRights = person.role() == role && person.active() == active;
        person.rename(name(name));
        person.become(role, active, persons.countByRoleAndActiveTrueAndIdNot(Role.OWNER, id) > 0);
        if (!sameRights) {
            accounts.findById(id).ifPresent(Account::signOutEverywhere);
        }
    }

    private static List<Stale.Row> beside(Person kept, String name, Role role, boolean active) {
        return List.of(
                new Stale.Row("Name", kept.name(), name),
                new Stale.Row("Role", kept.role().label(), role.label()),
                new Stale.Row("Active", kept.active() ? "yes" : "no", active ? "yes" : "no"));
    }

    /**
     * Sets pay from a day on. The same figures again are a repeat; other figures for a day that has some correct them.
     *
     * @param corrects the figures of that day that the page showed, as {@link Wages.Row#figures()}; null where it showed none
     * @throws Refused where the day has other figures than the page showed
     * @throws Stale where this save was kept before with another day
     */
    public void pay(
            UUID id,
            UUID person,
            LocalDate from,
            BigDecimal wage,
            BigDecimal burden,
            @Nullable String corrects,
            SignedIn by) {
        turn.of(person);
        trail.by(by.personId());
        if (!persons.existsById(person)) {
            throw new NotHere("person");
        }
        Wage there = wages.findByPersonIdAndFromDate(person, from).orElse(null);
        if (there == null) {
            wages.findById(id).ifPresent(kept -> {
                throw new Stale(
                        "pay", List.of(new Stale.Row("From", kept.fromDate().toString(), from.toString())));
            });
            wages.save(new Wage(id, person, from, wage, burden));
        } else if (!there.figures().equals(Wages.figures(wage, burden))) {
            if (!there.figures().equals(corrects)) {
                throw new Refused(
                        "from",
                        "Pay from this day is " + there.figures()
                                + " already. Save again to correct it to what you typed.");
            }
            there.correct(wage, burden);
        }
    }

    public void removePay(UUID person, UUID wage, SignedIn by) {
        trail.by(by.personId());
        int removed = jdbc.sql("delete from wage where id = ? and person_id = ?")
                .params(wage, person)
                .update();
        if (removed == 0) {
            throw new NotHere("wage");
        }
    }

    /** Makes a one-time link, good for a week; earlier unused ones of the person end. @return the token, shown once */
    public String invite(UUID person, SignedIn by) {
        trail.by(by.personId());
        return link(person, by.personId());
    }

    /** As {@link #invite}, asked for where the server is started; the trail then names the shop itself. */
    public String inviteFromConsole(UUID person) {
        trail.byShop();
        return link(person, null);
    }

    private String link(UUID person, @Nullable UUID by) {
        if (!persons.findById(person).map(Person::active).orElseThrow(() -> new NotHere("person"))) {
            throw new Refused("This person is not active; make them active first.");
        }
        Instant now = clock.instant();
        jdbc.sql("update invitation set revoked_at = ? where person_id = ? and used_at is null and revoked_at is null")
                .params(Timestamp.from(now), person)
                .update();
        String token = Token.next();
        jdbc.sql("""
                        insert into invitation (id, person_id, token_hash, created_by, created_at, expires_at)
                        values (?, ?, ?, ?, ?, ?)""")
                .param(Ids.next())
                .param(person)
                .param(Token.hash(token))
                .param(by)
                .param(Timestamp.from(now))
                .param(Timestamp.from(now.plus(INVITATION_LASTS)))
                .update();
        return token;
    }

    /** Active people of that name or sign-in name, capital letters or not. */
    @Transactional(readOnly = true)
    public List<PersonName> activeCalled(String name) {
        return jdbc.sql("""
                        select p.id, p.name, p.role from person p left join account a on a.person_id = p.id
                        where p.active and lower(:name) in (lower(p.name), lower(a.sign_in_name))""").param("name", name.strip()).query(Crew::personName).list();
    }

    /** The names of all active people in a row, for one who looks for a name. */
    @Transactional(readOnly = true)
    public String activeNames() {
        return jdbc.sql("select coalesce(string_agg(name, ', ' order by lower(name)), '') from person where active")
                .query(String.class)
                .single();
    }

    /** Whom an unused, unexpired link is for. */
    @Transactional(readOnly = true)
    public Optional<PersonName> invited(String token) {
        return jdbc.sql("""
                        select p.id, p.name, p.role from invitation i join person p on p.id = i.person_id
                        where i.token_hash = ? and i.used_at is null and i.revoked_at is null and i.expires_at > ? and p.active""")
                .params(Token.hash(token), Timestamp.from(clock.instant()))
                .query(Crew::personName)
                .optional();
    }

    private static PersonName personName(ResultSet row, int number) throws SQLException {
        return new PersonName(row.getObject("id", UUID.class), row.getString("name"), Role.of(row.getString("role")));
    }

    /** Uses the link: sets sign-in name and password, and signs every older session out. */
    public void accept(String token, String signInName, String password) {
        PersonName person = invited(token).orElseThrow(() -> new NotHere("invitation"));
        trail.by(person.id());
        int used = jdbc.sql("update invitation set used_at = ? where token_hash = ? and used_at is null")
                .params(Timestamp.from(clock.instant()), Token.hash(token))
                .update();
        if (used == 0) {
            throw new NotHere("invitation");
        }
        Optional<Account> there = accounts.findById(person.id());
        if (there.isPresent()) {
            String name = freeName(signInName, person.id());
            there.get().signInAs(name, passwords.encode(Passwords.checked(password, name)));
        } else {
            accounts.save(newAccount(person.id(), signInName, password));
        }
    }

    /** @throws Refused when the present password is not right */
    public void changePassword(SignedIn me, String present, String next) {
        trail.by(me.personId());
        Account account = accounts.findById(me.personId()).orElseThrow(() -> new NotHere("account"));
        if (!passwords.matches(present, account.passwordHash())) {
            throw new Refused("present", "This is not your present password.");
        }
        account.signInAs(account.signInName(), passwords.encode(Passwords.checked(next, account.signInName())));
    }

    public void signOutEverywhere(UUID person, SignedIn by) {
        trail.by(by.personId());
        accounts.findById(person).orElseThrow(() -> new NotHere("account")).signOutEverywhere();
    }

    private Account newAccount(UUID person, String signInName, String password) {
        String name = freeName(signInName, null);
        return new Account(person, name, passwords.encode(Passwords.checked(password, name)), clock.instant());
    }

    private String freeName(String typed, @Nullable UUID except) {
        String name = PersonWords.signInName(typed);
        boolean taken = accounts.findBySignInNameIgnoreCase(name)
                .map(Account::personId)
                .filter(owner -> !owner.equals(except))
                .isPresent();
        if (taken) {
            throw new Refused("signInName", "Somebody signs in with this name; choose another.");
        }
        return name;
    }

    private static String name(String typed) {
        return PersonWords.name(typed);
    }
}
