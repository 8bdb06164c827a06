package org.tallywright.estimates.print;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** A PDF as a reader gets it: its text page by page, where words stand, and the pages drawn as pictures. */
public final class Pdf {
    private static final float DOTS = 2;

    private final byte[] bytes;

    public Pdf(byte[] bytes) {
        this.bytes = bytes.clone();
    }

    /** A word of a page in points from the upper left corner. */
    public record Word(String text, float left, float right, float baseline) {}

    private interface Ask<T> {
        T of(PDDocument document) throws IOException;
    }

    private <T> T ask(Ask<T> ask) {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            return ask.of(document);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    public int pages() {
        return ask(PDDocument::getNumberOfPages);
    }

    public String text() {
        return ask(document -> new PDFTextStripper().getText(document));
    }

    public String text(int page) {
        return ask(document -> {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            return stripper.getText(document);
        });
    }

    public String title() {
        return ask(document -> document.getDocumentInformation().getTitle());
    }

    public String language() {
        return ask(document -> document.getDocumentCatalog().getLanguage());
    }

    public float width() {
        return ask(document -> document.getPage(0).getMediaBox().getWidth());
    }

    /** The words of a page, parted at spaces and gaps. */
    public List<Word> words(int page) {
        return ask(document -> {
            List<Word> words = new ArrayList<>();
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> at) {
                    int from = 0;
                    for (int i = 1; i <= at.size(); i++) {
                        if (i == at.size() || isApart(at.get(i - 1), at.get(i))) {
                            word(at.subList(from, i)).ifPresent(words::add);
                            from = i;
                        }
                    }
                }
            };
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            stripper.getText(document);
            return words;
        });
    }

    private static boolean isApart(TextPosition one, TextPosition next) {
        float gap = next.getXDirAdj() - one.getXDirAdj() - one.getWidthDirAdj();
        return next.getUnicode().isBlank() || one.getUnicode().isBlank() || gap > 2;
    }

    private static Optional<Word> word(List<TextPosition> at) {
        String text = at.stream().map(TextPosition::getUnicode).collect(Collectors.joining());
        TextPosition first = at.get(0);
        TextPosition last = at.get(at.size() - 1);
        return text.isBlank()
                ? Optional.empty()
                : Optional.of(new Word(
                        text, first.getXDirAdj(), last.getXDirAdj() + last.getWidthDirAdj(), first.getYDirAdj()));
    }

    /** The page drawn at two dots a point, black on white. */
    public BufferedImage picture(int page) {
        return ask(document -> new PDFRenderer(document).renderImage(page - 1, DOTS, ImageType.GRAY));
    }

    /** The share of dark dots in a part of the picture, given in points from the upper left corner. */
    public static double ink(BufferedImage picture, float left, float top, float right, float bottom) {
        int dark = 0;
        int all = 0;
        for (int x = Math.round(left * DOTS); x < Math.min(picture.getWidth(), Math.round(right * DOTS)); x++) {
            for (int y = Math.round(top * DOTS); y < Math.min(picture.getHeight(), Math.round(bottom * DOTS)); y++) {
                dark += (picture.getRGB(x, y) & 0xff) < 160 ? 1 : 0;
                all++;
            }
        }
        return all == 0 ? 0 : (double) dark / all;
    }
}
