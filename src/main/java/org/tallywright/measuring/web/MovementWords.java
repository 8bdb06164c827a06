package org.tallywright.measuring.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.tallywright.jobs.ShopDates;
import org.tallywright.measuring.AirDetails;
import org.tallywright.measuring.PartDetails;
import org.tallywright.measuring.Reckoned;
import org.tallywright.measuring.WoodMovement;

/** How far a solid part moves in the air of the site: the last reading, and the driest and dampest there were. */
final class MovementWords {
    private final Figures figures;
    private final ShopDates dates;
    private final Map<AirDetails, Reckoned> rooms = new LinkedHashMap<>();

    /** Texts by key. */
    interface Texts {
        String text(String key, Object... values);
    }

    /** @param airs the oldest first */
    MovementWords(List<AirDetails> airs, Figures figures, ShopDates dates) {
        this.figures = figures;
        this.dates = dates;
        List<AirDetails> known =
                airs.stream().filter(air -> air.air().moisture().isPresent()).toList();
        if (!known.isEmpty()) {
            keep(known.get(known.size() - 1));
            known.stream()
                    .min((a, b) ->
                            Double.compare(moisture(a).value(), moisture(b).value()))
                    .ifPresent(this::keep);
            known.stream()
                    .max((a, b) ->
                            Double.compare(moisture(a).value(), moisture(b).value()))
                    .ifPresent(this::keep);
        }
    }

    private void keep(AirDetails air) {
        rooms.put(air, moisture(air));
    }

    private static Reckoned moisture(AirDetails air) {
        return air.air().moisture().orElseThrow();
    }

    SitePage.PartShown shown(UUID id, PartDetails part, String piece, Texts texts) {
        List<SitePage.Shown> moves = new ArrayList<>();
        double grows = 0;
        double shrinks = 0;
        for (Map.Entry<AirDetails, Reckoned> room : rooms.entrySet()) {
            Reckoned move = part.movement(room.getValue());
            grows = Math.max(grows, move.value() + move.plusMinus());
            shrinks = Math.max(shrinks, move.plusMinus() - move.value());
            moves.add(move(part, room.getKey(), room.getValue(), move, texts));
        }
        String leave = rooms.isEmpty()
                ? ""
                : texts.text("measuring.part.leave", figures.sizeUp(grows), figures.sizeUp(shrinks));
        return new SitePage.PartShown(
                id,
                part.name(),
                piece,
                part.width().format(figures.units()) + " " + part.species().label() + ", "
                        + PartForm.CUTS.getOrDefault(part.cut().code(), "").toLowerCase(java.util.Locale.ROOT),
                moves,
                leave,
                List.of(new SitePage.Line(
                        texts.text("measuring.part.moisture"),
                        Figures.decimals(part.moisture().doubleValue(), 1) + " %")),
                part.note());
    }

    private SitePage.Shown move(PartDetails part, AirDetails air, Reckoned room, Reckoned move, Texts texts) {
        double made = part.moisture().doubleValue();
        boolean linear = WoodMovement.isLinear(made, room.value());
        // Equation 13-3 itself was not read in the book.
        boolean read = linear ? part.species().coefficientsRead() : false;
        double coefficient =
                linear ? part.species().coefficient(part.cut()) : part.species().shrinkagePercent(part.cut());
        String name = texts.text("measuring.part.room", air.place(), dates.day(air.takenOn()));
        String what = move.value() < 0 ? "measuring.part.shrinks" : "measuring.part.grows";
        String value = texts.text(what, figures.size(move.value()), figures.sizeUp(move.plusMinus()));
        List<SitePage.Line> inputs = List.of(
                new SitePage.Line(
                        texts.text("measuring.part.width"), part.width().format(figures.units())),
                new SitePage.Line(texts.text("measuring.part.made"), Figures.decimals(made, 1) + " %"),
                new SitePage.Line(texts.text("measuring.part.inRoom"), figures.percent(room)),
                new SitePage.Line(
                        texts.text(linear ? "measuring.part.coefficient" : "measuring.part.shrinkage"),
                        linear ? Figures.decimals(coefficient, 5) : Figures.decimals(coefficient, 1) + " %"),
                new SitePage.Line(
                        texts.text("measuring.part.source"),
                        texts.text(read ? "measuring.part.read" : "measuring.part.practice")));
        return new SitePage.Shown(
                name, value, texts.text(linear ? "measuring.part.linear" : "measuring.part.curved"), inputs);
    }
}
