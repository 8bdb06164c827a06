package org.tallywright.catalog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class CatalogWebTest extends CatalogPages {
    @Override
    @BeforeEach
    void openShop() {
        ada = people.owner();
    }

    @Test
    void leadsAnEmptyCatalogueToItsStart() throws Exception {
        see("/catalog").andExpect(content().string(containsString("Load the starting catalogue")));
        for (String list : new String[] {"task-kinds", "piece-kinds", "materials", "stages"}) {
            see("/catalog/" + list)
                    .andExpect(status().isOk())
                    .andExpect(content().string(containsString("class=\"empty\"")));
        }
        send("/catalog/starting-catalogue").andExpect(redirectedUrl("/catalog"));
        send("/catalog/starting-catalogue").andExpect(redirectedUrl("/catalog"));
        assertThat(taskKinds.all()).hasSize(53);
        see("/catalog").andExpect(content().string(containsString("53 in use")));
    }
}
