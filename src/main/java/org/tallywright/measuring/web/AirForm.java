package org.tallywright.measuring.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.measuring.AirDetails;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.web.FormReader;

/** The air of a room, as typed. */
record AirForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String place,
        @Nullable String takenOn,
        @Nullable String temperature,
        @Nullable String humidity,
        @Nullable String note) {
    AirForm {
        place = place == null ? "" : place;
        takenOn = takenOn == null ? "" : takenOn;
        temperature = temperature == null ? "" : temperature;
        humidity = humidity == null ? "" : humidity;
        note = note == null ? "" : note;
    }

    static AirForm blank(LocalDate today) {
        return new AirForm(Ids.next(), null, "", today.toString(), "", "", "");
    }

    static AirForm of(UUID id, int version, AirDetails kept, Figures figures) {
        return new AirForm(
                id,
                version,
                kept.place(),
                kept.takenOn().toString(),
                temperature(kept, figures.units()),
                plain(kept.humidity()),
                kept.note());
    }

    /** As typed, to two places, so that a form sent again says the same. */
    private static String temperature(AirDetails kept, Units units) {
        BigDecimal degrees = units == Units.METRIC ? kept.celsius() : kept.air().fahrenheit();
        return plain(degrees.setScale(2, java.math.RoundingMode.HALF_UP));
    }

    private static String plain(BigDecimal number) {
        return number.stripTrailingZeros().toPlainString();
    }

    @Nullable
    AirDetails read(FormReader read, Units units) {
        var where = read.field("place", () -> Typed.requiredLine(text(place), 120));
        var on = read.field("takenOn", () -> Reader.day(text(takenOn)));
        var degrees = read.field("temperature", () -> Reader.celsius(text(temperature), units));
        var percent = read.field("humidity", () -> Reader.humidity(text(humidity)));
        var more = read.field("note", () -> Typed.block(text(note), 1000));
        return read.refused() || where == null || on == null || degrees == null || percent == null || more == null
                ? null
                : new AirDetails(where, on, degrees, percent, more);
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }

    List<Stale.Row> beside(AirForm theirs) {
        return List.of(
                new Stale.Row("Where", text(theirs.place), text(place)),
                new Stale.Row("Day", text(theirs.takenOn), text(takenOn)),
                new Stale.Row("Temperature", text(theirs.temperature), text(temperature)),
                new Stale.Row("Humidity", text(theirs.humidity), text(humidity)),
                new Stale.Row("Note", text(theirs.note), text(note)));
    }
}
