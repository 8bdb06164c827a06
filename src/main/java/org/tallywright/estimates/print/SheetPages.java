package org.tallywright.estimates.print;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.MessageFormat;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** Puts blocks on pages, numbers these, and writes the file. */
final class SheetPages {
    private static final float FOOT = 22;

    private final PDDocument document;
    private final Ink ink;
    private final PaperSize size;
    private final float top;
    private final List<List<Placed>> pages = new ArrayList<>();
    private float y;

    private record Placed(Block block, float top) {}

    SheetPages(PDDocument document, Ink ink, PaperSize size) {
        this.document = document;
        this.ink = ink;
        this.size = size;
        top = size.sheet().getHeight() - Sheet.MARGIN;
    }

    byte[] write(List<Block> blocks, Imprint imprint) {
        place(blocks);
        try {
            String foot = ink.clean(imprint.foot());
            ink.guard();
            for (int i = 0; i < pages.size(); i++) {
                draw(pages.get(i), foot, MessageFormat.format(imprint.pageOf(), i + 1, pages.size()));
            }
            describe(imprint);
            ByteArrayOutputStream file = new ByteArrayOutputStream();
            document.save(file);
            return file.toByteArray();
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
    }

    private void place(List<Block> blocks) {
        turn();
        for (int from = 0; from < blocks.size(); ) {
            int to = from;
            while (to < blocks.size() - 1 && blocks.get(to).keep()) {
                to++;
            }
            List<Block> passage = blocks.subList(from, to + 1);
            if (!isAtTop() && !fits(height(passage))) {
                turn(passage.get(0));
            }
            passage.forEach(this::put);
            from = to + 1;
        }
    }

    private void put(Block block) {
        if (!isAtTop() && !fits(block.gap() + block.height())) {
            turn(block);
        }
        y -= isAtTop() ? 0 : block.gap();
        pages.get(pages.size() - 1).add(new Placed(block, y));
        y -= block.height();
    }

    private void turn(Block next) {
        turn();
        if (next.again() != null) {
            put(next.again());
        }
    }

    private void turn() {
        pages.add(new ArrayList<>());
        y = top;
    }

    private boolean isAtTop() {
        return pages.get(pages.size() - 1).isEmpty();
    }

    private boolean fits(float height) {
        return y - height >= Sheet.MARGIN + FOOT;
    }

    private static float height(List<Block> passage) {
        float sum = 0;
        for (Block block : passage) {
            sum += block.gap() + block.height();
        }
        return sum;
    }

    private void draw(List<Placed> placed, String foot, String number) throws IOException {
        PDPage page = new PDPage(size.sheet());
        document.addPage(page);
        try (PDPageContentStream stream = new PDPageContentStream(document, page)) {
            Canvas canvas = new Canvas(stream, ink);
            for (Placed one : placed) {
                one.block().pen().draw(canvas, one.top());
            }
            canvas.text(foot, Style.SMALL, Sheet.MARGIN, Sheet.MARGIN);
            canvas.textEnding(number, Style.SMALL, size.sheet().getWidth() - Sheet.MARGIN, Sheet.MARGIN);
        }
    }

    /** The file's id comes from the document's, its dates from the document's date: no clock is read. */
    private void describe(Imprint imprint) {
        PDDocumentInformation about = document.getDocumentInformation();
        about.setTitle(imprint.title());
        about.setAuthor(imprint.author());
        about.setProducer("Tallywright");
        about.setCreationDate(GregorianCalendar.from(imprint.on().atStartOfDay(ZoneOffset.UTC)));
        document.setDocumentId(
                imprint.id().getMostSignificantBits() ^ imprint.id().getLeastSignificantBits());
        document.getDocumentCatalog().setLanguage("en");
        PDViewerPreferences viewer = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        viewer.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(viewer);
    }
}
