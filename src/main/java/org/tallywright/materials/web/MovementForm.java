package org.tallywright.materials.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A coming or going as typed. Each kind uses some of the fields; {@code job} is a job's number, blank for stock. */
record MovementForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String job,
        @Nullable String material,
        @Nullable String quantity,
        @Nullable String price,
        @Nullable String freight,
        @Nullable String supplier,
        @Nullable String receipt,
        @Nullable String net,
        @Nullable String source,
        @Nullable String credit,
        @Nullable String size,
        @Nullable String on,
        @Nullable String gone,
        @Nullable String note) {

    static MovementForm blank(UUID id, String job, String on) {
        return new MovementForm(
                id, null, job, "", "", "", "", "", "", "", job.isEmpty() ? "stock" : "job", "", "", on, "", "");
    }

    static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
