package org.tallywright.photos.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.tallywright.jobs.JobHeads;
import org.tallywright.photos.PhotoRows;
import org.tallywright.photos.PhotoWords;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Puts the pages of a job's photos together. */
@Component
class PhotoPages {
    private static final int ON_A_PAGE = 60;

    private final JobHeads heads;
    private final PhotoRows rows;
    private final PhotoWords words;
    private final JdbcClient jdbc;

    PhotoPages(JobHeads heads, PhotoRows rows, PhotoWords words, JdbcClient jdbc) {
        this.heads = heads;
        this.rows = rows;
        this.words = words;
        this.jdbc = jdbc;
    }

    /** @param mine whether this reader may change it */
    record Shown(PhotoWords.Print print, boolean mine) {}

    String sheet(String number, PhotoForm form, FormErrors errors, int page, SignedIn me, Model model) {
        var head = heads.find(number, me, "photos");
        UUID job = head.job().id();
        int count = rows.count(job);
        int pages = Math.max(1, (count + ON_A_PAGE - 1) / ON_A_PAGE);
        int now = Math.min(Math.max(1, page), pages);
        List<Shown> shown = rows.of(job, ON_A_PAGE, (now - 1) * ON_A_PAGE).stream()
                .map(row -> shown(row, me))
                .toList();
        model.addAttribute("head", head);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("pieces", pieces(job));
        model.addAttribute("photos", shown);
        model.addAttribute("number", now);
        model.addAttribute("pages", pages);
        model.addAttribute("open", !head.job().isClosed());
        model.addAttribute("owner", me.is(Role.OWNER));
        return "photos/index";
    }

    String edit(String number, PhotoForm form, UUID photo, FormErrors errors, SignedIn me, Model model) {
        var head = heads.find(number, me, "photos");
        model.addAttribute("head", head);
        model.addAttribute("form", form);
        model.addAttribute("photo", photo);
        model.addAttribute("errors", errors);
        model.addAttribute("pieces", pieces(head.job().id()));
        model.addAttribute("owner", me.is(Role.OWNER));
        return "photos/edit";
    }

    private Shown shown(PhotoRows.Row row, SignedIn me) {
        return new Shown(words.print(row), !me.is(Role.HELPER) || row.personId().equals(me.personId()));
    }

    /** The pieces of a job to pick from, by id. */
    Map<String, String> pieces(UUID job) {
        Map<String, String> options = new LinkedHashMap<>();
        jdbc.sql("select id, name from piece where job_id = ? order by position, id")
                .param(job)
                .query(row -> {
                    options.put(row.getString(1), row.getString(2));
                });
        return options;
    }
}
