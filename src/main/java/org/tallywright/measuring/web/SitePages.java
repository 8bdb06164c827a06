package org.tallywright.measuring.web;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.ShopDates;
import org.tallywright.measuring.AirDetails;
import org.tallywright.measuring.Finding;
import org.tallywright.measuring.Mark;
import org.tallywright.measuring.OpeningDetails;
import org.tallywright.measuring.OpeningSums;
import org.tallywright.measuring.PartDetails;
import org.tallywright.measuring.Reading;
import org.tallywright.measuring.SiteDesk;
import org.tallywright.photos.PhotoRows;
import org.tallywright.photos.PhotoWords;
import org.tallywright.shared.Length;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Units;

/** Puts the site measure of a job into words and figures. */
@Component
class SitePages {
    private final SiteDesk desk;
    private final JdbcClient jdbc;
    private final ShopConventions shop;
    private final ShopDates dates;
    private final MessageSource texts;
    private final PhotoRows photos;
    private final PhotoWords prints;

    SitePages(
            SiteDesk desk,
            JdbcClient jdbc,
            ShopConventions shop,
            ShopDates dates,
            MessageSource texts,
            PhotoRows photos,
            PhotoWords prints) {
        this.desk = desk;
        this.jdbc = jdbc;
        this.shop = shop;
        this.dates = dates;
        this.texts = texts;
        this.photos = photos;
        this.prints = prints;
    }

    private record Piece(
            String name, @Nullable Length depth, @Nullable Length height) {}

    Units units() {
        return shop.units();
    }

    String text(String key, Object... values) {
        return texts.getMessage(key, values, Locale.ENGLISH);
    }

    /** The pieces of a job to pick from, by id. */
    Map<String, String> choice(UUID job) {
        Map<String, String> options = new LinkedHashMap<>();
        pieces(job).forEach((id, piece) -> options.put(id.toString(), piece.name()));
        return options;
    }

    private Map<UUID, Piece> pieces(UUID job) {
        Map<UUID, Piece> pieces = new LinkedHashMap<>();
        jdbc.sql("select id, name, depth, height from piece where job_id = ? order by position, id")
                .param(job)
                .query(row -> {
                    pieces.put(
                            row.getObject(1, UUID.class), new Piece(row.getString(2), length(row, 3), length(row, 4)));
                });
        return pieces;
    }

    private static @Nullable Length length(ResultSet row, int column) throws SQLException {
        long units = row.getLong(column);
        return row.wasNull() ? null : new Length(units);
    }

    private Map<UUID, String> people() {
        Map<UUID, String> names = new HashMap<>();
        jdbc.sql("select id, name from person").query(row -> {
            names.put(row.getObject(1, UUID.class), row.getString(2));
        });
        return names;
    }

    SitePage of(JobRef job) {
        Figures figures = new Figures(units());
        Map<UUID, Piece> pieces = pieces(job.id());
        Map<UUID, String> people = people();
        Map<UUID, List<PhotoWords.Print>> photos = photos(job.id());
        List<SiteDesk.Kept<AirDetails>> airs = desk.airs(job.id());
        MovementWords movement =
                new MovementWords(airs.stream().map(SiteDesk.Kept::details).toList(), figures, dates);
        return new SitePage(
                desk.openings(job.id()).stream()
                        .map(kept -> opening(kept, pieces, people, figures, photos))
                        .toList(),
                airs.stream().map(kept -> air(kept, people, figures)).toList(),
                desk.parts(job.id()).stream()
                        .map(kept -> part(kept, pieces, movement))
                        .toList(),
                !job.isClosed());
    }

    private static String name(Map<UUID, Piece> pieces, @Nullable UUID id) {
        Piece piece = id == null ? null : pieces.get(id);
        return piece == null ? "" : piece.name();
    }

    private String by(Map<UUID, String> people, @Nullable UUID person, LocalDate on) {
        String name = person == null ? null : people.get(person);
        return (name == null ? "" : name + ", ") + dates.day(on);
    }

