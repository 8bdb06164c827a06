package org.tallywright.takeoff;

import jakarta.persistence.Convert;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Grain;
import org.tallywright.shared.Length;

/** Parts of a piece that are alike: from the formulas, or listed by hand. */
@Entity
class Part {
    @Id
    private UUID id;

    private UUID jobId;
    private UUID pieceId;
    private int position;
    private String name;
    private int quantity;
    private Length length;
    private Length width;
    private @Nullable UUID materialId;
    private String slot;

    @Convert(converter = GrainColumn.class)
    private Grain grain;

    private String matched;
    private int longEdges;
    private int shortEdges;
    private int faces;
    private int joints;
    private boolean byHand;
    private String rule;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Part() {}

    @SuppressWarnings("NullAway.Init")
    private Part(UUID id, UUID jobId, UUID pieceId, int position, PartDetails details, String rule) {
        this.id = id;
        this.jobId = jobId;
        this.pieceId = pieceId;
        this.position = position;
        say(details);
        this.rule = rule;
        this.byHand = rule.isEmpty();
    }

    static Part listed(UUID id, UUID jobId, UUID pieceId, int position, PartDetails details) {
        return new Part(id, jobId, pieceId, position, details, "");
    }

    /** @param rule the line of the formulas that it comes from */
    static Part worked(UUID id, UUID jobId, UUID pieceId, int position, PartDetails details, String rule) {
        return new Part(id, jobId, pieceId, position, details, rule);
    }

    /** Listed or changed by hand on another piece: the formulas leave it and its rule alone here too. */
    static Part carried(UUID id, UUID jobId, UUID pieceId, int position, PartDetails details, String rule) {
        Part part = new Part(id, jobId, pieceId, position, details, rule);
        part.byHand = true;
        return part;
    }

    /** Changed by somebody: the formulas leave it and its rule alone from now on. */
    void change(PartDetails details) {
        say(details);
        byHand = true;
    }

    private void say(PartDetails details) {
        name = details.name();
        quantity = details.quantity();
        length = details.length();
        width = details.width();
        materialId = details.materialId();
        slot = details.slot();
        grain = details.grain();
        matched = details.matched();
        longEdges = details.longEdges();
        shortEdges = details.shortEdges();
        faces = details.faces();
        joints = details.joints();
    }

    UUID id() {
        return id;
    }

    PartDetails details() {
        return new PartDetails(
                name, quantity, length, width, materialId, slot, grain, matched, longEdges, shortEdges, faces, joints);
    }

    String rule() {
        return rule;
    }

    int version() {
        return version == null ? 0 : version;
    }

    boolean isOf(UUID job, UUID piece) {
        return jobId.equals(job) && pieceId.equals(piece);
    }

    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen);
    }
}
