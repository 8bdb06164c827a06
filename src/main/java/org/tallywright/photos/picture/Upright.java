package org.tallywright.photos.picture;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;

/** Plain eight-bit colours of screens, and the right side up. */
final class Upright {
    private Upright() {}

    /**
     * In sRGB, turned and mirrored so that it stands as the camera saw it.
     *
     * @param orientation 1 to 8 as in Exif: which side of the kept rows is the top, and which the left
     */
    static BufferedImage of(BufferedImage picture, int orientation) {
        BufferedImage plain = colours(picture);
        if (orientation == 1) {
            return plain;
        }
        int width = plain.getWidth();
        int height = plain.getHeight();
        boolean lying = orientation >= 5;
        BufferedImage upright =
                new BufferedImage(lying ? height : width, lying ? width : height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < upright.getHeight(); y++) {
            for (int x = 0; x < upright.getWidth(); x++) {
                upright.setRGB(x, y, from(plain, x, y, orientation));
            }
        }
        return upright;
    }

    /** The kept pixel that belongs at x, y of the upright picture. */
    private static int from(BufferedImage kept, int x, int y, int orientation) {
        int right = kept.getWidth() - 1;
        int bottom = kept.getHeight() - 1;
        return switch (orientation) {
            case 2 -> kept.getRGB(right - x, y);
            case 3 -> kept.getRGB(right - x, bottom - y);
            case 4 -> kept.getRGB(x, bottom - y);
            case 5 -> kept.getRGB(y, x);
            case 6 -> kept.getRGB(y, bottom - x);
            case 7 -> kept.getRGB(right - y, bottom - x);
            case 8 -> kept.getRGB(right - y, x);
            default -> kept.getRGB(x, y);
        };
    }

    private static BufferedImage colours(BufferedImage picture) {
        BufferedImage plain = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
        if (picture.getRaster().getNumBands() == 1) {
            greys(picture, plain);
            return plain;
        }
        Graphics2D pen = plain.createGraphics();
        pen.drawImage(picture, 0, 0, null);
        pen.dispose();
        return plain;
    }

    /** As they are: the drawing tools would take greys to be linear in light and brighten them. */
    private static void greys(BufferedImage picture, BufferedImage plain) {
        int down = picture.getRaster().getDataBuffer().getDataType() == DataBuffer.TYPE_USHORT ? 8 : 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                int grey = picture.getRaster().getSample(x, y, 0) >> down & 0xff;
                plain.setRGB(x, y, grey << 16 | grey << 8 | grey);
            }
        }
    }
}
