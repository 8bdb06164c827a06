package org.tallywright.materials.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Material used, as the page shows it. No price is in it, whoever looks.
 *
 * @param jobs that take material, number to words, those of the day's hours first
 * @param day where it leads back to
 */
record UsedPage(UsedForm form, List<Row> rows, Map<String, String> jobs, Map<String, String> sources, String day) {

    /**
     * One row that is to be looked at before it is saved.
     *
     * @param box start of the names and ids of its boxes: {@code row.3}
     * @param unit of the chosen material, or empty
     * @param perhaps what may be meant, before everything else
     * @param ask what is not plain, or null
     */
    record Row(
            String box,
            UUID id,
            String typed,
            String material,
            String quantity,
            String unit,
            List<Choice> perhaps,
            @Nullable String ask) {}

    record Choice(String value, String label) {}
}
