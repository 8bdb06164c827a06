package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.QueryCount;

/** The main pages ask the database as often for many rows as for few, and not often. */
@AppTest
class MainPagesQueryCountTest {
    private static final int MOST = 25;

    @Autowired
    ApplicationContext context;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Test
    void askNoMoreForTenTimesTheRows() throws Exception {
        WholeShop shop = new WholeShop(context);
        Growth growth = new Growth(jdbc, transaction);
        growth.unsoldTask(shop.job());
        Map<String, List<String>> few = counts(shop);
        growth.tenfold(shop.job());
        Map<String, List<String>> many = counts(shop);
        many.forEach((page, statements) -> System.out.println("Statements: " + page + " "
                + few.getOrDefault(page, List.of()).size() + ", with ten times the rows " + statements.size()));
        assertThat(grown(few, many))
                .as("statements of a page, at most " + MOST + " and no more for more rows")
                .isEmpty();
    }

    /** A page that asks once for each row, and one that asks too often whatever the rows. */
    @Test
    void findAPageThatAsksForEachRow() throws Exception {
        Map<String, List<String>> few = Map.of("rows", asked(2), "steady", asked(3), "long", asked(MOST + 1));
        Map<String, List<String>> many = Map.of("rows", asked(20), "steady", asked(3), "long", asked(MOST + 1));
        assertThat(grown(few, many))
                .hasSize(2)
                .anyMatch(line -> line.startsWith("rows: 2 then 20, more of [select 3"))
                .anyMatch(line -> line.startsWith("long: 26 then 26"));
    }

    private List<String> asked(int times) throws Exception {
        return QueryCount.of(() -> {
            for (int row = 1; row <= times; row++) {
                jdbc.sql("select " + row).query(Integer.class).single();
            }
        });
    }

    private static List<String> grown(Map<String, List<String>> few, Map<String, List<String>> many) {
        List<String> grown = new ArrayList<>();
        many.forEach((page, statements) -> {
            int before = few.getOrDefault(page, List.of()).size();
            if (statements.size() > before || statements.size() > MOST) {
                List<String> more = new ArrayList<>(statements);
                few.getOrDefault(page, List.of()).forEach(more::remove);
                grown.add(page + ": " + before + " then " + statements.size() + ", more of "
                        + more.stream().limit(3).toList());
            }
        });
        return grown;
    }

    private Map<String, List<String>> counts(WholeShop shop) throws Exception {
        String job = "/jobs/" + shop.one("select number from job where id = ?", shop.job());
        Map<String, List<String>> counts = new LinkedHashMap<>();
        for (Reader reader : List.of(Reader.OWNER, Reader.HELPER)) {
            for (String page :
                    List.of("/", "/jobs", job, job + "/hours", job + "/materials", job + "/photos", "/hours")) {
                count(shop, reader, page, counts);
            }
        }
        for (String page : List.of(
                "/past",
                "/past/jobs",
                job + "/review",
                job + "/estimate",
                "/materials/purchases",
                "/materials/stock",
                "/materials/yields")) {
            count(shop, Reader.OWNER, page, counts);
        }
        count(shop, Reader.STRANGER, "/c/" + shop.clientToken(), counts);
        return counts;
    }

    private static void count(WholeShop shop, Reader reader, String page, Map<String, List<String>> counts)
            throws Exception {
        List<String> statements = QueryCount.of(() ->
                assertThat(shop.ask(reader, get(page)).getStatus()).as(page).isEqualTo(200));
        assertThat(statements).as(page).isNotEmpty();
        counts.put(reader.code() + " " + page.replaceFirst("/c/.*", "/c/{token}"), statements);
    }
}
