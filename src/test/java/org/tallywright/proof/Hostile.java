package org.tallywright.proof;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Values that nobody should send, by what they are. */
record Hostile(String what, String value, Sort sort) {
    enum Sort {
        /** Does not belong into any box at all: refused, or never read. */
        NOWHERE,
        /** Wrong where a number, a date, an id or one of a list is wanted; fine as text. */
        NOT_A_VALUE
    }

    /** What is left of it in a table shows that it was taken. */
    static final String MARK = "zqx7";

    static final List<Hostile> ALL = List.of(
            new Hostile("10,000 characters", MARK + "x".repeat(10_000), Sort.NOWHERE),
            new Hostile("a null byte", MARK + "\0end", Sort.NOWHERE),
            new Hostile("half a character", MARK + "\ud83d", Sort.NOWHERE),
            new Hostile("300 characters", MARK + "y".repeat(300), Sort.NOT_A_VALUE),
            new Hostile("below nought", "-1", Sort.NOT_A_VALUE),
            new Hostile("far below nought", "-99999999999", Sort.NOT_A_VALUE),
            new Hostile("an id that is none", "00000000-0000-4000-8000-00000000000z", Sort.NOT_A_VALUE),
            new Hostile(
                    "an unknown id",
                    UUID.fromString("0199aaaa-bbbb-7ccc-8ddd-eeeeeeeeeeee").toString(),
                    Sort.NOT_A_VALUE),
            new Hostile("an emoji", MARK + "\ud83d\ude80\ud83e\udeb5", Sort.NOT_A_VALUE),
            new Hostile("marks that turn text around", "\u202e" + MARK + "\u200f\u2066", Sort.NOT_A_VALUE),
            new Hostile("a path", "../../../../etc/passwd", Sort.NOT_A_VALUE),
            new Hostile("a script", "\"><script>alert('" + MARK + "')</script>", Sort.NOT_A_VALUE),
            new Hostile("SQL", "'; drop table job; -- " + MARK, Sort.NOT_A_VALUE),
            new Hostile("a template", "${7*7}[[${7*7}]]__${7*7}__" + MARK, Sort.NOT_A_VALUE),
            new Hostile("too large a number", "99999999999", Sort.NOT_A_VALUE),
            new Hostile("a number beyond all", "1e999", Sort.NOT_A_VALUE),
            new Hostile("a number of ten thousand digits", "9".repeat(10_000), Sort.NOWHERE),
            new Hostile("not a number", "NaN", Sort.NOT_A_VALUE),
            new Hostile("infinity", "-Infinity", Sort.NOT_A_VALUE),
            new Hostile("a wrong unit", "3 furlongs", Sort.NOT_A_VALUE),
            new Hostile("many decimals", "0." + "0".repeat(200) + "1", Sort.NOT_A_VALUE),
            new Hostile("other digits", "\u0661\u0662\u0663", Sort.NOT_A_VALUE),
            new Hostile("a day that never was", "0000-00-00", Sort.NOT_A_VALUE),
            new Hostile("the last day of all", "9999-12-31", Sort.NOT_A_VALUE),
            new Hostile("a day of long ago", "1-1-1", Sort.NOT_A_VALUE),
            new Hostile("a day beyond any calendar", "+999999999-12-31", Sort.NOT_A_VALUE),
            new Hostile("a leap day that is none", "2025-02-29", Sort.NOT_A_VALUE),
            new Hostile("nothing", "", Sort.NOT_A_VALUE),
            new Hostile("blanks", " \t\u00a0\u2003 ", Sort.NOT_A_VALUE),
            new Hostile("line ends", MARK + "\r\nSet-Cookie: a=b\r\n\r\n", Sort.NOT_A_VALUE),
            new Hostile("a whole form", "a=1&b=2%00%0d%0a", Sort.NOT_A_VALUE));

    /** The start of it, long enough not to be in the shop by chance. */
    String mark() {
        return value.startsWith(MARK) ? MARK : value.substring(0, Math.min(40, value.length()));
    }

    /** An id of the shop that does not belong where it is put: another job's task, piece, bid; a person for a material. */
    static List<Hostile> foreign(WholeShop shop) {
        return Map.of(
                        "another job's task", "select id from task where job_id <> ? limit 1",
                        "another job's piece", "select id from piece where job_id <> ? limit 1",
                        "another job's bid", "select id from bid where job_id <> ? limit 1",
                        "another job", "select id from job where id <> ? limit 1",
                        "an entry", "select id from time_entry where job_id <> ? limit 1")
                .entrySet()
                .stream()
                .sorted(Map.Entry.comparingByKey())
                .map(entry -> new Hostile(
                        entry.getKey(), String.valueOf(shop.one(entry.getValue(), shop.job())), Sort.NOT_A_VALUE))
                .toList();
    }
}
