package org.tallywright.clients.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.clients.ClientBook;
import org.tallywright.clients.ClientCard;
import org.tallywright.clients.SiteCard;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class ClientWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    ClientBook book;

    SignedIn ada;

    @BeforeEach
    void openShop() {
        ada = people.owner();
    }

    @Test
    void leadsAnEmptyBookToItsFirstClient() throws Exception {
        see("/clients").andExpect(status().isOk()).andExpect(content().string(containsString("Add the first client")));
    }

    @Test
    void addsAClientOnceAndFindsIt() throws Exception {
        UUID id = Ids.next();
        for (int tap = 0; tap < 2; tap++) {
            send(
                            "/clients",
                            "id",
                            id.toString(),
                            "name",
                            "Tessaly  Quorn ",
                            "phone",
                            "555-0107",
                            "email",
                            "t@example.com",
                            "note",
                            "Likes quartersawn.\r\nMornings.")
                    .andExpect(redirectedUrl("/clients/" + id));
        }
        assertThat(book.all())
                .containsExactly(new ClientCard(
                        id, "Tessaly Quorn", "555-0107", "t@example.com", "Likes quartersawn.\nMornings.", 0));
        see("/clients?q=QUORN")
                .andExpect(content().string(containsString("Tessaly Quorn")))
                .andExpect(content().string(not(containsString("No clients yet"))));
        see("/clients?q=0107").andExpect(content().string(containsString("Tessaly Quorn")));
        see("/clients?q=nobody%").andExpect(content().string(containsString("No client has these words.")));
    }

    @Test
    void keepsWhatWasTypedWhenItRefuses() throws Exception {
        send("/clients", "name", " ", "phone", "555-0199", "email", "not mail", "note", "Keep me.")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("value=\"555-0199\"")))
                .andExpect(content().string(containsString("value=\"not mail\"")))
                .andExpect(content().string(containsString("Keep me.")))
                .andExpect(content().string(containsString("A mail address has one @")));
        send("/clients", "name", "x".repeat(121)).andExpect(status().is(422));
        send("/clients", "name", "a\u0000b").andExpect(status().is(422));
        assertThat(book.all()).isEmpty();
    }

    @Test
    void escapesWhatLooksLikeMarkup() throws Exception {
        UUID id = client("<b>Quorn</b> \uD83E\uDE9A");
        see("/clients/" + id)
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("&lt;b&gt;Quorn")))
                .andExpect(content().string(not(containsString("<b>Quorn"))));
    }

    @Test
    void showsBothVersionsWhenSomebodyElseWasFaster() throws Exception {
        UUID id = client("Tessaly Quorn");
        send("/clients/" + id, "version", "0", "name", "Tessaly Quorn-Hale").andExpect(status().is3xxRedirection());
        send("/clients/" + id, "version", "0", "name", "T. Quorn")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("Tessaly Quorn-Hale")))
                .andExpect(content().string(containsString("T. Quorn")));
        send("/clients/" + id, "name", "Without a version").andExpect(status().isConflict());
        assertThat(book.card(id).name()).isEqualTo("Tessaly Quorn-Hale");
    }

    @Test
    void keepsSitesWithTheirConditions() throws Exception {
        UUID client = client("Tessaly Quorn");
        UUID id = Ids.next();
        see("/clients/" + client).andExpect(content().string(containsString("Add the first site")));
        send(
                        "/clients/" + client + "/sites",
                        "id",
                        id.toString(),
                        "address",
                        "12 Mill Lane",
                        "accessNote",
                        "Side door.",
                        "drive",
                        "25",
                        "occupied",
                        "true",
                        "_stairs",
                        "on")
                .andExpect(redirectedUrl("/clients/" + client));
        assertThat(book.sitesOf(client))
                .containsExactly(new SiteCard(id, client, "12 Mill Lane", "Side door.", 25, true, false, false, 0));
        see("/clients/" + client)
                .andExpect(content().string(containsString("Side door.")))
                .andExpect(content().string(containsString("25 min one way")))
                .andExpect(content().string(containsString("/jobs?client=" + client)));
        send(
                        "/clients/" + client + "/sites/" + id,
                        "version",
                        "0",
                        "address",
                        "12 Mill Lane",
                        "drive",
                        "1h10",
                        "stairs",
                        "true")
                .andExpect(status().is3xxRedirection());
        assertThat(book.site(id).orElseThrow().oneWayMinutes()).isEqualTo(70);
        assertThat(book.site(id).orElseThrow().conditions()).isEqualTo(List.of("stairs or lift"));
        see("/clients?q=mill lane").andExpect(content().string(containsString("Tessaly Quorn")));
    }

    @Test
    void refusesASiteWithoutAddressAndALongDrive() throws Exception {
        UUID client = client("Tessaly Quorn");
        send("/clients/" + client + "/sites", "address", "", "accessNote", "Side door.", "drive", "3 days")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("Side door.")))
                .andExpect(content().string(containsString("value=\"3 days\"")));
        send("/clients/" + client + "/sites", "address", "12 Mill Lane", "drive", "9999")
                .andExpect(status().is(422));
        assertThat(book.sitesOf(client)).isEmpty();
    }

    @Test
    void keepsASiteWithItsClient() throws Exception {
        UUID quorn = client("Tessaly Quorn");
        UUID other = client("Orrin Baskwell");
        UUID site = Ids.next();
        send("/clients/" + quorn + "/sites", "id", site.toString(), "address", "12 Mill Lane");
        see("/clients/" + other + "/sites/" + site).andExpect(status().isNotFound());
        send("/clients/" + other + "/sites/" + site, "version", "0", "address", "Elsewhere")
                .andExpect(status().isNotFound());
        send("/clients/" + other + "/sites", "id", site.toString(), "address", "Elsewhere")
                .andExpect(status().isNotFound());
        send("/clients/" + Ids.next() + "/sites", "address", "Elsewhere").andExpect(status().isNotFound());
        assertThat(book.site(site).orElseThrow().clientId()).isEqualTo(quorn);
    }

    @Test
    void opensForOwnerAndLeadOnly() throws Exception {
        UUID client = client("Tessaly Quorn");
        for (String path : new String[] {
            "/clients",
            "/clients/" + client,
            "/clients/new",
            "/clients/" + client + "/edit",
            "/clients/" + client + "/sites/new"
        }) {
            see(path).andExpect(status().isOk());
            mvc.perform(get(path).with(signedIn(people.lead()))).andExpect(status().isOk());
            mvc.perform(get(path).with(signedIn(people.helper())))
                    .andExpect(status().isForbidden())
                    .andExpect(content().string(not(containsString("Quorn"))));
            mvc.perform(get(path).with(signedIn(people.bookkeeper()))).andExpect(status().isForbidden());
        }
        see("/clients/" + Ids.next()).andExpect(status().isNotFound());
    }

    @Test
    void turnsPages() throws Exception {
        for (int i = 0; i < 51; i++) {
            client("Client " + String.format("%02d", i));
        }
        see("/clients").andExpect(content().string(not(containsString("Client 50"))));
        see("/clients?page=2").andExpect(content().string(containsString("Client 50")));
        see("/clients?page=99999999999").andExpect(status().isOk());
        see("/clients?q=client&page=2").andExpect(content().string(containsString("Client 50")));
    }

    private UUID client(String name) throws Exception {
        UUID id = Ids.next();
        send("/clients", "id", id.toString(), "name", name).andExpect(redirectedUrl("/clients/" + id));
        return id;
    }

    private ResultActions see(String path) throws Exception {
        return mvc.perform(get(path).with(signedIn(ada)));
    }

    private ResultActions send(String path, String... fields) throws Exception {
        var request = post(path).with(signedIn(ada)).with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request.param(fields[i], fields[i + 1]);
        }
        return mvc.perform(request);
    }
}
