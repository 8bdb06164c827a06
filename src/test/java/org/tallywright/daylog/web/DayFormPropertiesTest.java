package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;
import org.tallywright.daylog.TypedRow;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;

/** Whatever a browser, a script or an accident sends, the form is read or refused in words. */
class DayFormPropertiesTest {
    @Property(tries = 400)
    void readsOrRefusesAnything(@ForAll("anything") Map<String, String> sent) {
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

    @Property(tries = 200)
    void keepsEveryBoxWordForWord(@ForAll("rows") List<RowForm> rows) {
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

    @Property(tries = 300)
    void spreadsABoxWithoutLosingAMinute(@ForAll("times") String time) {
        RowForm row = new RowForm(Ids.next(), null, "shop:selling", "office", time, "", "", false);
        DayTyped once = new DayTyped(List.of(row));
        DayTyped twice = new DayTyped(List.of(row));
        assertThat(once.objections).isEmpty();
        assertThat(once.rows).isEqualTo(twice.rows);
        assertThat(once.rows.stream().map(TypedRow::id)).doesNotHaveDuplicates();
        int minutes = once.rows.stream().mapToInt(r -> r.content().minutes()).sum();
        assertThat(minutes)
                .isEqualTo(org.tallywright.shared.LoggedTime.parse(time).hours().minutes());
    }

    @Test
    void hasRoomForSixtyRows() {
        MultiValueMap<String, String> form = new LinkedMultiValueMap<>();
        for (int n = 0; n < 61; n++) {
            form.add("row." + n + ".id", Ids.next().toString());
        }
        assertThatThrownBy(() -> DayForm.read(form)).isInstanceOf(Refused.class);
    }

    @Provide
    Arbitrary<Map<String, String>> anything() {
        Arbitrary<String> names = Arbitraries.oneOf(
                Combinators.combine(
                                Arbitraries.integers().between(0, 70),
                                Arbitraries.of("id", "version", "what", "class", "time", "note", "reason", "pick"))
                        .as((n, field) -> "row." + n + "." + field),
                Arbitraries.strings().ofMaxLength(20),
                Arbitraries.of("line", "act", "yes", "row..time", "row.1e9.id", "row[0].time"));
        Arbitrary<String> values = Arbitraries.oneOf(
                Arbitraries.strings().ofMaxLength(60),
                Arbitraries.of("", "2", "8-12", "-1", "1e999", "task:x", "shop:selling", "job:", "0", "2147483648"),
                Arbitraries.create(() -> Ids.next().toString()),
                Arbitraries.create(() -> "task:" + Ids.next()));
        return Arbitraries.maps(names, values).ofMaxSize(40);
    }

    @Provide
    Arbitrary<List<RowForm>> rows() {
        Arbitrary<String> text = Arbitraries.strings().ofMaxLength(40);
        return Combinators.combine(
                        Arbitraries.create(Ids::next),
                        Arbitraries.integers().between(0, 999).injectNull(0.5),
                        text,
                        text,
                        text,
                        text,
                        Arbitraries.of(true, false))
                .as((id, version, what, time, note, reason, pick) ->
                        new RowForm(id, version, what, "direct", time, note, reason, pick))
                .list()
                .ofMaxSize(20);
    }

    @Provide
    Arbitrary<String> times() {
        Arbitrary<String> ranges = Arbitraries.integers()
                .between(0, 4)
                .flatMap(first -> Arbitraries.integers().between(1, 3).map(parts -> {
                    List<String> spans = new ArrayList<>();
                    for (int n = 0; n < parts; n++) {
                        spans.add(String.format("%02d:10-%02d:50", first + n * 3, first + n * 3 + 2));
                    }
                    return String.join(" + ", spans);
                }));
        return Arbitraries.oneOf(ranges, Arbitraries.of("2", "2.5", "2h30", "45m", "7:30am-noon"));
    }
}
