package org.tallywright.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.shared.Ids;

@AppTest
class SetupWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SetupCode codes;

    @Autowired
    JdbcClient jdbc;

    @Test
    void leadsAnEmptyShopToSetUp() throws Exception {
        mvc.perform(get("/sign-in")).andExpect(redirectedUrl("/setup"));
        mvc.perform(get("/setup")).andExpect(status().isOk());
    }

    @Test
    void opensTheShopForWhoHoldsTheCode() throws Exception {
        String code = codes.next().orElseThrow();
        Cookie session = setUp(code, "plumb and level")
                .andExpect(redirectedUrl("/"))
                .andReturn()
                .getResponse()
                .getCookie("tallywright");
        mvc.perform(get("/crew").cookie(session)).andExpect(content().string(containsString("Ada Fenn")));
        assertThat(jdbc.sql("select count(*) from task_kind")
                        .query(Integer.class)
                        .single())
                .isGreaterThan(50);
        assertThat(codes.next()).isEmpty();
    }

    @Test
    void refusesAWrongCodeAndKeepsWhatWasTyped() throws Exception {
        assertThat(codes.next()).isPresent();
        setUp("k7m2-q9xt-none", "plumb and level")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Fenn Joinery")))
                .andExpect(content().string(containsString("not the code")));
    }

    @Test
    void leavesTheCodeGoodWhenAFieldIsRefused() throws Exception {
        String code = codes.next().orElseThrow();
        setUp(code, "short").andExpect(status().isUnprocessableContent());
        setUp(code, "plumb and level").andExpect(redirectedUrl("/"));
    }

    @Test
    void setsUpOnce() throws Exception {
        String code = codes.next().orElseThrow();
        setUp(code, "plumb and level").andExpect(redirectedUrl("/"));
        setUp(code, "plumb and level").andExpect(redirectedUrl("/sign-in"));
        assertThat(jdbc.sql("select count(*) from person").query(Integer.class).single())
                .isEqualTo(1);
    }

    private ResultActions setUp(String code, String password) throws Exception {
        return mvc.perform(post("/setup")
                .with(csrf())
                .param("id", Ids.next().toString())
                .param("code", code)
                .param("shopName", "Fenn Joinery")
                .param("timeZone", "America/New_York")
                .param("units", "imperial")
                .param("currency", "USD")
                .param("name", "Ada Fenn")
                .param("signInName", "ada")
                .param("password", password));
    }
}
