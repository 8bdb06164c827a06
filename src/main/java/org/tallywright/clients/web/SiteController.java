package org.tallywright.clients.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.clients.ClientBook;
import org.tallywright.clients.ClientDesk;
import org.tallywright.clients.SaveSite;
import org.tallywright.clients.SiteCard;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;

/** The form of a client's site. */
@Controller
@RequestMapping("/clients/{clientId}/sites")
@Access({Role.OWNER, Role.LEAD})
class SiteController {
    private final ClientBook book;
    private final ClientDesk desk;

    SiteController(ClientBook book, ClientDesk desk) {
        this.book = book;
        this.desk = desk;
    }

    @GetMapping("/new")
    String blank(@PathVariable UUID clientId, Model model) {
        return form(clientId, SiteForm.blank(Ids.next()), null, FormErrors.none(), model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable UUID clientId, @PathVariable UUID id, Model model) {
        SiteCard site = site(clientId, id);
        return form(clientId, SiteForm.of(site), site, FormErrors.none(), model);
    }

    @PostMapping
    String create(
            @PathVariable UUID clientId,
            SiteForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return save(clientId, form.id() == null ? Ids.next() : form.id(), null, form, model, response, redirect);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable UUID clientId,
            @PathVariable UUID id,
            SiteForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return save(clientId, id, site(clientId, id), form, model, response, redirect);
    }

    private String save(
            UUID clientId,
            UUID id,
            @Nullable SiteCard kept,
            SiteForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        SaveSite save = form.read(id, clientId, read);
        if (save == null) {
            response.setStatus(422);
            return form(clientId, form, kept, read.errors(), model);
        }
        desk.save(save);
        Flash.done(redirect, "Saved.");
        return "redirect:/clients/" + clientId;
    }

    private SiteCard site(UUID clientId, UUID id) {
        return book.site(id).filter(site -> site.clientId().equals(clientId)).orElseThrow(() -> new NotHere("site"));
    }

    private String form(UUID clientId, SiteForm form, @Nullable SiteCard kept, FormErrors errors, Model model) {
        model.addAttribute("client", book.card(clientId));
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        return "clients/site-form";
    }
}
