package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.BidDocument.OptionRow;
import org.tallywright.estimates.print.Imprint;
import org.tallywright.estimates.print.PaperSize;
import org.tallywright.estimates.print.Sheet;
import org.tallywright.estimates.print.Sheet.Amount;
import org.tallywright.estimates.print.Sheet.Column;
import org.tallywright.estimates.print.Unprintable;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import tools.jackson.databind.json.JsonMapper;

/**
 * A bid or change order as a PDF, from its frozen document alone: what became of it since is not in it, and the same bid
 * gives the same bytes every time.
 */
@Service
public class BidPrinter {
    private final BidRows rows;
    private final JsonMapper json;
    private final MessageSource words;

    BidPrinter(BidRows rows, JsonMapper json, MessageSource words) {
        this.rows = rows;
        this.json = json;
        this.words = words;
    }

    /** @param name of the file, as in "26-014-A.pdf" */
    public record Printed(String name, byte[] bytes) {}

    /**
     * @throws NotHere for an unknown id
     * @throws Refused where the paper has signs that the font of the PDF has not
     */
    @Transactional(readOnly = true)
    public Printed print(UUID id) {
        Bid bid = rows.offer(id).orElseThrow(() -> new NotHere("bid"));
        BidDocument document = json.readValue(bid.document(), BidDocument.class);
        try {
            return new Printed(
                    bid.number().replace(' ', '-') + ".pdf", print(document, new Origin(id, bid.issuedOn())));
        } catch (Unprintable signs) {
            throw new Refused(
                    "The PDF cannot show " + signs.signs()
                            + ": its font has Latin, Greek and Cyrillic letters. Print this page instead; it shows everything.");
        }
    }

    record Origin(UUID id, LocalDate issuedOn) {}

    byte[] print(BidDocument doc, Origin origin) {
        try (Sheet sheet = new Sheet(PaperSize.of(doc.paper()))) {
            head(sheet, doc);
            work(sheet, doc);
            money(sheet, doc);
            acceptance(sheet, doc);
            return sheet.bytes(new Imprint(
                    origin.id(),
                    doc.kind() + " " + doc.number() + ", " + doc.title(),
                    doc.shopName(),
                    origin.issuedOn(),
                    doc.kind() + " " + doc.number() + "  ·  " + doc.shopName(),
                    word("paper.pageOf", "{0}", "{1}")));
        }
    }

    private void head(Sheet sheet, BidDocument doc) {
        sheet.head(doc.kind() + " " + doc.number(), doc.shopName(), doc.shopContact());
        sheet.fact(word("paper.for"), doc.clientName());
        sheet.fact(word("paper.site"), doc.siteAddress());
        sheet.fact(word("paper.job"), doc.jobNumber() + ", " + doc.jobTitle());
        sheet.fact(word("paper.issued"), doc.issuedOn());
        sheet.fact(word("paper.valid"), doc.validUntil());
    }

    private void work(Sheet sheet, BidDocument doc) {
        sheet.heading(doc.title());
        doc.scope().forEach(sheet::paragraph);
        if (!doc.pieces().isEmpty()) {
            sheet.minorHeading(word("paper.pieces"));
            sheet.table(
                    List.of(
                            new Column(word("paper.piece"), 0.46f, false),
                            new Column(word("paper.count"), 0.14f, true),
                            new Column(word("paper.size"), 0.4f, false)),
                    doc.pieces().stream()
                            .map(piece -> List.of(piece.name(), String.valueOf(piece.count()), piece.size()))
                            .toList());
        }
        if (!doc.exclusions().isEmpty()) {
            sheet.minorHeading(word("paper.exclusions"));
            doc.exclusions().forEach(sheet::bullet);
        }
    }

    private void money(Sheet sheet, BidDocument doc) {
        sheet.minorHeading(word("paper.price"));
        sheet.amounts(doc.prices().stream()
                .map(row -> new Amount(row.label(), row.amount()))
                .toList());
        amounts(sheet, "paper.allowances", "paper.allowances.text", doc.allowances());
        options(sheet, doc);
        amounts(sheet, "paper.payments", doc.options().isEmpty() ? "" : "paper.payments.options", doc.payments());
        if (!doc.addedDays().isEmpty()) {
            sheet.paragraph(word("paper.addedDays", doc.addedDays()));
        }
        if (!doc.terms().isEmpty()) {
            sheet.minorHeading(word("paper.terms"));
            doc.terms().forEach(sheet::paragraph);
        }
    }

    private void amounts(Sheet sheet, String heading, String text, List<BidDocument.PriceRow> rows) {
        if (rows.isEmpty()) {
            return;
        }
        sheet.minorHeading(word(heading));
        if (!text.isEmpty()) {
            sheet.paragraph(word(text));
        }
        sheet.amounts(
                rows.stream().map(row -> new Amount(row.label(), row.amount())).toList());
    }

    private void options(Sheet sheet, BidDocument doc) {
        if (doc.options().isEmpty()) {
            return;
        }
        sheet.minorHeading(word("paper.options"));
        sheet.paragraph(word("paper.options.text"));
        for (BidDocument.Group group : doc.groups()) {
            if (!group.name().isEmpty()) {
                sheet.paragraph(word("paper.oneOf", group.name()));
                sheet.keepWithNext();
            }
            group.options().forEach(option -> sheet.choice(new Amount(option.name(), option.amount()), words(option)));
        }
    }

    private List<String> words(OptionRow option) {
        List<String> lines = new ArrayList<>(option.words());
        option.allowances().forEach(row -> lines.add(word("paper.option.allowance", row.label(), row.amount())));
        return lines;
    }

    private void acceptance(Sheet sheet, BidDocument doc) {
        sheet.minorHeading(word("paper.acceptance"));
        sheet.paragraph(word("paper.acceptance.text", doc.kind(), doc.number()));
        sheet.keepWithNext();
        sheet.signature(List.of(word("paper.name"), word("paper.date"), word("paper.signature")));
        sheet.smallPrint(doc.lawNote());
    }

    private String word(String code, Object... figures) {
        return words.getMessage(code, figures, Locale.ENGLISH);
    }
}
