package org.tallywright.photos.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * The parts of a JPEG file up to its end mark.
 *
 * @param progressive sent in scans of growing fineness; its reader keeps the whole picture outside the heap
 * @param scans how many there are
 * @param ended whether the end mark was found
 */
record JpegParts(List<Part> parts, boolean progressive, int scans, boolean ended) {
    static final int APP1 = 0xe1;
    /** No camera writes so many; a file may be made of nothing else, to fill the memory. */
    private static final int MOST_PARTS = 2_000;

    private static final int SCAN = 0xda;
    private static final int END = 0xd9;
    private static final int PROGRESSIVE = 0xc2;

    /** @param from where the content starts, behind mark and length */
    record Part(int marker, int from, int length) {}

    static JpegParts of(byte[] file) {
        List<Part> parts = new ArrayList<>();
        boolean progressive = false;
        int scans = 0;
        int at = 2;
        while (at + 2 <= file.length) {
            int marker = file[at] == (byte) 0xff ? file[at + 1] & 0xff : -1;
            if (marker == END) {
                return new JpegParts(parts, progressive, scans, true);
            }
            if (marker <= 0x01 || marker == 0xff || marker >= 0xd0 && marker <= 0xd7) {
                at++; // picture data, filling or a restart
                continue;
            }
            if (at + 4 > file.length) {
                break;
            }
            int length = (file[at + 2] & 0xff) << 8 | file[at + 3] & 0xff;
            if (length < 2 || at + 2 + length > file.length) {
                break;
            }
            if (parts.size() == MOST_PARTS) {
                return new JpegParts(parts, progressive, scans, false);
            }
            parts.add(new Part(marker, at + 4, length - 2));
            progressive |= marker == PROGRESSIVE;
            scans += marker == SCAN ? 1 : 0;
            at += 2 + length;
        }
        return new JpegParts(parts, progressive, scans, false);
    }
}
