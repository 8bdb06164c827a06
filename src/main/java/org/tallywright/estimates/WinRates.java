package org.tallywright.estimates;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Money;
import org.tallywright.shared.ShopClock;

/**
 * What became of the shop's offers, in all and by kind of piece. A job counts once, however many revisions its bid had; a
 * job with pieces of two kinds counts with both. For the owner only.
 */
@Service
public class WinRates {
    private static final String OFFERS = """
            select j.number, j.title, j.state as job_state, l.state as bid_state, l.valid_until, l.declined_for,
                b.issued, b.withdrawn, coalesce(w.price_amount, 0) as won_amount, l.price_amount as last_amount,
                b.accepted, array(select distinct coalesce(k.name, '') from piece p
                    left join piece_kind k on k.id = p.piece_kind_id where p.job_id = j.id order by 1) as kinds
            from job j
            cross join lateral (select count(*)::int as issued, count(*) filter (where state = 'withdrawn')::int as withdrawn,
                    coalesce(bool_or(state = 'accepted'), false) as accepted
                from bid where job_id = j.id and kind = 'bid') b
            cross join lateral (select state, valid_until, declined_for, price_amount from bid
                where job_id = j.id and kind = 'bid' order by state = 'withdrawn', issued_at desc, id desc limit 1) l
            left join lateral (select sum(price_amount) as price_amount from bid
                where job_id = j.id and state = 'accepted' and kind <> 'change order'
                    and (kind = 'bid' or option_of in (select id from bid where job_id = j.id and kind = 'bid'))) w on true
            order by j.year desc, j.sequence desc""";

    private final JdbcClient jdbc;
    private final ShopClock clock;

    WinRates(JdbcClient jdbc, ShopClock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** What became of the offer of a job. */
    public enum Outcome {
        WON,
        LOST,
        /** Its date passed without an answer. */
        LAPSED,
        OPEN,
        /** The shop took it back. */
        WITHDRAWN
    }

    /**
     * A job that was offered.
     *
     * @param price before tax: of what was accepted with its options, else of the last bid without any
     * @param issued number of revisions
     * @param reason picked for a no, or empty
     */
    public record Offered(
            String number, String title, List<String> kinds, Outcome outcome, Money price, int issued, String reason) {
        public Offered {
            kinds = List.copyOf(kinds);
        }
    }

    /**
     * Offers of one kind of piece.
     *
     * @param kind empty for all together, "" in {@link Record#kinds} for pieces of no kind
     * @param interval of the share that was won among those decided; null where none is decided
     */
    public record Rate(
            String kind,
            int offers,
            int won,
            int lost,
            int lapsed,
            int open,
            int withdrawn,
            Money money,
            @Nullable WilsonInterval interval) {
        public int decided() {
            return won + lost + lapsed;
        }
    }

    /** @param kinds the most offered first */
    public record Record(Rate all, List<Rate> kinds, List<Offered> offers) {}

    @Transactional(readOnly = true)
    public Record read() {
        LocalDate today = clock.today();
        List<Offered> offers =
                jdbc.sql(OFFERS).query((row, n) -> offered(row, today)).list();
        Map<String, List<Offered>> byKind = new TreeMap<>();
        for (Offered offer : offers) {
            for (String kind : offer.kinds().isEmpty() ? List.of("") : offer.kinds()) {
                byKind.computeIfAbsent(kind, k -> new ArrayList<>()).add(offer);
            }
        }
        List<Rate> kinds = byKind.entrySet().stream()
                .map(entry -> rate(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparing((Rate rate) -> -rate.offers()))
                .toList();
        return new Record(rate("", offers), kinds, offers);
    }

    private static Offered offered(ResultSet row, LocalDate today) throws SQLException {
        Outcome outcome = outcome(row, today);
        return new Offered(
                row.getString("number"),
                row.getString("title"),
                List.of((String[]) row.getArray("kinds").getArray()),
                outcome,
                Money.of(row.getBigDecimal(outcome == Outcome.WON ? "won_amount" : "last_amount")),
                row.getInt("issued"),
                row.getString("declined_for"));
    }

    private static Outcome outcome(ResultSet row, LocalDate today) throws SQLException {
        if (row.getBoolean("accepted")) {
            return Outcome.WON;
        }
        BidState last = BidState.of(row.getString("bid_state"));
        if (last == BidState.DECLINED || row.getString("job_state").equals("lost")) {
            return Outcome.LOST;
        }
        if (last == BidState.WITHDRAWN) {
            return Outcome.WITHDRAWN;
        }
        return today.isAfter(row.getObject("valid_until", LocalDate.class)) ? Outcome.LAPSED : Outcome.OPEN;
    }

    private static Rate rate(String kind, List<Offered> offers) {
        int won = count(offers, Outcome.WON);
        int lost = count(offers, Outcome.LOST);
        int lapsed = count(offers, Outcome.LAPSED);
        int decided = won + lost + lapsed;
        Money money = Money.sum(offers.stream()
                .filter(offer -> offer.outcome() == Outcome.WON)
                .map(Offered::price)
                .toList());
        return new Rate(
                kind,
                offers.size(),
                won,
                lost,
                lapsed,
                count(offers, Outcome.OPEN),
                count(offers, Outcome.WITHDRAWN),
                money,
                decided == 0 ? null : WilsonInterval.of(won, decided));
    }

    private static int count(List<Offered> offers, Outcome outcome) {
        return (int) offers.stream().filter(offer -> offer.outcome() == outcome).count();
    }
}
