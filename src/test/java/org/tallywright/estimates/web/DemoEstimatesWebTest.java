package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.demo.DemoShop;
import org.tallywright.estimates.AcceptedBid;
import org.tallywright.estimates.Bids;
import org.tallywright.setup.SetupCode;
import org.tallywright.shared.Money;
import org.tallywright.web.SignedIn;

/** The pages over two years of an invented shop: whatever is in it opens and adds up. */
@AppTest
class DemoEstimatesWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    DemoShop demo;

    @Autowired
    SetupCode codes;

    @Autowired
    Bids bids;

    @Autowired
    JdbcClient jdbc;

    @Test
    void opensEveryEstimateAndEveryBid() throws Exception {
        SignedIn ada = demo.load(codes.next().orElseThrow(), ZoneId.of("America/New_York"));

        for (String number :
                jdbc.sql("select number from job").query(String.class).list()) {
            String page = html(ada, "/jobs/" + number + "/estimate");
            assertThat(Jsoup.parse(page).select("#tasks, #materials, #price, #bids"))
                    .hasSize(4);
        }
        List<UUID> issued = jdbc.sql("select id from bid").query(UUID.class).list();
        assertThat(issued).hasSizeGreaterThan(8);
        for (UUID bid : issued) {
            AcceptedBid inside = bids.inside(bid);
            assertThat(html(ada, "/bids/" + bid)).contains(inside.number());
            assertThat(html(ada, "/bids/" + bid + "/sums"))
                    .contains(inside.sums().sum().price().toString());
        }
    }

    @Test
    void soldEveryLineOfTheAcceptedBidsOnce() {
        demo.load(codes.next().orElseThrow(), ZoneId.of("America/New_York"));

        for (UUID job : jdbc.sql("select id from job").query(UUID.class).list()) {
            for (AcceptedBid bid : bids.accepted(job)) {
                Money lines =
                        Money.sum(bid.materials().stream().map(m -> m.amount()).toList());
                assertThat(lines).as(bid.number()).isEqualTo(bid.sums().sum().material());
            }
        }
        assertThat(jdbc.sql("""
                        select count(*) from (select x.task_id from bid_task x join bid b on b.id = x.bid_id
                            where b.state = 'accepted' group by x.task_id having count(*) > 1) twice""").query(Integer.class).single()).isZero();
    }

    private String html(SignedIn me, String path) throws Exception {
        return mvc.perform(get(path).with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
