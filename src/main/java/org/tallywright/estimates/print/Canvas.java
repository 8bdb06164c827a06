package org.tallywright.estimates.print;

import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** One page being drawn. */
final class Canvas {
    private static final float BOLD = 0.032f;

    private final PDPageContentStream page;
    private final Ink ink;

    Canvas(PDPageContentStream page, Ink ink) {
        this.page = page;
        this.ink = ink;
    }

    /** @param clean as {@link Ink#wrap} or {@link Ink#clean} gave it */
    void text(String clean, Style style, float x, float baseline) throws IOException {
        if (clean.isBlank()) {
            return;
        }
        page.beginText();
        page.setNonStrokingColor(style.grey());
        page.setStrokingColor(style.grey());
        page.setRenderingMode(style.bold() ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
        page.setLineWidth(style.size() * BOLD);
        page.setFont(ink.font(), style.size());
        page.newLineAtOffset(x, baseline);
        page.showText(clean);
        page.endText();
    }

    void textEnding(String clean, Style style, float right, float baseline) throws IOException {
        text(clean, style, right - ink.width(clean, style.size()), baseline);
    }

    void rule(float from, float to, float y, float thick, float grey) throws IOException {
        page.setStrokingColor(grey);
        page.setLineWidth(thick);
        page.moveTo(from, y);
        page.lineTo(to, y);
        page.stroke();
    }

    /** An empty box for a tick. */
    void box(float x, float y, float side) throws IOException {
        page.setStrokingColor(0f);
        page.setLineWidth(0.9f);
        page.addRect(x, y, side, side);
        page.stroke();
    }
}
