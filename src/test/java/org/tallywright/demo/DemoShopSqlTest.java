package org.tallywright.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.setup.SetupCode;
import org.tallywright.shared.Refused;

@AppTest
class DemoShopSqlTest {
    private static final ZoneId ZONE = ZoneId.of("America/New_York");

    @Autowired
    DemoShop demo;

    @Autowired
    SetupCode codes;

    @Autowired
    JdbcClient jdbc;

    @Test
    void fillsAnEmptyShopWithTheWholeScenario() {
        demo.load(codes.next().orElseThrow(), ZONE);
        assertThat(count("job where state = 'closed'")).isEqualTo(6);
        assertThat(count("job where state = 'running'")).isEqualTo(2);
        assertThat(count("time_entry")).isEqualTo(1012);
        assertThat(count("bid where state = 'accepted' and kind = 'bid'")).isEqualTo(8);
        assertThat(count("bid where kind = 'change order'")).isEqualTo(2);
        assertThat(count("purchase")).isEqualTo(DemoFile.rows("purchases").size());
    }

    /** The scenario's own table says what each accepted bid was estimated at, in hours to 0.01. */
    @Test
    void keepsTheHoursOfEachAcceptedBid() {
        demo.load(codes.next().orElseThrow(), ZONE);
        BigDecimal worst = jdbc.sql("""
                        select max(abs(b.estimated_minutes - l.minutes)) from bid b
                        join (select bid_id, sum(estimated_minutes) as minutes from bid_task group by bid_id) l on l.bid_id = b.id
                        where b.state = 'accepted' and b.kind = 'bid'""").query(BigDecimal.class).single();
        // Each line is rounded to the whole minute; thirty lines may be a quarter of an hour apart at most.
        assertThat(worst).isLessThanOrEqualTo(BigDecimal.valueOf(15));
    }

    @Test
    void endsToday() {
        demo.load(codes.next().orElseThrow(), ZONE);
        LocalDate last = jdbc.sql("select max(on_date) from time_entry")
                .query(LocalDate.class)
                .single();
        assertThat(last).isBetween(LocalDate.of(2026, 11, 24), LocalDate.of(2026, 11, 25));
    }

    @Test
    void leavesAShopInUseAlone() {
        demo.load(codes.next().orElseThrow(), ZONE);
        assertThatThrownBy(() -> demo.load("k7m2-q9xt-h4wb", ZONE)).isInstanceOf(Refused.class);
        assertThat(demo.loadIntoEmptyShop(ZONE)).isFalse();
    }

    @Test
    void isRemovedWithoutATrace() {
        demo.load(codes.next().orElseThrow(), ZONE);
        String code = demo.remove();
        assertThat(code).isNotBlank();
        assertThat(count("person")).isZero();
        assertThat(count("audit_entry")).isZero();
        assertThat(codes.shopIsEmpty()).isTrue();
    }

    @Test
    void keepsWeekdays() {
        DemoCalendar wednesday = new DemoCalendar(LocalDate.of(2026, 11, 25));
        assertThat(wednesday.date(0)).isEqualTo(LocalDate.of(2026, 11, 25));
        assertThat(wednesday.date(-7)).isEqualTo(LocalDate.of(2026, 11, 18));
        DemoCalendar sunday = new DemoCalendar(LocalDate.of(2026, 11, 29));
        assertThat(sunday.date(0)).isEqualTo(LocalDate.of(2026, 11, 27));
        // 28 working days lie after Wednesday 0 up to 40; as many after Friday 27 November.
        assertThat(sunday.date(40)).isEqualTo(LocalDate.of(2027, 1, 6));
    }

    private int count(String what) {
        return jdbc.sql("select count(*) from " + what).query(Integer.class).single();
    }
}
