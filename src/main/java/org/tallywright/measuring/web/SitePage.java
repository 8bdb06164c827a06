package org.tallywright.measuring.web;

import java.util.List;
import java.util.UUID;
import org.tallywright.photos.PhotoWords;

/** The site measure of a job, ready to be shown. */
record SitePage(List<OpeningShown> openings, List<AirShown> airs, List<PartShown> parts, boolean work) {

    /** A name and its value. */
    record Line(String name, String value) {}

    /** Readings under one heading. */
    record Group(String name, List<Line> lines) {}

    /**
     * @param formula in words, with its source where it is not plain geometry
     * @param inputs the readings it was computed from
     */
    record Shown(String name, String value, String formula, List<Line> inputs) {}

    /**
     * @param pieceId empty where the opening is for no piece yet
     * @param photos of that piece
     */
    record OpeningShown(
            UUID id,
            String place,
            String piece,
            String by,
            String goodTo,
            String note,
            List<String> sentences,
            List<String> cautions,
            List<Shown> figures,
            List<Group> readings,
            String pieceId,
            List<PhotoWords.Print> photos) {}

    /** @param moisture empty where the equation does not reach */
    record AirShown(UUID id, String place, String by, String air, String moisture, List<Line> inputs, String note) {}

    /**
     * @param moves a line for each reading of the air that counts; empty where there is none
     * @param leave how much room to leave; empty where nothing is known
     */
    record PartShown(
            UUID id,
            String name,
            String piece,
            String what,
            List<Shown> moves,
            String leave,
            List<Line> inputs,
            String note) {}
}
