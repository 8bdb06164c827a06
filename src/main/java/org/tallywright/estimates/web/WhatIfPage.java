package org.tallywright.estimates.web;

import java.util.List;
import java.util.Map;
import org.tallywright.web.FormErrors;

/**
 * Another price beside the one that stands.
 *
 * @param crews what may be chosen of who does the work, value to words
 * @param rows none where the choice cannot be priced
 * @param ladder the tried price rung by rung; none while it is the one that stands
 * @param behind how much of the shop's own stands behind the figures, or empty
 * @param why what stands in the way, or empty
 * @param differs whether something else than what stands is tried, and may be taken over
 */
record WhatIfPage(
        WhatIfForm form,
        FormErrors errors,
        Map<String, String> crews,
        List<Row> rows,
        List<EstimatePage.Rung> ladder,
        String behind,
        String why,
        boolean differs) {

    /** One figure as it stands and as it would be. */
    record Row(String name, String stands, String tried) {}
}
