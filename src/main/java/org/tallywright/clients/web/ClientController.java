package org.tallywright.clients.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.clients.ClientBook;
import org.tallywright.clients.ClientCard;
import org.tallywright.clients.ClientDesk;
import org.tallywright.clients.SaveClient;
import org.tallywright.shared.Ids;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.Search;

/** The clients, one of them with the sites, and the form. */
@Controller
@RequestMapping("/clients")
@Access({Role.OWNER, Role.LEAD})
class ClientController {
    private static final int PAGE = 50;

    private final ClientBook book;
    private final ClientDesk desk;

    ClientController(ClientBook book, ClientDesk desk) {
        this.book = book;
        this.desk = desk;
    }

    @GetMapping
    String index(
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "1") String page,
            Model model,
            HttpServletResponse response) {
        Search search = Search.of(q, response);
        List<ClientCard> found = search.words().isEmpty() ? book.all() : book.search(search.words());
        int pages = Math.max(1, (found.size() + PAGE - 1) / PAGE);
        int number = page.matches("[1-9]\\d{0,5}") ? Math.min(pages, Integer.parseInt(page)) : 1;
        List<ClientCard> shown = found.subList((number - 1) * PAGE, Math.min(found.size(), number * PAGE));
        model.addAttribute("clients", shown);
        model.addAttribute(
                "addresses", book.addresses(shown.stream().map(ClientCard::id).toList()));
        model.addAttribute("number", number);
        model.addAttribute("pages", pages);
        model.addAttribute("q", search.typed());
        model.addAttribute("search", search);
        return "clients/index";
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, Model model) {
        model.addAttribute("client", book.card(id));
        model.addAttribute("sites", book.sitesOf(id));
        return "clients/show";
    }

    @GetMapping("/new")
    String blank(Model model) {
        return form(ClientForm.blank(Ids.next()), null, FormErrors.none(), model);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        ClientCard client = book.card(id);
        return form(ClientForm.of(client), client, FormErrors.none(), model);
    }

    @PostMapping
    String create(ClientForm form, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        return save(form.id() == null ? Ids.next() : form.id(), null, form, model, response, redirect);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable UUID id,
            ClientForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return save(id, book.card(id), form, model, response, redirect);
    }

    private String save(
            UUID id,
            @Nullable ClientCard kept,
            ClientForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        SaveClient save = form.read(id, read);
        if (save == null) {
            response.setStatus(422);
            return form(form, kept, read.errors(), model);
        }
        desk.save(save);
        Flash.done(redirect, "Saved.");
        return "redirect:/clients/" + id;
    }

    private static String form(ClientForm form, @Nullable ClientCard kept, FormErrors errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("errors", errors);
        return "clients/form";
    }
}
