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
    private final Map<Integer, Integer> runs = new HashMap<>();

    private SheetCheck(List<SheetPart> parts, long kerf, long trim) {
        this.parts = parts;
        this.kerf = kerf;
        this.trim = trim;
    }

    /**
     * No part lost or doubled, none left out that a sheet would take, every cut from edge to edge, a kerf between
     * neighbours, grain kept, matches in as many runs as the plan says.
     */
    static void check(
            SheetPlan plan, SheetStock bought, List<SheetStock> owned, List<SheetPart> parts, long kerf, long trim) {
        SheetCheck check = new SheetCheck(parts, kerf, trim);
        plan.sheets().forEach(check::sheet);
        check.found.addAll(plan.unplaced());
        List<Integer> all = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            all.add(i);
        }
        assertThat(check.found).containsExactlyInAnyOrderElementsOf(all);
        List<SheetStock> empty = new ArrayList<>(List.of(bought));
        for (int i = 0; i < owned.size(); i++) {
            int at = i;
            if (plan.sheets().stream().noneMatch(sheet -> sheet.owned() == at)) {
                empty.add(owned.get(i));
            }
        }
        for (int i : plan.unplaced()) {
            assertThat(empty).noneMatch(sheet -> check.fits(parts.get(i), sheet));
        }
        plan.parted().forEach(parted -> {
            assertThat(parted.runs()).isGreaterThan(1);
            // Two may happen to lie beside each other.
            assertThat(check.runs.remove(parted.match())).isBetween(1, parted.runs());
        });
        assertThat(check.runs.values()).allMatch(runs -> runs == 1);
    }

    private boolean fits(SheetPart part, SheetStock sheet) {
        long length = sheet.length() - 2 * trim;
        long width = sheet.width() - 2 * trim;
        boolean along = part.length() <= length && part.width() <= width;
        boolean across = part.width() <= length && part.length() <= width;
        return switch (part.grain()) {
            case ANY -> along || across;
            case ACROSS -> across;
            case ALONG -> along;
        };
    }

    private void sheet(SheetPlan.Sheet sheet) {
        Region whole = sheet.whole();
        assertThat(List.of(whole.x(), whole.y())).isEqualTo(List.of(trim, trim));
        assertThat(whole.length()).isEqualTo(sheet.stock().length() - 2 * trim);
        assertThat(whole.width()).isEqualTo(sheet.stock().width() - 2 * trim);
        walk(whole);
        List<Region.Part> laid = sheet.parts();
        laid.forEach(this::part);
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
            } else {
                long end = cut.rip() ? cut.y() + cut.width() : cut.x() + cut.length();
                assertThat(end - cut.at()).isBetween(1L, kerf);
            }
        }
    }

    private void part(Region.Part laid) {
        SheetPart asked = parts.get(laid.part());
        found.add(laid.part());
        assertThat(laid.length()).isEqualTo(laid.turned() ? asked.width() : asked.length());
        assertThat(laid.width()).isEqualTo(laid.turned() ? asked.length() : asked.width());
        assertThat(asked.grain() == Grain.ANY || laid.turned() == (asked.grain() == Grain.ACROSS))
                .isTrue();
    }

    private boolean apart(Region a, Region b) {
        return a.x() + a.length() + kerf <= b.x()
                || b.x() + b.length() + kerf <= a.x()
                || a.y() + a.width() + kerf <= b.y()
                || b.y() + b.width() + kerf <= a.y();
    }

    /**
     * Each next one of a match begins a kerf behind the last, on the same line, or a kerf behind the whole row; else another
     * run begins.
     */
    private void matches(List<Region.Part> laid) {
        Map<Integer, List<Region.Part>> rows = new HashMap<>();
        for (Region.Part part : laid) {
            int match = parts.get(part.part()).match();
            if (match == 0) {
                continue;
            }
            List<Region.Part> row = rows.computeIfAbsent(match, m -> new ArrayList<>());
            boolean runsOn = !row.isEmpty() && isNext(row.get(row.size() - 1), part);
            boolean nextRow = !row.isEmpty() && !runsOn && isBehind(row, part);
            if (!runsOn) {
                row.clear();
            }
            row.add(part);
            runs.merge(match, runsOn || nextRow ? 0 : 1, Integer::sum);
        }
    }

    private boolean isNext(Region.Part before, Region.Part part) {
        boolean above = part.y() == before.y() + before.width() + kerf && part.x() == before.x();
        boolean besides = part.x() == before.x() + before.length() + kerf && part.y() == before.y();
        return above || besides;
    }

    private boolean isBehind(List<Region.Part> row, Region.Part part) {
        Region.Part first = row.get(0);
        long farX = row.stream().mapToLong(p -> p.x() + p.length()).max().orElseThrow();
        long farY = row.stream().mapToLong(p -> p.y() + p.width()).max().orElseThrow();
        return (part.x() == farX + kerf && part.y() == first.y()) || (part.y() == farY + kerf && part.x() == first.x());
    }
}
