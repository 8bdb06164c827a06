package org.tallywright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.setup.SetupCode;

/** Layout drawings with very narrow parts: their numbers can be read and do not lie over each other, on a phone, a laptop and paper. */
@AppTest
class LayoutBrowserTest {
    /** Between the margins of the page. */
    private static final int A4_WIDE = 680;

    private static final int LETTER_HIGH = 927;

    private static final String NARROW = """
            name\tqty\tlength\twidth\tmaterial\tgrain
            Panel\t2\t44\t30\tply_birch_12\talong
            Strip\t14\t40\t3/4\tply_birch_12\talong
            Sliver\t5\t1/2\t30\tply_birch_12\tany
            Bead\t1\t20\t1/4\tply_birch_12\tany
            Plate\t6\t1\t1\tply_birch_12\tany
            Crown piece\t6\t31\t4 1/4\tcrown_poplar\t
            Return\t9\t3\t4 1/4\tcrown_poplar\t
            Chip\t4\t1/2\t4 1/4\tcrown_poplar\t""";

    /** Of each number that is shown: its corners on the screen and how high its letters are. */
    private static final String NUMBERS = """
            () => [...document.querySelectorAll('svg.layout-drawing')].flatMap((svg, n) => {
                const scale = svg.getScreenCTM().a;
                return [...svg.querySelectorAll('text.number')].filter(t => t.getClientRects().length).map(t => {
                    const r = t.getBoundingClientRect();
                    return { svg: n, text: t.textContent, left: r.left, right: r.right, top: r.top, bottom: r.bottom,
                        size: scale * parseFloat(t.getAttribute('font-size')), turned: t.hasAttribute('transform') };
                });
            })""";

    @LocalServerPort
    private int port;

    @Autowired
    private SetupCode codes;

    @Autowired
    private JdbcClient jdbc;

    @Test
    void numbersOfNarrowPartsCanBeRead() {
        try (Tab owner = new Tab(Chrome.somebody(Chrome.LAPTOP), "http://127.0.0.1:" + port)) {
            owner.open("/");
            owner.fill("code", codes.next().orElseThrow()).press("Open the demo shop");
            String job = jdbc.sql("""
                    select j.number || '/pieces/' || p.id from piece p join job j on j.id = p.job_id
                    where j.state <> 'closed' order by j.number, p.position limit 1""").query(String.class).single();
            owner.open("/jobs/" + job + "/pasted-parts");
            owner.fill("text", NARROW).press("Look at it first");
            owner.press("Add these 8 lines");
            owner.open("/jobs/" + job.substring(0, job.indexOf('/')) + "/buy-list");
            Page page = owner.page;
            for (int width : new int[] {Chrome.PHONE, Chrome.LAPTOP}) {
                page.setViewportSize(width, 900);
                legible(page, width + " px");
            }
            page.setViewportSize(A4_WIDE, 900);
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
            legible(page, "paper");
            Number highest = (Number)
                    page.evaluate(
                            "() => Math.max(...[...document.querySelectorAll('svg.layout-drawing')].map(s => s.getBoundingClientRect().height))");
            assertThat(highest.doubleValue()).as("the highest drawing").isLessThan(LETTER_HIGH / 2.0);
            assertThat(owner.complaints).isEmpty();
        }
    }

    private static void legible(Page page, String where) {
        @SuppressWarnings("unchecked")
        List<Map<String, Object>> numbers = (List<Map<String, Object>>) page.evaluate(NUMBERS);
        assertThat(numbers).as(where).hasSizeGreaterThan(10);
        assertThat(numbers.stream().map(n -> n.get("text").toString()))
                .as(where)
                .anyMatch(text -> text.contains("\u00d7"));
        for (int a = 0; a < numbers.size(); a++) {
            assertThat(figure(numbers.get(a), "size"))
                    .as(where + " " + numbers.get(a))
                    .isGreaterThan(8.5);
            for (int b = a + 1; b < numbers.size(); b++) {
                assertThat(overlap(numbers.get(a), numbers.get(b)))
                        .as(where + " " + numbers.get(a) + " " + numbers.get(b))
                        .isFalse();
            }
        }
    }

    /** Of the figures themselves: the box of a text is a line high, its figures four fifths of their size. */
    private static boolean overlap(Map<String, Object> a, Map<String, Object> b) {
        return a.get("svg").equals(b.get("svg"))
                && Math.max(edge(a, "left", 1), edge(b, "left", 1))
                        < Math.min(edge(a, "right", -1), edge(b, "right", -1))
                && Math.max(edge(a, "top", 1), edge(b, "top", 1))
                        < Math.min(edge(a, "bottom", -1), edge(b, "bottom", -1));
    }

    private static double edge(Map<String, Object> number, String side, int inward) {
        boolean upright = side.equals("top") || side.equals("bottom");
        boolean thin = upright != Boolean.TRUE.equals(number.get("turned"));
        String other = upright ? "bottom" : "right";
        String first = upright ? "top" : "left";
        double line = figure(number, other) - figure(number, first);
        double spare = thin ? Math.max(0, (line - 0.8 * figure(number, "size")) / 2) : 0;
        return figure(number, side) + inward * spare;
    }

    private static double figure(Map<String, Object> number, String name) {
        return ((Number) number.get(name)).doubleValue();
    }
}
