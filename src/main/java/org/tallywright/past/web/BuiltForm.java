package org.tallywright.past.web;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.web.util.UriComponentsBuilder;
import org.tallywright.past.BuiltSearch;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.web.FormReader;

/**
 * What is looked for among past work, as the address says; anything it does not know is taken as not said.
 *
 * @param job number of the job that is being estimated, or empty
 * @param piece id of the piece of that job which takes the lines, or empty
 * @param all "true": also pieces that are not built
 */
record BuiltForm(
        String job,
        String piece,
        String kind,
        String q,
        String width,
        String height,
        String depth,
        String all,
        String page) {
    BuiltForm {
        job = text(job);
        piece = text(piece);
        kind = text(kind);
        q = text(q);
        width = text(width);
        height = text(height);
        depth = text(depth);
        all = text(all);
        page = text(page);
    }

    private static String text(@Nullable String sent) {
        return sent == null ? "" : sent.strip();
    }

    /** For that piece: its kind and sizes, until the form was sent, which always names a page. */
    BuiltForm likeness(PieceFacts.Fact target, PastWords words) {
        return !page.isEmpty()
                ? this
                : new BuiltForm(
                        job,
                        piece,
                        target.kindId() == null ? "" : target.kindId().toString(),
                        "",
                        words.length(target.width()),
                        words.length(target.height()),
                        words.length(target.depth()),
                        all,
                        page);
    }

    BuiltSearch search(FormReader read, String words, Units units, @Nullable UUID not) {
        return new BuiltSearch(
                kindId(),
                words,
                read.optional("width", width, () -> Length.parseSize(width, units)),
                read.optional("height", height, () -> Length.parseSize(height, units)),
                read.optional("depth", depth, () -> Length.parseSize(depth, units)),
                all.equals("true"),
                not);
    }

    private @Nullable UUID kindId() {
        try {
            return kind.isEmpty() ? null : UUID.fromString(kind);
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    int pageNumber() {
        return page.matches("[1-9]\\d{0,5}") ? Integer.parseInt(page) : 1;
    }

    /** The address for the pager: all but the page. */
    String path(String start) {
        UriComponentsBuilder uri = UriComponentsBuilder.fromPath(start);
        Map<String, String> values = new HashMap<>();
        add(uri, values, "job", job);
        add(uri, values, "piece", piece);
        add(uri, values, "kind", kind);
        add(uri, values, "q", q);
        add(uri, values, "width", width);
        add(uri, values, "height", height);
        add(uri, values, "depth", depth);
        add(uri, values, "all", all);
        return uri.encode().buildAndExpand(values).toUriString();
    }

    /** The address of the preview of a copy: for the piece that takes the lines, else of the sizes that were looked for. */
    public String copy(UUID past) {
        UriComponentsBuilder uri = UriComponentsBuilder.fromPath("/jobs/{job}/past-pieces/{past}");
        Map<String, String> values = new HashMap<>(Map.of("job", job, "past", past.toString()));
        if (piece.isEmpty()) {
            add(uri, values, "width", width);
            add(uri, values, "height", height);
            add(uri, values, "depth", depth);
        } else {
            add(uri, values, "into", piece);
        }
        return uri.encode().buildAndExpand(values).toUriString();
    }

    private static void add(UriComponentsBuilder uri, Map<String, String> values, String name, String value) {
        if (!value.isEmpty()) {
            uri.queryParam(name, "{" + name + "}");
            values.put(name, value);
        }
    }
}