    private SitePage.OpeningShown opening(
            SiteDesk.Kept<OpeningDetails> kept,
            Map<UUID, Piece> pieces,
            Map<UUID, String> people,
            Figures figures,
            Map<UUID, List<PhotoWords.Print>> photos) {
        OpeningDetails opening = kept.details();
        UUID pieceId = opening.pieceId();
        Piece piece = pieceId == null ? null : pieces.get(pieceId);
        Length depth = piece == null ? null : piece.depth();
        Length height = piece == null ? null : piece.height();
        List<Finding> findings = OpeningSums.of(opening.readings(), opening.goodTo(), depth, height);
        OpeningWords.Said said = OpeningWords.of(findings, opening, depth, figures);
        return new SitePage.OpeningShown(
                kept.id(),
                opening.place(),
                name(pieces, pieceId),
                by(people, kept.by(), opening.measuredOn()),
                figures.goodTo(opening.goodTo()),
                opening.note(),
                said.sentences(),
                said.cautions(),
                findings.stream().map(f -> shown(f, opening, piece, figures)).toList(),
                groups(opening, figures),
                pieceId == null ? "" : pieceId.toString(),
                pieceId == null ? List.of() : photos.getOrDefault(pieceId, List.of()));
    }

    private Map<UUID, List<PhotoWords.Print>> photos(UUID job) {
        Map<UUID, List<PhotoWords.Print>> ofPieces = new HashMap<>();
        photos.ofPieces(job)
                .forEach(row -> ofPieces.computeIfAbsent(row.pieceId(), piece -> new ArrayList<>())
                        .add(prints.print(row)));
        return ofPieces;
    }

    private SitePage.Shown shown(Finding finding, OpeningDetails opening, @Nullable Piece piece, Figures figures) {
        String value = finding.sum().isAngle() ? figures.degrees(finding.figure()) : figures.length(finding.figure());
        Length depth = piece == null ? null : piece.depth();
        Length height = piece == null ? null : piece.height();
        String deep = depth == null ? text("measuring.depth.whole") : depth.format(figures.units());
        String tall = height == null ? text("measuring.height.whole") : height.format(figures.units());
        List<SitePage.Line> inputs = finding.from().stream()
                .map(reading -> line(reading, opening, figures))
                .toList();
        return new SitePage.Shown(
                text("measuring.sum." + finding.sum()),
                value,
                text(
                        "measuring.formula." + finding.sum(),
                        deep,
                        OpeningSums.SPARE.format(figures.units()),
                        figures.goodTo(opening.goodTo()),
                        tall),
                inputs);
    }

    private SitePage.Line line(Reading reading, OpeningDetails opening, Figures figures) {
        Length length = opening.readings().getOrDefault(reading, Length.ZERO);
        return new SitePage.Line(text("measuring.reading." + reading.box()), length.format(figures.units()));
    }

    private List<SitePage.Group> groups(OpeningDetails opening, Figures figures) {
        List<SitePage.Group> groups = new ArrayList<>();
        for (Reading.Group group : Reading.Group.values()) {
            groups.add(new SitePage.Group(
                    text("measuring.group." + group),
                    group.readings().stream()
                            .filter(opening.readings()::containsKey)
                            .map(reading -> line(reading, opening, figures))
                            .toList()));
        }
        for (Mark.Kind kind : Mark.Kind.values()) {
            groups.add(new SitePage.Group(
                    text("measuring.marks." + kind),
                    opening.marks().stream()
                            .filter(mark -> mark.kind() == kind)
                            .map(mark -> new SitePage.Line(mark.name(), MarkLines.place(mark, figures.units())))
                            .toList()));
        }
        return groups.stream().filter(group -> !group.lines().isEmpty()).toList();
    }

    private SitePage.AirShown air(SiteDesk.Kept<AirDetails> kept, Map<UUID, String> people, Figures figures) {
        AirDetails air = kept.details();
        String temperature = figures.temperature(air.celsius(), air.air().fahrenheit());
        String humidity = Figures.decimals(air.humidity().doubleValue(), 0) + " %";
        return new SitePage.AirShown(
                kept.id(),
                air.place(),
                by(people, kept.by(), air.takenOn()),
                temperature + ", " + text("measuring.air.humidityOf", humidity),
                air.air().moisture().map(figures::percent).orElse(""),
                List.of(
                        new SitePage.Line(text("measuring.air.temperature"), temperature),
                        new SitePage.Line(text("measuring.air.humidity"), humidity)),
                air.note());
    }

    private SitePage.PartShown part(SiteDesk.Kept<PartDetails> kept, Map<UUID, Piece> pieces, MovementWords movement) {
        PartDetails part = kept.details();
        return movement.shown(kept.id(), part, name(pieces, part.pieceId()), this::text);
    }

    /** The boxes of a group of readings, with their labels. */
    List<Box> boxes(Reading.Group group) {
        return Arrays.stream(Reading.values())
                .filter(reading -> reading.group() == group)
                .map(reading -> new Box(reading.box(), text("measuring.reading." + reading.box())))
                .toList();
    }

    /** A box of a form and its label. */
    record Box(String name, String label) {}
}
