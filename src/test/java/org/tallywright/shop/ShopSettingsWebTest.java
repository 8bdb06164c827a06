package org.tallywright.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

@AppTest
class ShopSettingsWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    SignedIn ada;

    @BeforeEach
    void adaOwnsAShop() {
        ada = people.owner();
    }

    @Test
    void savesTheSettings() throws Exception {
        mvc.perform(form("0")).andExpect(redirectedUrl("/shop"));
        mvc.perform(get("/shop").with(signedIn(ada)))
                .andExpect(content().string(containsString("Fenn Built-ins of the North")))
                .andExpect(content().string(containsString("17.25")));
    }

    @Test
    void refusesBesideTheFieldAndKeepsTheRest() throws Exception {
        mvc.perform(post("/shop")
                        .with(csrf())
                        .with(signedIn(ada))
                        .param("version", "0")
                        .param("name", "Kept as typed")
                        .param("marginPercent", "100"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Kept as typed")))
                .andExpect(content().string(containsString("This goes up to 99.9 %.")));
    }

    @Test
    void showsBothVersionsToTheSecondOfTwo() throws Exception {
        mvc.perform(form("0")).andExpect(redirectedUrl("/shop"));
        mvc.perform(form("0"))
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("Both versions")));
    }

    @ParameterizedTest
    @CsvSource({
        "timeZone, +03:00, by its place",
        "timeZone, GMT+5, by its place",
        "timeZone, EST5EDT, by its place",
        "timeZone, Etc/GMT-14, by its place",
        "timeZone, Mill/Lane, by its place",
        "currency, XXX, is no money",
        "currency, XAU, is no money",
        "currency, KWD, not counted in hundredths",
        "currency, dollar, three letters"
    })
    void refusesInWordsAZoneOfNoPlaceAndACurrencyOfNoMoney(String field, String typed, String says) throws Exception {
        String page = mvc.perform(form("0").with(request -> {
                    request.setParameter(field, typed);
                    return request;
                }))
                .andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(Jsoup.parse(page).select("#" + field + "-error").text()).contains(says);
        assertThat(Jsoup.parse(page).select("#" + field).val()).isEqualTo(typed);
    }

    private MockHttpServletRequestBuilder form(String version) {
        return post("/shop")
                .with(csrf())
                .with(signedIn(ada))
                .param("version", version)
                .param("name", "Fenn Built-ins of the North")
                .param("timeZone", "America/New_York")
                .param("units", "imperial")
                .param("currency", "USD")
                .param("day", "8h")
                .param("overtimeWeek", "40")
                .param("overtimeDay", "")
                .param("overtimePremium", "50")
                .param("overheadRate", "17.25")
                .param("marginPercent", "16")
                .param("contingencyPercent", "5")
                .param("roundingStep", "10")
                .param("taxPercent", "0")
                .param("taxLabel", "")
                .param("bidValidDays", "30")
                .param("bidTerms", "Half to book.")
                .param("contactLines", "Unit 4");
    }
}
