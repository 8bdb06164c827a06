package org.tallywright.photos.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.util.Arrays;

/**
 * Makes a picture smaller: each pixel of the small one is the mean of the area that it covers in the large one, parts of
 * pixels counted by their share. Works row by row, so that it needs little room beside the two pictures.
 */
final class Shrink {
    private Shrink() {}

    /** The size with its longer side at most {@code longest}; never larger than it was, never nothing. */
    static int[] size(int width, int height, int longest) {
        double by = Math.min(1, (double) longest / Math.max(width, height));
        return new int[] {(int) Math.max(1, Math.round(width * by)), (int) Math.max(1, Math.round(height * by))};
    }

    static BufferedImage to(BufferedImage picture, int width, int height) {
        BufferedImage from = opaque(picture);
        WritableRaster small = from.getColorModel().createCompatibleWritableRaster(width, height);
        average(from.getRaster(), small);
        return new BufferedImage(from.getColorModel(), small, from.isAlphaPremultiplied(), null);
    }

    /** On white paper, where it was transparent; a palette is turned into colours, which can be averaged. */
    private static BufferedImage opaque(BufferedImage picture) {
        boolean palette = picture.getColorModel() instanceof IndexColorModel;
        if (!palette && !picture.getColorModel().hasAlpha()) {
            return picture;
        }
        BufferedImage paper = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D pen = paper.createGraphics();
        pen.drawImage(picture, 0, 0, Color.WHITE, null);
        pen.dispose();
        return paper;
    }

    private static void average(Raster from, WritableRaster small) {
        int bands = from.getNumBands();
        double down = (double) from.getHeight() / small.getHeight();
        int[] row = new int[from.getWidth() * bands];
        double[] narrow = new double[small.getWidth() * bands];
        double[] sum = new double[narrow.length];
        int[] out = new int[narrow.length];
        int y = 0;
        double left = 1; // share of row y that is not yet used
        from.getPixels(from.getMinX(), from.getMinY(), from.getWidth(), 1, row);
        across(row, narrow, bands, from.getWidth());
        for (int target = 0; target < small.getHeight(); target++) {
            double wanted = down;
            Arrays.fill(sum, 0);
            while (wanted > 1e-9) {
                if (left < 1e-9) {
                    if (++y >= from.getHeight()) {
                        break;
                    }
                    from.getPixels(from.getMinX(), from.getMinY() + y, from.getWidth(), 1, row);
                    across(row, narrow, bands, from.getWidth());
                    left = 1;
                }
                double share = Math.min(left, wanted);
                for (int i = 0; i < sum.length; i++) {
                    sum[i] += narrow[i] * share;
                }
                left -= share;
                wanted -= share;
            }
            for (int i = 0; i < sum.length; i++) {
                out[i] = (int) Math.round(sum[i] / (down - Math.max(0, wanted)));
            }
            small.setPixels(0, target, small.getWidth(), 1, out);
        }
    }

    /** Means along one row. */
    private static void across(int[] row, double[] narrow, int bands, int width) {
        int cells = narrow.length / bands;
        double step = (double) width / cells;
        for (int cell = 0; cell < cells; cell++) {
            double from = cell * step;
            double to = Math.min(width, from + step);
            int first = (int) from;
            int last = (int) Math.min(width - 1, Math.ceil(to - 1e-9) - 1);
            for (int band = 0; band < bands; band++) {
                double sum = 0;
                for (int x = first; x <= last; x++) {
                    double share = Math.min(to, x + 1) - Math.max(from, x);
                    sum += row[x * bands + band] * share;
                }
                narrow[cell * bands + band] = sum / (to - from);
            }
        }
    }
}
