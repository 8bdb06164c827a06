package org.tallywright.catalog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.shared.Ids;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.UnitPrice;

class MaterialWebTest extends CatalogPages {
    @Autowired
    ShopClock clock;

    @Test
    void listsMaterialsByGroupWithTheirPrice() throws Exception {
        see("/catalog/materials")
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Red oak, 5/4, surfaced")))
                .andExpect(content().string(containsString("9.20")))
                .andExpect(content().string(containsString("70 %")))
                .andExpect(content().string(not(containsString("No materials yet"))));
        see("/catalog/materials?q=walnut").andExpect(content().string(not(containsString("Red oak"))));
        see("/catalog/materials/" + oak().id())
                .andExpect(content().string(containsString("invented starting figure")))
                .andExpect(content().string(containsString("in force")));
    }

    @Test
    void addsAMaterialWithItsPriceOnce() throws Exception {
        UUID id = Ids.next();
        for (int tap = 0; tap < 2; tap++) {
            send(
                            "/catalog/materials",
                            "id",
                            id.toString(),
                            "name",
                            "Ash, 4/4",
                            "group",
                            "hardwood",
                            "unit",
                            "bf",
                            "price",
                            "$6.40",
                            "startingYield",
                            "65 %",
                            "purchaseStep",
                            "1",
                            "stocked",
                            "true")
                    .andExpect(redirectedUrl("/catalog/materials/" + id));
        }
        MaterialCard ash = materials.card(id);
        assertThat(ash.code()).isEqualTo("ash_4_4");
        assertThat(ash.startingYield()).hasToString("0.65");
        assertThat(ash.stocked()).isTrue();
        assertThat(materials.priceOn(id, clock.today())).hasValue(UnitPrice.of("6.40"));
        assertThat(materials.active()).hasSize(44);
    }

    @Test
    void keepsWhatWasTypedWhenItRefuses() throws Exception {
        send(
                        "/catalog/materials",
                        "name",
                        "Ash",
                        "unit",
                        "bf",
                        "price",
                        "cheap",
                        "startingYield",
                        "140 %",
                        "purchaseStep",
                        "0")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("value=\"cheap\"")))
                .andExpect(content().string(containsString("value=\"140 %\"")));
        send("/catalog/materials", "name", "Ash", "unit", "bf", "startingYield", "1", "purchaseStep", "0")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("The smallest purchase is above 0")));
        assertThat(materials.all()).hasSize(43);
    }

    @Test
    void datesANewPriceAndKeepsTheOldOne() throws Exception {
        LocalDate later = clock.today().plusDays(10);
        send(
                        "/catalog/materials/" + oak().id() + "/prices",
                        "from",
                        later.toString(),
                        "price",
                        "9.90",
                        "basis",
                        "price list")
                .andExpect(status().is3xxRedirection());
        assertThat(materials.priceOn(oak().id(), clock.today())).hasValue(UnitPrice.of("9.20"));
        assertThat(materials.priceOn(oak().id(), later)).hasValue(UnitPrice.of("9.90"));
        assertThat(materials.history(oak().id())).hasSize(2);
        send("/catalog/materials/" + oak().id() + "/prices", "from", "soon", "price", "-3")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("value=\"soon\"")))
                .andExpect(content().string(containsString("value=\"-3\"")));
    }

    @Test
    void asksBeforeAnotherPriceTakesThePlaceOfTheKeptOne() throws Exception {
        String path = "/catalog/materials/" + oak().id() + "/prices";
        String day = clock.today().plusDays(3).toString();
        send(path, "from", day, "price", "9.90", "basis", "list").andExpect(status().is3xxRedirection());
        send(path, "from", day, "price", "9.9", "basis", "list").andExpect(status().is3xxRedirection());
        send(path, "from", day, "price", "8.10", "basis", "")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("is 9.90 (list) already")))
                .andExpect(content().string(containsString("name=\"corrects\" value=\"9.90 (list)\"")));
        assertThat(materials.priceOn(oak().id(), clock.today().plusDays(3))).hasValue(UnitPrice.of("9.90"));
        send(path, "from", day, "price", "8.10", "basis", "", "corrects", "9.90 (list)")
                .andExpect(status().is3xxRedirection());
        assertThat(materials.priceOn(oak().id(), clock.today().plusDays(3))).hasValue(UnitPrice.of("8.10"));
        send(path, "from", day, "price", "7", "basis", "", "corrects", "9.90 (list)")
                .andExpect(status().is(422));
    }

    @Test
    void showsBothVersionsWhenSomebodyElseWasFaster() throws Exception {
        String version = String.valueOf(oak().version());
        update(version, "Quarry Lane Boards").andExpect(status().is3xxRedirection());
        update(version, "Pinnet Sheet Yard")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("Quarry Lane Boards")))
                .andExpect(content().string(containsString("Pinnet Sheet Yard")));
        assertThat(oak().supplier()).isEqualTo("Quarry Lane Boards");
    }

    @Test
    void takesAMaterialOutOfUseAndBack() throws Exception {
        UUID id = oak().id();
        send("/catalog/materials/" + id + "/retirement").andExpect(status().is3xxRedirection());
        assertThat(materials.active()).hasSize(42);
        send("/catalog/materials/" + id + "/return").andExpect(status().is3xxRedirection());
        assertThat(materials.active()).hasSize(43);
    }

    @Test
    void letsTheLeadReadOnlyAndTheHelperSeeNoPrice() throws Exception {
        see("/catalog/materials", people.lead()).andExpect(status().isOk());
        see("/catalog/materials/" + oak().id(), people.lead())
                .andExpect(status().isOk())
                .andExpect(content().string(not(containsString("New price"))));
        see("/catalog/materials/new", people.lead()).andExpect(status().isForbidden());
        see("/catalog/materials", people.helper())
                .andExpect(status().isForbidden())
                .andExpect(content().string(not(containsString("9.20"))));
        see("/catalog/materials/new").andExpect(status().isOk());
        see("/catalog/materials/" + oak().id() + "/edit")
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("value=\"70 %\"")));
    }

    private org.springframework.test.web.servlet.ResultActions update(String version, String supplier)
            throws Exception {
        return send(
                "/catalog/materials/" + oak().id(),
                "version",
                version,
                "name",
                oak().name(),
                "group",
                "hardwood",
                "unit",
                "bf",
                "startingYield",
                "70 %",
                "purchaseStep",
                "1",
                "supplier",
                supplier);
    }

    private MaterialCard oak() {
        return materials.coded("red_oak_54").orElseThrow();
    }
}
