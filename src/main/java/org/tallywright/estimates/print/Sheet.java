package org.tallywright.estimates.print;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jspecify.annotations.Nullable;

/**
 * A document being written from top to bottom. Headings stay with what follows, a paragraph leaves no single line behind,
 * a table repeats its head on each page, and a row is never cut.
 */
public final class Sheet implements AutoCloseable {
    static final float MARGIN = 54;
    private static final float FACT = 84;
    private static final float COLUMN_GAP = 12;

    private final PDDocument document = new PDDocument();
    private final Ink ink = new Ink(document);
    private final PaperSize size;
    private final float width;
    private final List<Block> blocks = new ArrayList<>();

    public Sheet(PaperSize size) {
        this.size = size;
        width = size.sheet().getWidth() - 2 * MARGIN;
    }

    /** A column as a share of the width. */
    public record Column(String name, float share, boolean endAligned) {}

    /** A label and what stands at the right edge, such as an amount. */
    public record Amount(String label, String amount) {}

    /** @param right lines at the right edge, the first of them strong */
    public void head(String title, String strong, List<String> right) {
        List<String> lines = new ArrayList<>(ink.wrap(strong, Style.STRONG.size(), width / 2));
        int heavy = lines.size();
        right.forEach(line -> lines.addAll(ink.wrap(line, Style.SOFT.size(), width / 2)));
        String big = ink.clean(title);
        for (int i = 0; i < lines.size(); i++) {
            int row = i;
            Style style = i < heavy ? Style.STRONG : Style.SOFT;
            add(0, style.line(), i == 0, (canvas, top) -> {
                if (row == 0) {
                    canvas.text(big, Style.TITLE, MARGIN, top - Style.TITLE.ascent());
                }
                canvas.textEnding(lines.get(row), style, MARGIN + width, top - style.ascent());
            });
        }
        add(8, 6, false, (canvas, top) -> canvas.rule(MARGIN, MARGIN + width, top, 1.2f, 0));
    }

    public void fact(String label, String value) {
        List<String> lines = ink.wrap(value, Style.TEXT.size(), width - FACT);
        String name = ink.clean(label);
        lines(
                lines,
                Style.TEXT,
                MARGIN + FACT,
                1.5f,
                (canvas, top) -> canvas.text(name, Style.SOFT, MARGIN, top - Style.TEXT.ascent()));
    }

    public void heading(String text) {
        heading(text, Style.HEADING, 14);
    }

    public void minorHeading(String text) {
        heading(text, Style.MINOR, 12);
    }

    private void heading(String text, Style style, float gap) {
        float above = gap;
        for (String line : ink.wrap(text, style.size(), width)) {
            add(above, style.line() + 1, true, (canvas, top) -> canvas.text(line, style, MARGIN, top - style.ascent()));
            above = 0;
        }
    }

    public void paragraph(String text) {
        lines(ink.wrap(text, Style.TEXT.size(), width), Style.TEXT, MARGIN, 4, null);
    }

    public void smallPrint(String text) {
        lines(ink.wrap(text, Style.SMALL.size(), width), Style.SMALL, MARGIN, 8, null);
    }

    public void bullet(String text) {
        lines(
                ink.wrap(text, Style.TEXT.size(), width - 14),
                Style.TEXT,
                MARGIN + 14,
                2,
                (canvas, top) -> canvas.text("•", Style.TEXT, MARGIN + 3, top - Style.TEXT.ascent()));
    }

