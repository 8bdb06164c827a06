package org.tallywright.photos.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.web.multipart.MultipartFile;
import org.tallywright.photos.PhotoDesk;
import org.tallywright.photos.PhotoDetails;
import org.tallywright.shared.Refused;
import org.tallywright.web.SignedIn;

/** Photos of one form, kept one after the other: one that cannot be read does not hold up the rest. */
final class Sent {
    static final int MOST = 20;

    private final Map<String, List<String>> refused = new LinkedHashMap<>();
    private int kept;
    private int known;

    /** The files that were chosen; a browser sends an empty one where none was. */
    static List<MultipartFile> chosen(@Nullable List<MultipartFile> files) {
        return files == null
                ? List.of()
                : files.stream()
                        .filter(file -> !file.isEmpty() || !name(file).isEmpty())
                        .toList();
    }

    void keep(PhotoDesk desk, UUID job, List<MultipartFile> files, PhotoDetails details, SignedIn me)
            throws IOException {
        for (MultipartFile file : files) {
            try {
                if (desk.add(job, bytes(file), details, me)) {
                    kept++;
                } else {
                    known++;
                }
            } catch (Refused no) {
                if (no.field() != null) {
                    throw no;
                }
                refused.computeIfAbsent(no.sentence(), sentence -> new ArrayList<>())
                        .add(name(file).isEmpty() ? "Photo" : name(file));
            }
        }
    }

    /** One byte more than is taken is enough to be refused. */
    private static byte[] bytes(MultipartFile file) throws IOException {
        try (var in = file.getInputStream()) {
            return in.readNBytes(PhotoDesk.MOST_BYTES + 1);
        }
    }

    private static String name(MultipartFile file) {
        String name = file.getOriginalFilename();
        String plain =
                name == null ? "" : name.replaceAll("[\\p{Cntrl}\\p{Cf}]", " ").strip();
        return plain.length() > 60 ? plain.substring(plain.length() - 60) : plain;
    }

    boolean refusedSome() {
        return !refused.isEmpty();
    }

    /** Which were not kept and why, and that the others were. */
    String refusal() {
        List<String> sentences = new ArrayList<>();
        refused.forEach((why, names) -> sentences.add(String.join(", ", names) + ": " + why));
        if (kept + known > 0) {
            sentences.add(kept + known == 1 ? "The other one is kept." : "The other " + (kept + known) + " are kept.");
        }
        return String.join(" ", sentences);
    }

    String done() {
        if (kept == 0) {
            return known == 1 ? "That photo was here already." : "These photos were here already.";
        }
        String said = kept == 1 ? "The photo is kept." : kept + " photos are kept.";
        return known == 0 ? said : said + (known == 1 ? " One was here already." : " " + known + " were here already.");
    }
}
