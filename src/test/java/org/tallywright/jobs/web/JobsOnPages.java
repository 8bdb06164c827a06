package org.tallywright.jobs.web;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** What the tests of a job's pages share: an owner, requests with his sign-in, answers as documents. */
@AppTest
abstract class JobsOnPages {
    @Autowired
    MockMvc mvc;

    @Autowired
    SampleJobs sample;

    @Autowired
    SamplePeople people;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;

    @BeforeEach
    void owner() {
        ada = people.owner();
    }

    static MockHttpServletRequestBuilder to(String path) {
        return get(path);
    }

    Document page(String path, SignedIn me) throws Exception {
        return answer(get(path), me, 200);
    }

    ResultActions send(MockHttpServletRequestBuilder request, SignedIn me) throws Exception {
        return mvc.perform(request.with(signedIn(me)).with(csrf()));
    }

    Document answer(MockHttpServletRequestBuilder request, SignedIn me, int status) throws Exception {
        return Jsoup.parse(send(request, me)
                .andExpect(status().is(status))
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    int count(String table) {
        return jdbc.sql("select count(*) from " + table).query(Integer.class).single();
    }

    String text(String sql, Object... values) {
        return jdbc.sql(sql).params(values).query(String.class).single();
    }
}
