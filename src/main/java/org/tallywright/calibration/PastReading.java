package org.tallywright.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;

/**
 * A file of past work, read: what would be brought in, and every refusal by row and column.
 *
 * @param unknownPeople names that nobody in the shop has; their rows count without a person
 */
public record PastReading(List<PastTask> tasks, List<CellError> errors, Set<String> unknownPeople) {

    /** @param line as counted in the file, the headings being line 1 */
    public record PastTask(
            int line,
            String job,
            UUID kind,
            String kindName,
            BigDecimal quantity,
            @Nullable Integer estimatedMinutes,
            int actualMinutes,
            @Nullable LocalDate startedOn,
            LocalDate doneOn,
            @Nullable UUID person) {}

    public record CellError(int line, String column, String what) {}

    /** What names in a file are looked up in. */
    record Known(Map<String, TaskKindCard> kinds, Map<String, UUID> people, Set<String> jobNumbers, LocalDate today) {}

    static PastReading of(PastFile file, Map<PastColumn, Integer> columns, Known known) {
        Reader reader = new Reader(file, columns, known);
        reader.read();
        return new PastReading(List.copyOf(reader.tasks), List.copyOf(reader.errors), reader.unknown);
    }

    private static final class Reader {
        private static final List<DateTimeFormatter> DATES = List.of(
                DateTimeFormatter.ofPattern("uuuu-M-d", Locale.ENGLISH).withResolverStyle(ResolverStyle.STRICT),
                DateTimeFormatter.ofPattern("d.M.uuuu", Locale.ENGLISH).withResolverStyle(ResolverStyle.STRICT),
                DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH).withResolverStyle(ResolverStyle.STRICT));
        private static final LocalDate OLDEST = LocalDate.of(1970, 1, 1);

        private final PastFile file;
        private final Map<PastColumn, Integer> columns;
        private final Known known;
        private final List<PastTask> tasks = new ArrayList<>();
        private final List<CellError> errors = new ArrayList<>();
        private final Set<String> unknown = new java.util.TreeSet<>();
        private List<String> row = List.of();
        private int line;

        Reader(PastFile file, Map<PastColumn, Integer> columns, Known known) {
            this.file = file;
            this.columns = new EnumMap<>(columns);
            this.known = known;
        }

        void read() {
            for (int i = 0; i < file.rows().size(); i++) {
                row = file.rows().get(i);
                line = i + 2;
                readRow();
            }
        }

        private void readRow() {
            String job = cell(PastColumn.JOB, this::job);
            TaskKindCard kind = cell(PastColumn.KIND, this::kind);
            BigDecimal quantity = optional(
                    PastColumn.QUANTITY, text -> above(Quantity.of(text).amount()));
            Integer estimated = optional(PastColumn.ESTIMATED, this::minutes);
            Integer actual = cell(PastColumn.ACTUAL, this::minutes);
            LocalDate started = optional(PastColumn.STARTED, this::date);
            LocalDate done = cell(PastColumn.DONE, this::date);
            if (started != null && done != null && started.isAfter(done)) {
                refuse(PastColumn.STARTED, "It starts after it was done.");
            }
            if (quantity == null
                    && estimated == null
                    && text(PastColumn.QUANTITY).isEmpty()
                    && text(PastColumn.ESTIMATED).isEmpty()) {
                refuse(PastColumn.QUANTITY, "A quantity or estimated hours are needed, to compare the hours with.");
            }
            UUID person = person();
            if (job == null || kind == null || actual == null || done == null) {
                return;
            }
            if (quantity != null || estimated != null) {
                BigDecimal amount = quantity == null ? instead(kind, estimated) : quantity;
                tasks.add(new PastTask(
                        line, job, kind.id(), kind.name(), amount, estimated, actual, started, done, person));
            }
        }

        /** Estimated hours / the starting rate: as many units as those hours stand for. */
        private static BigDecimal instead(TaskKindCard kind, @Nullable Integer minutes) {
            BigDecimal hours = BigDecimal.valueOf(minutes == null ? 0 : minutes)
                    .divide(BigDecimal.valueOf(60), MathContext.DECIMAL64);
            return hours.divide(kind.unitHours().amount(), 4, java.math.RoundingMode.HALF_UP)
                    .max(new BigDecimal("0.0001"));
        }

        private String job(String text) {
            String name = Typed.requiredLine(text, 80);
            if (known.jobNumbers().contains(name)) {
                throw new Refused("Job " + name + " is kept here already; its hours would count twice.");
            }
            return name;
        }

        private TaskKindCard kind(String text) {
            TaskKindCard kind = known.kinds().get(text.toLowerCase(Locale.ROOT));
            if (kind == null) {
                throw new Refused(
                        "\"" + shown(text) + "\" is no task kind of the catalogue. Add it there, or write its name.");
            }
            return kind;
        }

        private int minutes(String text) {
            int minutes = Hours.parseTotal(text).minutes();
            if (minutes <= 0) {
                throw new Refused("Hours above nothing are needed; a blank is not zero hours.");
            }
            return minutes;
        }

        private static BigDecimal above(BigDecimal amount) {
            if (amount.setScale(4, java.math.RoundingMode.HALF_UP).signum() <= 0) {
                throw new Refused("A quantity above nothing is needed.");
            }
            return amount.setScale(4, java.math.RoundingMode.HALF_UP);
        }

        private LocalDate date(String text) {
            for (DateTimeFormatter format : DATES) {
                try {
                    LocalDate date = LocalDate.parse(text, format);
                    if (date.isAfter(known.today()) || date.isBefore(OLDEST)) {
                        throw new Refused("This day is not in the past.");
                    }
                    return date;
                } catch (DateTimeParseException e) {
                    // The next form is tried.
                }
            }
            throw new Refused(
                    "\"" + shown(text) + "\" is no date; write it like 2026-03-14, 14.3.2026 or 14 Mar 2026.");
        }

        private @Nullable UUID person() {
            String name = text(PastColumn.PERSON);
            UUID person = known.people().get(name.toLowerCase(Locale.ROOT));
            if (person == null && !name.isEmpty()) {
                unknown.add(shown(name));
            }
            return person;
        }

        private String text(PastColumn column) {
            int at = columns.getOrDefault(column, -1);
            return at < 0 || at >= row.size() ? "" : row.get(at).strip();
        }

        private <T> @Nullable T optional(PastColumn column, Function<String, T> read) {
            return text(column).isEmpty() ? null : cell(column, read);
        }

        private <T> @Nullable T cell(PastColumn column, Function<String, T> read) {
            String text = text(column);
            try {
                if (text.isEmpty()) {
                    throw new Refused("This is empty.");
                }
                return read.apply(text);
            } catch (NotUnderstood e) {
                refuse(column, e.sentence());
            } catch (Refused e) {
                refuse(column, e.sentence());
            }
            return null;
        }

        private void refuse(PastColumn column, String what) {
            int at = columns.getOrDefault(column, -1);
            String heading = at < 0 || at >= file.headings().size()
                    ? column.key()
                    : file.headings().get(at);
            errors.add(new CellError(line, heading, what));
        }

        private static String shown(String text) {
            return text.length() > 40 ? text.substring(0, 40) + "…" : text;
        }
    }
}
