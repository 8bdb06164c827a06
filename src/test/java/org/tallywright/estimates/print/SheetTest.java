package org.tallywright.estimates.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.tallywright.estimates.print.Sheet.Amount;
import org.tallywright.estimates.print.Sheet.Column;

class SheetTest {
    private static final Imprint IMPRINT = new Imprint(
            UUID.fromString("0190b0c0-0000-7000-8000-000000000001"),
            "Bid 26-014 A",
            "Fenn Joinery",
            LocalDate.of(2026, 11, 25),
            "Bid 26-014 A",
            "Page {0} of {1}");

    @Test
    void breaksTwoHundredRowsOverNumberedPagesAndRepeatsTheHead() {
        Pdf pdf = written(PaperSize.LETTER, sheet -> {
            sheet.minorHeading("Pieces");
            sheet.table(
                    List.of(new Column("Piece", 0.6f, false), new Column("Number", 0.4f, true)),
                    IntStream.rangeClosed(1, 200)
                            .mapToObj(i -> List.of("Locker " + i + ".", String.valueOf(1000 + i)))
                            .toList());
        });

        assertThat(pdf.pages()).isBetween(5, 7);
        for (int page = 1; page <= pdf.pages(); page++) {
            assertThat(pdf.text(page))
                    .contains("Page " + page + " of " + pdf.pages())
                    .contains("Piece Number");
            guardMargins(pdf, page);
        }
        String all = pdf.text();
        IntStream.rangeClosed(1, 200).forEach(i -> assertThat(all).containsOnlyOnce("Locker " + i + ". " + (1000 + i)));
    }

    /** However much stands above it, a heading is never the last thing on a page, and no line of a text stands alone. */
    @Test
    void leavesNoHeadingAndNoSingleLineBehind() {
        for (int above = 30; above < 50; above++) {
            int before = above;
            Pdf pdf = written(PaperSize.A4, sheet -> {
                IntStream.range(0, before).forEach(i -> sheet.paragraph("Line."));
                sheet.minorHeading("Terms of ours");
                sheet.paragraph("word ".repeat(20) + "middle " + "word ".repeat(20) + "word ".repeat(20) + "finis");
            });
            for (int page = 1; page <= pdf.pages(); page++) {
                List<String> lines =
                        pdf.text(page).lines().filter(line -> !line.isBlank()).toList();
                String last = lines.get(lines.size() - 2);
                assertThat(last).as(before + " above, page " + page).doesNotContain("Terms of ours");
                if (lines.contains("Terms of ours")) {
                    long of =
                            lines.stream().filter(line -> line.contains("word")).count();
                    assertThat(of).as(before + " above").isGreaterThanOrEqualTo(2);
                }
                guardMargins(pdf, page);
            }
            assertThat(pdf.text()).contains("finis");
        }
    }

    @Test
    void breaksAWordThatIsWiderThanThePage() {
        Pdf pdf = written(PaperSize.LETTER, sheet -> sheet.paragraph("W".repeat(10_000)));

        assertThat(pdf.text().replaceAll("[^W]", "")).hasSize(10_000);
        for (int page = 1; page <= pdf.pages(); page++) {
            guardMargins(pdf, page);
        }
    }

    @ParameterizedTest
    @EnumSource
    void drawsOnBothSheets(PaperSize size) {
        Pdf pdf = written(size, sheet -> {
            sheet.head("Bid 26-014 A", "Fenn Joinery", List.of("Mill Lane 2"));
            sheet.choice(new Amount("Brass hooks", "$120.00"), List.of("Six of them"));
        });

        assertThat(pdf.width()).isEqualTo(size == PaperSize.A4 ? 595.27563f : 612f);
        BufferedImage picture = pdf.picture(1);
        Pdf.Word amount = pdf.words(1).stream()
                .filter(word -> word.text().equals("$120.00"))
                .findFirst()
                .orElseThrow();
        // The box before it is there and empty.
        float top = amount.baseline() - 9.5f;
        assertThat(Pdf.ink(picture, 54, top, 66, amount.baseline() + 2)).isBetween(0.1, 0.5);
        assertThat(Pdf.ink(picture, 57, top + 3, 63, amount.baseline() - 2)).isZero();
    }

    @Test
    void writesTheSameBytesTwice() {
        Consumer<Sheet> text = sheet -> sheet.paragraph("Söll, Ångström, Σ, Ж, ½ and 5′ 1 3/8″ – €12");

        assertThat(bytes(PaperSize.A4, text)).isEqualTo(bytes(PaperSize.A4, text));
        assertThat(new Pdf(bytes(PaperSize.A4, text)).text()).contains("Söll, Ångström, Σ, Ж, ½");
    }

    @Test
    void saysWhichSignsItCannotShow() {
        assertThatThrownBy(() -> bytes(PaperSize.A4, sheet -> sheet.paragraph("Oak 木 and שלום 🪵")))
                .isInstanceOfSatisfying(
                        Unprintable.class,
                        signs -> assertThat(signs.signs())
                                .contains("木")
                                .contains("ש")
                                .contains("🪵")
                                .doesNotContain("O"));
    }

    private static void guardMargins(Pdf pdf, int page) {
        for (Pdf.Word word : pdf.words(page)) {
            assertThat(word.left()).as(word.text()).isGreaterThanOrEqualTo(53.5f);
            assertThat(word.right()).as(word.text()).isLessThanOrEqualTo(pdf.width() - 53.5f);
        }
        BufferedImage picture = pdf.picture(page);
        float wide = picture.getWidth() / 2f;
        float high = picture.getHeight() / 2f;
        assertThat(Pdf.ink(picture, 0, 0, 52, high)).isZero();
        assertThat(Pdf.ink(picture, wide - 52, 0, wide, high)).isZero();
        assertThat(Pdf.ink(picture, 0, 0, wide, 52)).isZero();
        assertThat(Pdf.ink(picture, 0, high - 50, wide, high)).isZero();
        assertThat(Pdf.ink(picture, 54, 54, wide - 54, high - 54)).isPositive();
    }

    private static Pdf written(PaperSize size, Consumer<Sheet> text) {
        return new Pdf(bytes(size, text));
    }

    private static byte[] bytes(PaperSize size, Consumer<Sheet> text) {
        try (Sheet sheet = new Sheet(size)) {
            text.accept(sheet);
            return sheet.bytes(IMPRINT);
        }
    }
}
