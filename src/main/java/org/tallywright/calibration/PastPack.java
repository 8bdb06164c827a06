package org.tallywright.calibration;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.zip.Deflater;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** What a calibration learnt from, as packed JSON: a shop of ten years has 50,000 tasks in it. */
@Component
class PastPack {
    private final JsonMapper json;

    PastPack(JsonMapper json) {
        this.json = json;
    }

    byte[] pack(Past past) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream packed = new Fast(bytes)) {
            json.writeValue(packed, past);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    Past unpack(byte[] packed) {
        try (GZIPInputStream text = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            return json.readValue(text, Past.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static final class Fast extends GZIPOutputStream {
        Fast(OutputStream out) throws IOException {
            super(out, 1 << 16);
            def.setLevel(Deflater.BEST_SPEED);
        }
    }
}