    /** Lines of one text: at least two of them on either side of a page break. */
    private void lines(List<String> lines, Style style, float x, float gap, Block.@Nullable Pen mark) {
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            boolean first = i == 0;
            boolean keep = lines.size() > 1 && (first || i == lines.size() - 2);
            add(first ? gap : 0, style.line(), keep, (canvas, top) -> {
                if (first && mark != null) {
                    mark.draw(canvas, top);
                }
                canvas.text(line, style, x, top - style.ascent());
            });
        }
    }

    public void table(List<Column> columns, List<List<String>> rows) {
        Block head = row(columns, columns.stream().map(Column::name).toList(), Style.SOFT, 1f, true, null);
        blocks.add(head);
        for (List<String> cells : rows) {
            blocks.add(row(columns, cells, Style.TEXT, 0.4f, false, head));
        }
    }

    private Block row(
            List<Column> columns, List<String> cells, Style style, float rule, boolean keep, @Nullable Block again) {
        List<List<String>> wrapped = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            wrapped.add(ink.wrap(cells.get(i), style.size(), columns.get(i).share() * width - COLUMN_GAP));
        }
        int most = Collections.max(wrapped.stream().map(List::size).toList());
        float height = most * style.line() + 5;
        return new Block(
                again == null ? 4 : 0,
                height,
                keep,
                (canvas, top) -> {
                    float x = MARGIN;
                    for (int i = 0; i < columns.size(); i++) {
                        float wide = columns.get(i).share() * width;
                        float baseline = top - 2 - style.ascent();
                        for (String line : wrapped.get(i)) {
                            if (columns.get(i).endAligned()) {
                                canvas.textEnding(line, style, x + wide - COLUMN_GAP, baseline);
                            } else {
                                canvas.text(line, style, x, baseline);
                            }
                            baseline -= style.line();
                        }
                        x += wide;
                    }
                    canvas.rule(MARGIN, MARGIN + width, top - height, rule, 0.55f);
                },
                again);
    }

    /** Kept together on one page. */
    public void amounts(List<Amount> amounts) {
        for (int i = 0; i < amounts.size(); i++) {
            amount(amounts.get(i), false, i < amounts.size() - 1);
        }
    }

    /** An amount with a box to tick before it, and what is said of it below. */
    public void choice(Amount amount, List<String> words) {
        amount(amount, true, !words.isEmpty());
        for (String line : words) {
            lines(ink.wrap(line, Style.SOFT.size(), width - 90), Style.SOFT, MARGIN + 20, 0, null);
        }
    }

    private void amount(Amount amount, boolean box, boolean keep) {
        String sum = ink.clean(amount.amount());
        float indent = box ? 20 : 0;
        List<String> lines =
                ink.wrap(amount.label(), Style.TEXT.size(), width - indent - 20 - ink.width(sum, Style.STRONG.size()));
        float height = lines.size() * Style.TEXT.line() + 5;
        add(2, height, keep, (canvas, top) -> {
            float baseline = top - 2 - Style.TEXT.ascent();
            if (box) {
                canvas.box(MARGIN + 1, baseline - 1.5f, 10);
            }
            for (int i = 0; i < lines.size(); i++) {
                canvas.text(lines.get(i), Style.TEXT, MARGIN + indent, baseline - i * Style.TEXT.line());
            }
            canvas.textEnding(sum, Style.STRONG, MARGIN + width, baseline);
            if (!box) {
                canvas.rule(MARGIN, MARGIN + width, top - height, 0.4f, 0.55f);
            }
        });
    }

    /** Lines to write on, side by side, with what belongs there below; what is added next stays with them. */
    public void signature(List<String> labels) {
        float each = (width - COLUMN_GAP * (labels.size() - 1)) / labels.size();
        List<String> clean = labels.stream().map(ink::clean).toList();
        add(6, 50, true, (canvas, top) -> {
            for (int i = 0; i < clean.size(); i++) {
                float x = MARGIN + i * (each + COLUMN_GAP);
                canvas.rule(x, x + each, top - 34, 0.7f, 0);
                canvas.text(clean.get(i), Style.SMALL, x, top - 45);
            }
        });
    }

    /** The next text starts a passage that is not torn: it follows on the same page as the last block. */
    public void keepWithNext() {
        Block last = blocks.remove(blocks.size() - 1);
        blocks.add(new Block(last.gap(), last.height(), true, last.pen(), last.again()));
    }

    private void add(float gap, float height, boolean keep, Block.Pen pen) {
        blocks.add(new Block(gap, height, keep, pen, null));
    }

    /** @throws Unprintable where the font has not every sign */
    public byte[] bytes(Imprint imprint) {
        ink.guard();
        return new SheetPages(document, ink, size).write(blocks, imprint);
    }

    @Override
    public void close() {
        try {
            document.close();
        } catch (java.io.IOException inMemory) {
            throw new java.io.UncheckedIOException(inMemory);
        }
    }
}
