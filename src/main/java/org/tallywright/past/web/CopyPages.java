package org.tallywright.past.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.past.CopyOffer;
import org.tallywright.past.HoursChoice;
import org.tallywright.past.PastPiece;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopConventions;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.takeoff.TakeoffCopy;
import org.tallywright.web.FormReader;
import org.tallywright.web.SignedIn;

/** Writes the preview of a copy, with what was ticked and typed in it. */
@Component
class CopyPages {
    private final PastWords words;
    private final ShopConventions shop;

    CopyPages(PastWords words, ShopConventions shop) {
        this.words = words;
        this.shop = shop;
    }

    /**
     * @param fromPiece null for a whole job
     */
    CopyPage page(
            CopyOffer offer,
            @Nullable UUID fromPiece,
            List<PieceFacts.Fact> targets,
            CopyForm form,
            String action,
            SignedIn me) {
        PastPiece only = fromPiece == null ? null : offer.from().pieces().get(0);
        return new CopyPage(
                form.id(),
                offer.into().number(),
                offer.into().title(),
                offer.from().ref().number(),
                offer.from().ref().title(),
                only == null ? null : only.details().name(),
                offer.besides() == 0 ? "" : PastWords.exact(offer.besides()),
                targets(targets),
                offer.groups().stream().map(g -> group(g, form, me)).toList(),
                offer.costs().stream().map(cost -> cost(cost, form)).toList(),
                me.seesMoney(),
                words.lengthSuffix(),
                action);
    }

    private CopyPage.CostRow cost(CopyOffer.CostLine line, CopyForm form) {
        CopySeen now = CopySeen.of(line);
        return new CopyPage.CostRow(
                line.past().id(),
                line.past().description(),
                line.here() ? "is in the estimate already" : "",
                shop.money().format(line.past().amount()),
                form.takes(line.past().id(), now),
                now.sent());
    }

    private static Map<String, String> targets(List<PieceFacts.Fact> targets) {
        Map<String, String> names = new LinkedHashMap<>();
        targets.forEach(piece -> names.put(piece.id().toString(), piece.name()));
        return names;
    }

    private CopyPage.Group group(CopyOffer.Group group, CopyForm form, SignedIn me) {
        PastPiece piece = group.piece();
        List<CopyPage.TaskRow> tasks =
                group.tasks().stream().map(line -> task(line, form)).toList();
        List<CopyPage.MaterialRow> materials =
                group.materials().stream().map(line -> material(line, form, me)).toList();
        return piece == null
                ? new CopyPage.Group(null, "The whole job", "", true, "", "", Map.of(), "", false, tasks, materials)
                : new CopyPage.Group(
                        piece.id(),
                        piece.details().name(),
                        words.sizes(piece.details()),
                        form.takes(piece),
                        form.into(piece.id()),
                        group.now() == null
                                ? ""
                                : CopySeen.of(group.now(), form.into(piece.id()).strip()),
                        boxes(group, piece, form),
                        form.into(piece.id()).isBlank() ? parts(group) : "",
                        form.ticked("parts-" + piece.id(), true),
                        tasks,
                        materials);
    }

    /** Those of a piece that is there show what it has, whatever was typed. */
    private Map<String, String> boxes(CopyOffer.Group group, PastPiece piece, CopyForm form) {
        PieceDetails now = group.now();
        boolean there = now != null && !form.into(piece.id()).isBlank();
        PieceDetails shown = now != null && there ? now : piece.details();
        CopyForm typed = there ? CopyForm.blank() : form;
        Map<String, String> boxes = new LinkedHashMap<>();
        box(boxes, typed, "name", piece, shown.name());
        box(boxes, typed, "width", piece, words.length(shown.width()));
        box(boxes, typed, "height", piece, words.length(shown.height()));
        box(boxes, typed, "depth", piece, words.length(shown.depth()));
        box(boxes, typed, "count", piece, String.valueOf(shown.count()));
        return boxes;
    }

    private static void box(Map<String, String> boxes, CopyForm form, String name, PastPiece piece, String then) {
        boxes.put(name, form.text(name + "-" + piece.id(), then));
    }

    private static String parts(CopyOffer.Group group) {
        TakeoffCopy.Found found = group.parts();
        if (found == null) {
            return "";
        }
        List<String> said = new ArrayList<>();
        if (found.takenOff()) {
            said.add("worked out anew for these sizes, with the same answers");
        }
        if (found.byHand() > 0) {
            String lines = found.byHand() + (found.byHand() == 1 ? " line" : " lines") + " listed or changed by hand";
            said.add(group.sameSizes() ? lines : lines + " stay behind, as the sizes differ");
        }
        return String.join("; ", said);
    }

    private static CopyPage.TaskRow task(CopyOffer.TaskLine line, CopyForm form) {
        UUID id = line.past().id();
        CopySeen now = CopySeen.of(line);
        String quantity = form.quantity(id, now);
        Quantity counted = counted(quantity, line.quantity());
        Map<String, String> choices = new LinkedHashMap<>();
        for (HoursChoice choice : line.choices()) {
            choices.put(choice.basis().code(), choice.words(counted, line.unit()));
        }
        return new CopyPage.TaskRow(
                id,
                line.past().name(),
                String.join("; ", line.notes()),
                form.takes(id, now),
                quantity,
                line.unit().code(),
                now.sent(),
                choices,
                form.text("hours-" + id, HoursChoice.Basis.BOOK.code()));
    }

    /** The hours follow what stands in the box, where that can be read. */
    private static Quantity counted(String typed, Quantity offered) {
        Quantity read = new FormReader().field("", () -> Quantity.of(typed));
        return read == null ? offered : read;
    }

    private CopyPage.MaterialRow material(CopyOffer.MaterialLine line, CopyForm form, SignedIn me) {
        UUID id = line.past().id();
        List<String> notes = new ArrayList<>(line.notes());
        if (me.seesMoney() && line.price() != null) {
            notes.add(shop.money().format(line.price()) + (line.priceOfToday() ? " today" : " as estimated then"));
        }
        if (me.seesMoney() && !line.past().freight().isZero()) {
            notes.add("freight was estimated at "
                    + shop.money().format(line.past().freight()));
        }
        CopySeen now = CopySeen.of(line, me.seesMoney());
        return new CopyPage.MaterialRow(
                id,
                line.past().name(),
                String.join("; ", notes),
                form.takes(id, now),
                form.quantity(id, now),
                line.past().unit(),
                now.sent());
    }
}
