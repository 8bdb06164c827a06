package org.tallywright.catalog.web;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.Materials;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.Stages;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** A shop with the starting catalogue, its owner and its lead. */
@AppTest
abstract class CatalogPages {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    CatalogSeed seed;

    @Autowired
    Stages stages;

    @Autowired
    TaskKinds taskKinds;

    @Autowired
    PieceKinds pieceKinds;

    @Autowired
    Materials materials;

    SignedIn ada;

    @BeforeEach
    void openShop() {
        ada = people.owner();
        seed.load();
    }

    ResultActions see(String path) throws Exception {
        return see(path, ada);
    }

    ResultActions see(String path, SignedIn who) throws Exception {
        return mvc.perform(get(path).with(signedIn(who)));
    }

    /** Sends names and values in turn. */
    ResultActions send(String path, String... fields) throws Exception {
        var request = post(path).with(signedIn(ada)).with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request.param(fields[i], fields[i + 1]);
        }
        return mvc.perform(request);
    }

    UUID stage(String name) {
        return stages.named(name).orElseThrow().id();
    }

    UUID taskKind(String code) {
        return taskKinds.coded(code).orElseThrow().id();
    }
}
