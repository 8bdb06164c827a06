package org.tallywright.people;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import jakarta.servlet.http.Cookie;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.web.SignedIn;

@AppTest
class SignInWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    Crew crew;

    @Autowired
    TestClock clock;

    SignedIn ada;

    @BeforeEach
    void adaHasAPassword() {
        ada = people.owner();
        crew.accept(crew.invite(ada.personId(), ada), "ada", "plumb and level");
        ada = new SignedIn(ada.personId(), ada.name(), ada.role(), 1);
    }

    @Test
    void sendsStrangersToSignIn() throws Exception {
        mvc.perform(get("/crew")).andExpect(redirectedUrl("/sign-in"));
    }

    @Test
    void signsInWithTheRightPassword() throws Exception {
        signIn("ADA ", "plumb and level").andExpect(redirectedUrl("/"));
    }

    @Test
    void refusesAWrongPasswordAndAnUnknownNameAlike() throws Exception {
        signIn("ada", "out of square").andExpect(redirectedUrl("/sign-in?no"));
        signIn("nobody", "out of square").andExpect(redirectedUrl("/sign-in?no"));
    }

    @Test
    void takesStrangeNamesForUnknownOnes() throws Exception {
        signIn("a\u0000b", "out of square").andExpect(redirectedUrl("/sign-in?no"));
        signIn("x".repeat(10_000), "out of square").andExpect(redirectedUrl("/sign-in?no"));
        signIn("", "").andExpect(redirectedUrl("/sign-in?no"));
    }

    @Test
    void slowsGuessingAndLetsInAfterAWhile() throws Exception {
        for (int i = 0; i < 5; i++) {
            signIn("ada", "guess " + i).andExpect(redirectedUrl("/sign-in?no"));
        }
        signIn("ada", "plumb and level").andExpect(redirectedUrl("/sign-in?wait"));
        clock.advance(Duration.ofMinutes(16));
        signIn("ada", "plumb and level").andExpect(redirectedUrl("/"));
    }

    @Test
    void endsOldSessionsWhenSignedOutEverywhere() throws Exception {
        Cookie phone =
                signIn("ada", "plumb and level").andReturn().getResponse().getCookie("tallywright");
        mvc.perform(get("/account").cookie(phone)).andExpect(status().isOk());
        crew.signOutEverywhere(ada.personId(), ada);
        mvc.perform(get("/account").cookie(phone)).andExpect(redirectedUrl("/sign-in"));
    }

    @Test
    void usesAnInvitationOnce() throws Exception {
        SignedIn jonas = people.helper();
        String token = crew.invite(jonas.personId(), ada);
        mvc.perform(post("/invitations/" + token)
                        .with(csrf())
                        .param("signInName", "jonas")
                        .param("password", "rip and crosscut"))
                .andExpect(redirectedUrl("/sign-in?ready"));
        mvc.perform(get("/invitations/" + token)).andExpect(status().isNotFound());
        signIn("jonas", "rip and crosscut").andExpect(redirectedUrl("/"));
    }

    @Test
    void keepsAnOwnerInTheShop() throws Exception {
        mvc.perform(post("/crew/" + ada.personId())
                        .with(csrf())
                        .with(signedIn(ada))
                        .param("version", "0")
                        .param("name", "Ada Fenn")
                        .param("role", "helper")
                        .param("active", "true"))
                .andExpect(status().isUnprocessableContent());
    }

    private ResultActions signIn(String name, String password) throws Exception {
        return mvc.perform(
                post("/sign-in").with(csrf()).param("signInName", name).param("password", password));
    }
}
