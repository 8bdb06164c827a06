package org.tallywright.photos.picture;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Writes a picture as JPEG with nothing beside the picture. */
final class JpegBytes {
    private static final float[] QUALITIES = {0.82f, 0.7f, 0.5f, 0.3f, 0.1f};

    private JpegBytes() {}

    /** At a quality of 0.82, or as much lower as it takes to stay within {@code most} bytes. */
    static byte[] of(BufferedImage picture, int most) {
        byte[] bytes = new byte[0];
        for (float quality : QUALITIES) {
            bytes = of(picture, quality);
            if (bytes.length <= most) {
                return bytes;
            }
        }
        return bytes;
    }

    private static byte[] of(BufferedImage picture, float quality) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(quality);
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, null), how);
            out.flush();
        } catch (IOException e) {
            throw new IllegalStateException("a picture could not be written", e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
