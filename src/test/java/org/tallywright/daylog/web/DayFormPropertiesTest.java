package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;
import org.tallywright.Draw;
import org.tallywright.Tries;
import org.tallywright.daylog.TypedRow;
import org.tallywright.shared.Ids;
import org.tallywright.shared.LoggedTime;
import org.tallywright.shared.Refused;

/** Whatever a browser, a script or an accident sends, the form is read or refused in words. */
class DayFormPropertiesTest {
    @Test
    void readsOrRefusesAnything() {
        Tries.of(400, draw -> readOrRefused(anything(draw)));
    }

    private static void readOrRefused(Map<String, String> sent) {
        MultiValueMap<String, String> form = new LinkedMultiValueMap<>();
        sent.forEach(form::add);
        try {
            DayTyped typed = new DayTyped(DayForm.read(form).rows());
            for (TypedRow row : typed.rows) {
                assertThat(row.content() == null
                                || row.content().minutes() >= 1 && row.content().minutes() <= 1440)
                        .isTrue();
            }
        } catch (Refused refused) {
            assertThat(refused.sentence()).isNotBlank();
        }
    }

    @Test
    void keepsEveryBoxWordForWord() {
        Tries.of(200, draw -> kept(draw.list(0, 20, () -> row(draw))));
    }

    private static void kept(List<RowForm> rows) {
        MultiValueMap<String, String> form = new LinkedMultiValueMap<>();
        for (int n = 0; n < rows.size(); n++) {
            RowForm row = rows.get(n);
            String box = "row." + n + ".";
            form.add(box + "id", row.id().toString());
            form.add(box + "version", row.version() == null ? "" : row.version().toString());
            form.add(box + "what", row.what());
            form.add(box + "class", row.hourClass());
            form.add(box + "time", row.time());
            form.add(box + "note", row.note());
            form.add(box + "reason", row.reason());
            if (row.pick()) form.add(box + "pick", "1");
        }
        assertThat(DayForm.read(form).rows()).isEqualTo(rows);
    }

    @Test
    void spreadsABoxWithoutLosingAMinute() {
        Tries.of(300, draw -> spread(time(draw)));
    }

    private static void spread(String time) {
        RowForm row = new RowForm(Ids.next(), null, "shop:selling", "office", time, "", "", false);
        DayTyped once = new DayTyped(List.of(row));
        DayTyped twice = new DayTyped(List.of(row));
        assertThat(once.objections).isEmpty();
        assertThat(once.rows).isEqualTo(twice.rows);
        assertThat(once.rows.stream().map(TypedRow::id)).doesNotHaveDuplicates();
        int minutes = once.rows.stream().mapToInt(r -> r.content().minutes()).sum();
        assertThat(minutes).isEqualTo(LoggedTime.parse(time).hours().minutes());
    }

    @Test
    void hasRoomForSixtyRows() {
        MultiValueMap<String, String> form = new LinkedMultiValueMap<>();
        for (int n = 0; n < 61; n++) {
            form.add("row." + n + ".id", Ids.next().toString());
        }
        assertThatThrownBy(() -> DayForm.read(form)).isInstanceOf(Refused.class);
    }

    private static Map<String, String> anything(Draw draw) {
        Map<String, String> sent = new LinkedHashMap<>();
        for (int n = draw.between(0, 40); n > 0; n--) {
            sent.put(name(draw), value(draw));
        }
        return sent;
    }

    private static String name(Draw draw) {
        return draw.oneOf(
                () -> "row." + draw.between(0, 70) + "."
                        + draw.of("id", "version", "what", "class", "time", "note", "reason", "pick"),
                () -> draw.anyText(20),
                () -> draw.of("line", "act", "yes", "row..time", "row.1e9.id", "row[0].time"));
    }

    private static String value(Draw draw) {
        return draw.oneOf(
                () -> draw.anyText(60),
                () -> draw.of("", "2", "8-12", "-1", "1e999", "task:x", "shop:selling", "job:", "0", "2147483648"),
                () -> Ids.next().toString(),
                () -> "task:" + Ids.next());
    }

    private static RowForm row(Draw draw) {
        Integer version = draw.coin() ? null : draw.between(0, 999);
        return new RowForm(
                Ids.next(),
                version,
                draw.anyText(40),
                "direct",
                draw.anyText(40),
                draw.anyText(40),
                draw.anyText(40),
                draw.coin());
    }

    private static String time(Draw draw) {
        return draw.oneOf(() -> ranges(draw), () -> draw.of("2", "2.5", "2h30", "45m", "7:30am-noon"));
    }

    private static String ranges(Draw draw) {
        int first = draw.between(0, 4);
        List<String> spans = new ArrayList<>();
        for (int n = draw.between(1, 3) - 1; n >= 0; n--) {
            spans.add(String.format("%02d:10-%02d:50", first + n * 3, first + n * 3 + 2));
        }
        return String.join(" + ", spans);
    }
}
