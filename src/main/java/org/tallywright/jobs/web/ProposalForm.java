package org.tallywright.jobs.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.util.MultiValueMap;
import org.tallywright.jobs.TaskDetails;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.web.FormReader;

/** The proposed tasks as ticked and changed; each row carries the id that its task will have. */
record ProposalForm(List<Row> rows) {
    private static final int MOST = 200;

    /**
     * @param id of the task to be
     * @param wholeJob a task of the job, not of the piece
     */
    record Row(UUID id, UUID kind, String quantity, boolean taken, boolean wholeJob) {}

    /** Parameters: {@code row} once for each, then {@code kind-ID}, {@code quantity-ID}, {@code take-ID}, {@code job-ID}. */
    static ProposalForm of(MultiValueMap<String, String> sent) {
        List<String> ids = sent.getOrDefault("row", List.of());
        return new ProposalForm(
                ids.stream().limit(MOST).map(id -> row(id, sent)).toList());
    }

    private static Row row(String id, MultiValueMap<String, String> sent) {
        String broken = "The form did not arrive whole. Reload the page and try again.";
        return new Row(
                Reader.id(id, broken),
                Reader.id(Texts.of(sent.getFirst("kind-" + id)), broken),
                Texts.of(sent.getFirst("quantity-" + id)),
                sent.containsKey("take-" + id),
                "true".equals(sent.getFirst("job-" + id)));
    }

    /** The ticked rows as tasks; rows of the whole job go to no piece. */
    Map<UUID, TaskDetails> read(FormReader read, UUID pieceId) {
        Map<UUID, TaskDetails> tasks = new LinkedHashMap<>();
        for (Row row : rows) {
            if (row.taken) {
                Quantity quantity = read.field("quantity-" + row.id, () -> positive(row.quantity));
                if (quantity != null) {
                    tasks.put(row.id, TaskDetails.proposed(row.kind, row.wholeJob ? null : pieceId, quantity));
                }
            }
        }
        return tasks;
    }

    private static Quantity positive(String typed) {
        Quantity quantity = Quantity.of(typed);
        if (quantity.isZero()) {
            throw new NotUnderstood("Give a quantity above nothing, or untick the task.");
        }
        return quantity;
    }
}
