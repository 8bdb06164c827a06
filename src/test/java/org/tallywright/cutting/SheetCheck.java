package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Walks a layout with the saw and holds it against what was asked for; knows nothing of how it was found. */
final class SheetCheck {
    private final List<SheetPart> parts;
    private final long kerf;
    private final long trim;
    private final List<Integer> found = new ArrayList<>();
    private final Map<Integer, Integer> sheetOfMatch = new HashMap<>();

    private SheetCheck(List<SheetPart> parts, long kerf, long trim) {
        this.parts = parts;
        this.kerf = kerf;
        this.trim = trim;
    }

    /** No part lost or doubled, every cut from edge to edge, a kerf between neighbours, grain kept, matches together. */
    static void check(SheetPlan plan, List<SheetPart> parts, long kerf, long trim) {
        SheetCheck check = new SheetCheck(parts, kerf, trim);
        for (int i = 0; i < plan.sheets().size(); i++) {
            check.sheet(plan.sheets().get(i), i);
        }
        check.found.addAll(plan.unplaced());
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            all.add(i);
        }
        assertThat(check.found).containsExactlyInAnyOrderElementsOf(all);
    }

    private void sheet(SheetPlan.Sheet sheet, int number) {
        Region whole = sheet.whole();
        assertThat(List.of(whole.x(), whole.y())).isEqualTo(List.of(trim, trim));
        assertThat(whole.length()).isEqualTo(sheet.stock().length() - 2 * trim);
        assertThat(whole.width()).isEqualTo(sheet.stock().width() - 2 * trim);
        walk(whole);
        List<Region.Part> laid = sheet.parts();
        laid.forEach(part -> part(part, number));
        for (int a = 0; a < laid.size(); a++) {
            for (int b = a + 1; b < laid.size(); b++) {
                assertThat(apart(laid.get(a), laid.get(b))).isTrue();
            }
        }
        matches(laid);
    }

    /** Both halves of a cut lie inside it, as long and as wide as it but for the cut itself. */
    private void walk(Region region) {
        assertThat(region.length()).isPositive();
        assertThat(region.width()).isPositive();
        if (region instanceof Region.Cut cut) {
            Region near = cut.first();
            long reach = cut.rip() ? near.y() + near.width() : near.x() + near.length();
            assertThat(List.of(near.x(), near.y())).isEqualTo(List.of(cut.x(), cut.y()));
            assertThat(reach).isEqualTo(cut.at());
            assertThat(cut.rip() ? near.length() : near.width()).isEqualTo(cut.rip() ? cut.length() : cut.width());
            walk(near);
            Region far = cut.second();
            if (far != null) {
                assertThat(cut.rip() ? far.y() : far.x()).isEqualTo(cut.at() + kerf);
                assertThat(cut.rip() ? far.x() : far.y()).isEqualTo(cut.rip() ? cut.x() : cut.y());
                assertThat(far.x() + far.length()).isEqualTo(cut.x() + cut.length());
                assertThat(far.y() + far.width()).isEqualTo(cut.y() + cut.width());
                walk(far);
            }
        }
    }

    private void part(Region.Part laid, int sheet) {
        SheetPart asked = parts.get(laid.part());
        found.add(laid.part());
        assertThat(laid.length()).isEqualTo(laid.turned() ? asked.width() : asked.length());
        assertThat(laid.width()).isEqualTo(laid.turned() ? asked.length() : asked.width());
        assertThat(asked.grain() == Grain.ANY || laid.turned() == (asked.grain() == Grain.ACROSS))
                .isTrue();
        if (asked.match() > 0) {
            assertThat(sheetOfMatch.computeIfAbsent(asked.match(), m -> sheet)).isEqualTo(sheet);
        }
    }

    private boolean apart(Region a, Region b) {
        return a.x() + a.length() + kerf <= b.x()
                || b.x() + b.length() + kerf <= a.x()
                || a.y() + a.width() + kerf <= b.y()
                || b.y() + b.width() + kerf <= a.y();
    }

    /** Each next one of a match begins a kerf behind the last, on the same line. */
    private void matches(List<Region.Part> laid) {
        Map<Integer, Region.Part> last = new HashMap<>();
        for (Region.Part part : laid) {
            int match = parts.get(part.part()).match();
            Region.Part before = match == 0 ? null : last.put(match, part);
            if (before != null) {
                boolean above = part.y() == before.y() + before.width() + kerf && part.x() == before.x();
                boolean besides = part.x() == before.x() + before.length() + kerf && part.y() == before.y();
                assertThat(above || besides).isTrue();
            }
        }
    }
}
