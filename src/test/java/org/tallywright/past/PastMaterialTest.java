package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Yield;

class PastMaterialTest {
    private static PastMaterial material(
            String unit, @Nullable String estimated, @Nullable String net, @Nullable String charged, String share) {
        return new PastMaterial(
                Ids.next(),
                null,
                Ids.next(),
                "Oak",
                unit,
                quantity(estimated),
                null,
                Money.ZERO,
                Yield.of(new BigDecimal("0.6")),
                new BigDecimal(share),
                quantity(net),
                quantity(charged),
                null,
                false);
    }

    private static @Nullable Quantity quantity(@Nullable String typed) {
        return typed == null ? null : Quantity.of(typed);
    }

    @Test
    void saysCubicMetresToATenthOfALitre() {
        assertThat(material("m3", "0.07", "0.0779", "0.118", "1").words())
                .isEqualTo("0.0779 m3 in the work there, 0.118 m3 bought");
        assertThat(material("bf", "30", "33.333", "50", "1").words())
                .isEqualTo("33.33 bf in the work there, 50 bf bought");
    }

    @Test
    void startsFromWhatWentInThenFromWhatWasEstimatedThenFromWhatWasBought() {
        assertThat(material("m3", "0.07", "0.08", "0.118", "0.5").there()).isEqualTo(Quantity.of("0.04"));
        assertThat(material("m3", "0.07", null, "0.118", "0.5").there()).isEqualTo(Quantity.of("0.07"));
        assertThat(material("m3", null, null, "0.1", "1").there()).isEqualTo(Quantity.of("0.06"));
        assertThat(material("m3", null, null, null, "1").there()).isEqualTo(Quantity.ZERO);
        assertThat(material("box of 50", "2", null, "1.5", "1").words())
                .isEqualTo("1.5 box of 50 bought, 2 box of 50 estimated, nobody said how much is in the work there");
    }
}
