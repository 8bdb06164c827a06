package org.tallywright.demo;

import java.sql.Timestamp;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.jobs.JobClosed;
import org.tallywright.setup.SetupCode;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Units;
import org.tallywright.shop.ShopSettings;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * Fills an empty shop with the scenario, in one transaction, and empties it again. A demo shop is a shop of its own:
 * removing it removes all that was logged in it.
 */
@Service
public class DemoShop {
    /** How the invented shop is paid. */
    static final String PAYMENTS = "35 % at acceptance\n40 % when installation starts\nrest after the walk-through";

    private final JdbcTemplate jdbc;
    private final ShopClock clock;
    private final ShopSettings settings;
    private final SetupCode codes;
    private final CatalogSeed catalog;
    private final DemoPeople people;
    private final DemoBids bids;
    private final DemoTakeoffs takeoffs;
    private final DemoPhotos photos;
    private final Trail trail;
    private final ApplicationEventPublisher events;

    DemoShop(
            JdbcTemplate jdbc,
            ShopClock clock,
            ShopSettings settings,
            SetupCode codes,
            CatalogSeed catalog,
            DemoPeople people,
            DemoBids bids,
            DemoTakeoffs takeoffs,
            DemoPhotos photos,
            Trail trail,
            ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.settings = settings;
        this.codes = codes;
        this.catalog = catalog;
        this.people = people;
        this.bids = bids;
        this.takeoffs = takeoffs;
        this.photos = photos;
        this.trail = trail;
        this.events = events;
    }

    /** @throws Refused when the code is not right; a shop that is set up has none */
    @Transactional
    public SignedIn load(String code, ZoneId zone) {
        codes.use(code);
        return fill(zone);
    }

    /** For a start with the demo property: no code, and only into an empty shop. */
    @Transactional
    public boolean loadIntoEmptyShop(ZoneId zone) {
        if (!codes.shopIsEmpty()) {
            return false;
        }
        fill(zone);
        return true;
    }

    private SignedIn fill(ZoneId zone) {
        trail.byShop();
        settings.open("Fenn Built-ins", zone, Units.IMPERIAL, Currency.getInstance("USD"));
        jdbc.update(
                "update shop set overhead_rate = 15, margin_percent = 16, contingency_percent = 5, contact_lines = ?, bid_terms = ?,"
                        + " bid_payments = ?, demo_loaded_at = ?",
                "Unit 4, Treadle Yard\n555-0100\nshop@example.com",
                "Changes are priced and signed before the work.",
                PAYMENTS,
                Timestamp.from(clock.now()));
        settings.forgetSeen();
        catalog.load();
        DemoLedger ledger = new DemoLedger(jdbc, clock);
        people.load(ledger);
        DemoJobs.load(ledger);
        DemoTasks.load(ledger);
        bids.load(ledger);
        DemoMaterials.load(ledger);
        DemoNotes.load(ledger);
        UUID owner = ledger.id("person/ada");
        takeoffs.load(ledger, owner);
        photos.load(ledger);
        trail.byShop();
        closeJobs(owner);
        return new SignedIn(owner, "Ada Fenn", Role.OWNER);
    }

    /** Finished jobs are closed as any job is, oldest first: their reviews are frozen by who listens. */
    private void closeJobs(UUID owner) {
        List<JobClosed> closed = jdbc.query(
                "select id, closed_on from job where state = 'closed' order by closed_on, number",
                (row, n) -> new JobClosed(row.getObject(1, UUID.class), row.getObject(2, LocalDate.class), owner));
        closed.forEach(events::publishEvent);
    }

    /** How many entries of hours are not of the scenario: what a removal takes besides. */
    public int ownEntries() {
        Integer own = jdbc.queryForObject(
                "select count(*) from time_entry where logged_at > (select demo_loaded_at from shop)", Integer.class);
        return own == null ? 0 : own;
    }

    /** Empties the shop; everybody is signed out. @return the code for setting it up anew */
    @Transactional
    public String remove() {
        if (!settings.current().demo()) {
            throw new Refused("This is not a demo shop; it is not emptied.");
        }
        List<String> tables = jdbc.queryForList("""
                select quote_ident(relname) from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
                and relname <> 'flyway_schema_history'""", String.class);
        jdbc.execute("truncate " + String.join(", ", tables));
        settings.forgetSeen();
        return codes.next().orElseThrow();
    }
}
