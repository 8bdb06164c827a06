package org.tallywright.calibration.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.calibration.PastColumn;
import org.tallywright.calibration.PastFile;
import org.tallywright.calibration.PastImport;
import org.tallywright.calibration.PastReading;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Brings in past work from a file: shown first, kept when confirmed, taken out again by one button. */
@Controller
@RequestMapping("/rates/import")
@Access(Role.OWNER)
class PastController {
    private static final int SHOWN = 20;
    private static final int MOST_CHARACTERS = 600_000;

    private final PastImport past;
    private final ShopClock clock;

    PastController(PastImport past, ShopClock clock) {
        this.past = past;
        this.clock = clock;
    }

    /** As typed. {@code text} goes along from page to page, so nothing is kept before it is confirmed. */
    record Form(UUID id, String fileName, String text) {}

    record BatchRow(PastImport.Batch batch, String day) {}

    /** One column to be chosen: its field, and which heading is taken, -1 for none. */
    record Choice(String field, String key, boolean needed, String value) {}

    record Row(PastReading.PastTask task, String estimated, String actual) {}

    @GetMapping
    String blank(Model model) {
        return page(new Form(Ids.next(), "", ""), FormErrors.none(), model);
    }

    @PostMapping("/preview")
    String preview(
            @RequestParam UUID id,
            @RequestParam(defaultValue = "") String fileName,
            @RequestParam(defaultValue = "") String text,
            @RequestParam(required = false) @Nullable MultipartFile file,
            HttpServletRequest request,
            Model model,
            HttpServletResponse response)
            throws IOException {
        Form form = file == null || file.isEmpty()
                ? new Form(id, fileName.isBlank() ? "pasted rows" : fileName, text)
                : new Form(id, name(file), new String(file.getBytes(), StandardCharsets.UTF_8));
        return preview(form, FormErrors.none(), request, model, response);
    }

    private String preview(
            Form form, FormErrors errors, HttpServletRequest request, Model model, HttpServletResponse response) {
        try {
            if (form.text().length() > MOST_CHARACTERS) {
                // The preview's own form sends the text back once more, in a form of at most 2 MB.
                throw new Refused(
                        "Bring in at most 600,000 characters at once; split the file and bring in its parts.");
            }
            PastFile file = PastFile.of(form.text());
            Map<PastColumn, Integer> columns = columns(file, request);
            PastReading reading = past.read(file, columns);
            model.addAttribute("file", file);
            model.addAttribute("headings", headings(file));
            model.addAttribute("choices", choices(columns));
            model.addAttribute("reading", reading);
            model.addAttribute(
                    "rows",
                    reading.tasks().stream()
                            .limit(SHOWN)
                            .map(PastController::row)
                            .toList());
        } catch (Refused refused) {
            response.setStatus(422);
            errors.put("text", refused.sentence());
        }
        return page(form, errors, model);
    }

    @PostMapping
    String bringIn(
            @RequestParam UUID id,
            @RequestParam(defaultValue = "pasted rows") String fileName,
            @RequestParam(defaultValue = "") String text,
            SignedIn me,
            HttpServletRequest request,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Form form = new Form(id, fileName, text);
        FormErrors errors = FormErrors.none();
        try {
            PastFile file = PastFile.of(text);
            PastReading reading = past.read(file, columns(file, request));
            past.bringIn(id, fileName, reading, me.personId());
            Flash.done(redirect, reading.tasks().size() + " tasks brought in. The rates are being worked out anew.");
            return "redirect:/rates/import";
        } catch (Refused refused) {
            response.setStatus(422);
            errors.put("", refused.sentence());
        }
        return preview(form, errors, request, model, response);
    }

    @PostMapping("/{id}/undo")
    String undo(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        past.undo(id, me.personId());
        Flash.done(redirect, "Taken out again. The rates are being worked out without it.");
        return "redirect:/rates/import";
    }

    private String page(Form form, FormErrors errors, Model model) {
        List<BatchRow> batches = new ArrayList<>();
        past.batches()
                .forEach(batch -> batches.add(
                        new BatchRow(batch, RecordWords.MOMENT.format(batch.at().atZone(clock.zone())))));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("batches", batches);
        return "calibration/import";
    }

    private static String name(MultipartFile file) {
        String name = file.getOriginalFilename();
        String plain = name == null || name.isBlank() ? "a file" : name.replaceAll("[\\p{Cntrl}]", " ");
        return plain.length() > 120 ? plain.substring(plain.length() - 120) : plain;
    }

    /** What was chosen on the page, else what the headings say. */
    private static Map<PastColumn, Integer> columns(PastFile file, HttpServletRequest request) {
        Map<PastColumn, Integer> columns = new EnumMap<>(PastImport.guess(file));
        for (PastColumn column : PastColumn.values()) {
            String chosen = request.getParameter("column-" + column.key());
            if (chosen != null && chosen.matches("-1|\\d{1,3}")) {
                columns.put(column, Integer.parseInt(chosen));
            }
        }
        return columns;
    }

    private static Map<String, String> headings(PastFile file) {
        Map<String, String> options = new LinkedHashMap<>();
        options.put("-1", "not in the file");
        for (int i = 0; i < file.headings().size(); i++) {
            options.put(
                    "" + i,
                    file.headings().get(i).isEmpty()
                            ? "column " + (i + 1)
                            : file.headings().get(i));
        }
        return options;
    }

    private static List<Choice> choices(Map<PastColumn, Integer> columns) {
        List<Choice> choices = new ArrayList<>();
        columns.forEach((column, at) -> choices.add(
                new Choice("column-" + column.key(), "import.column." + column.key(), column.needed(), "" + at)));
        return choices;
    }

    private static Row row(PastReading.PastTask task) {
        Integer estimated = task.estimatedMinutes();
        return new Row(
                task,
                estimated == null ? "" : Hours.ofMinutes(estimated).toString(),
                Hours.ofMinutes(task.actualMinutes()).toString());
    }
}
