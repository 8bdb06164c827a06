package org.tallywright.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.people.Crew;
import org.tallywright.people.SamplePeople;
import org.tallywright.server.StartRefused;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A sole owner who forgot the password, at the machine. */
@AppTest
@ExtendWith(OutputCaptureExtension.class)
class InviteAtStartWebTest {
    @Autowired
    InviteAtStart atStart;

    @Autowired
    Crew crew;

    @Autowired
    SamplePeople people;

    @Autowired
    MockMvc mvc;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;

    @BeforeEach
    void adaForgot() {
        ada = people.owner();
        crew.accept(crew.invite(ada.personId(), ada), "ada", "plumb and level");
    }

    @Test
    void printsALinkThatSetsANewPassword(CapturedOutput output) throws Exception {
        start("--invite=ADA");
        String link = output.getOut()
                .lines()
                .filter(line -> line.startsWith("One-time link for Ada Fenn, good for 7 days: http"))
                .findFirst()
                .orElseThrow();
        mvc.perform(post(link.substring(link.indexOf("/invitations/")))
                        .with(csrf())
                        .param("signInName", "ada")
                        .param("password", "square and true"))
                .andExpect(redirectedUrl("/sign-in?ready"));
        signIn("square and true").andExpect(redirectedUrl("/"));
        signIn("plumb and level").andExpect(redirectedUrl("/sign-in?no"));
    }

    @Test
    void leavesATrailThatNamesTheShopAndNoToken() {
        start("--invite=Ada Fenn");
        assertThat(jdbc.sql("""
                        select after::text from audit_entry where subject = 'invitation' and act = 'insert' and person_id is null""").query(String.class).list())
                .singleElement()
                .satisfies(after ->
                        assertThat(after).contains(ada.personId().toString()).doesNotContain("token"));
    }

    @Test
    void makesNothingUnasked() {
        start("--server.port=0");
        assertThat(jdbc.sql("select count(*) from invitation where created_by is null")
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    void refusesANameThatIsNobodysOrTwoPeoples() {
        assertThatThrownBy(() -> start("--invite=Tessaly"))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("\"Tessaly\"")
                .hasMessageContaining("Ada Fenn");
        people.person("Ada Fenn", Role.HELPER);
        assertThatThrownBy(() -> start("--invite=ada fenn"))
                .isInstanceOf(StartRefused.class)
                .hasMessageContaining("More than one person");
    }

    private void start(String argument) {
        atStart.run(new DefaultApplicationArguments(argument));
    }

    private ResultActions signIn(String password) throws Exception {
        return mvc.perform(
                post("/sign-in").with(csrf()).param("signInName", "ada").param("password", password));
    }
}
