package org.tallywright.shared;

import java.util.List;
import org.tallywright.Draw;

/** Text that nobody should type and somebody will. */
final class Strange {
    private static final List<String> KNOWN = List.of(
            "",
            " ",
            "\0",
            "1\0",
            "\ud83d\ude80",
            "\ud83d",
            "2h\ud83d\ude8030",
            "9".repeat(10_000),
            "1 ".repeat(5_000),
            "(".repeat(10_000),
            "1,".repeat(5_000),
            "8-12 + ".repeat(1_500),
            "1h".repeat(5_000),
            "1/".repeat(5_000),
            "1e999999999",
            "-1e5",
            "NaN",
            "Infinity",
            "0x10",
            "\u0661\u0662",
            "\u202e2h",
            "1/0",
            "0/0",
            "1.2.3",
            ".",
            ",",
            "-",
            "--1",
            "+",
            "'",
            "\"",
            "12:60",
            "99:99-99:99",
            "25-26",
            "0-0",
            "<script>alert(1)</script>",
            "'; drop table time_entry; --",
            "999999999999999",
            "$-",
            "%",
            "()");

    private Strange() {}

    /** Known trouble, any characters at all, and characters that values are made of in any order. */
    static String text(Draw draw) {
        return draw.oneOf(
                () -> draw.of(KNOWN),
                () -> draw.anyText(200),
                () -> draw.text("0123456789.,:;/-+ '\"hmapnofxti$%()\u00bd\u215d\u2032\u2033\u00d7\u00a0\n\0", 40));
    }
}
