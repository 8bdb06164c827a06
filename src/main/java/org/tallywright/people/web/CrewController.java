package org.tallywright.people.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.tallywright.people.Crew;
import org.tallywright.people.CrewList;
import org.tallywright.people.Wages;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The crew: people, roles, pay and ways to sign in. The bookkeeper reads, the owner changes. */
@Controller
@RequestMapping("/crew")
@Access(Role.OWNER)
class CrewController {
    private final Crew crew;
    private final CrewList list;
    private final Wages wages;
    private final ShopClock clock;

    CrewController(Crew crew, CrewList list, Wages wages, ShopClock clock) {
        this.crew = crew;
        this.list = list;
        this.wages = wages;
        this.clock = clock;
    }

    @GetMapping
    @Access({Role.OWNER, Role.BOOKKEEPER})
    String index(Model model, SignedIn me) {
        model.addAttribute("members", list.all(clock.today()));
        model.addAttribute("edits", me.is(Role.OWNER));
        return "people/index";
    }

    @GetMapping("/new")
    String blank(Model model) {
        return form(new MemberForm(Ids.next(), null, "", Role.HELPER.code(), "true"), FormErrors.none(), model);
    }

    @PostMapping
    String create(
            MemberForm form, SignedIn me, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        FormReader read = new FormReader();
        Role role = read.field("role", () -> role(form.role()));
        if (form.id() == null) {
            read.refuse("", "The form did not arrive whole; open it again and retype it.");
        } else if (role != null) {
            try {
                crew.takeIn(form.id(), form.typedName(), role, me);
                Flash.done(redirect, form.typedName() + " is in the crew. Make a link so that they can sign in.");
                return "redirect:/crew/" + form.id();
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return form(form, read.errors(), model);
    }

    @GetMapping("/{id}")
    @Access({Role.OWNER, Role.BOOKKEEPER})
    String show(@PathVariable UUID id, Model model, SignedIn me) {
        return member(id, null, WageForm.blank(Ids.next(), clock.today().toString()), FormErrors.none(), model, me);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable UUID id,
            MemberForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        Role role = read.field("role", () -> role(form.role()));
        if (role != null) {
            try {
                int version = form.version() == null ? -1 : form.version();
                crew.change(id, version, form.typedName(), role, "true".equals(form.active()), me);
                Flash.done(redirect, "Saved.");
                return "redirect:/crew/" + id;
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return member(id, form, WageForm.blank(Ids.next(), clock.today().toString()), read.errors(), model, me);
    }

    @PostMapping("/{id}/wages")
    String createWage(
            @PathVariable UUID id,
            WageForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        WageTyped typed = WageTyped.read(form, read);
        if (typed == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return member(id, null, form, read.errors(), model, me);
        }
        try {
            UUID wage = form.id() == null ? Ids.next() : form.id();
            crew.pay(wage, id, typed.from(), typed.wage(), typed.burden(), form.corrects(), me);
        } catch (Refused refused) {
            read.refuse(refused);
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return member(id, null, form.correcting(figures(id, typed.from())), read.errors(), model, me);
        }
        Flash.done(redirect, "Pay saved.");
        return "redirect:/crew/" + id;
    }

    private @Nullable String figures(UUID person, LocalDate from) {
        return wages.of(person).stream()
                .filter(row -> row.fromDate().equals(from))
                .map(Wages.Row::figures)
                .findFirst()
                .orElse(null);
    }

    @PostMapping("/{id}/wages/{wage}/removal")
    String destroyWage(@PathVariable UUID id, @PathVariable UUID wage, SignedIn me, RedirectAttributes redirect) {
        crew.removePay(id, wage, me);
        Flash.done(redirect, "Pay removed.");
        return "redirect:/crew/" + id;
    }

    /** The link is in this answer and nowhere else. */
    @PostMapping("/{id}/invitations")
    String createInvitation(@PathVariable UUID id, SignedIn me, Model model, HttpServletRequest request) {
        String token = crew.invite(id, me);
        model.addAttribute(
                "link",
                ServletUriComponentsBuilder.fromContextPath(request)
                        .path("/invitations/{token}")
                        .buildAndExpand(token)
                        .toUriString());
        return member(id, null, WageForm.blank(Ids.next(), clock.today().toString()), FormErrors.none(), model, me);
    }

    @PostMapping("/{id}/sessions/ending")
    String endSessions(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        crew.signOutEverywhere(id, me);
        Flash.done(redirect, "Signed out on every device.");
        return "redirect:/crew/" + id;
    }

    private String member(
            UUID id, @Nullable MemberForm form, WageForm wage, FormErrors errors, Model model, SignedIn me) {
        CrewList.Member member = list.one(id, clock.today()).orElseThrow(() -> new NotHere("person"));
        model.addAttribute("member", member);
        model.addAttribute(
                "form",
                form != null
                        ? form
                        : new MemberForm(
                                id, member.version(), member.name(), member.role(), String.valueOf(member.active())));
        model.addAttribute("wage", wage);
        model.addAttribute("wages", wages.of(id));
        model.addAttribute("errors", errors);
        model.addAttribute("roles", roles());
        model.addAttribute("edits", me.is(Role.OWNER));
        return "people/show";
    }

    private static String form(MemberForm form, FormErrors errors, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("roles", roles());
        return "people/blank";
    }

    private static Role role(@Nullable String typed) {
        try {
            return Role.of(typed == null ? "" : typed);
        } catch (IllegalArgumentException unknown) {
            throw new Refused("role", "Choose a role from the list.");
        }
    }

    private static Map<String, String> roles() {
        Map<String, String> roles = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            roles.put(role.code(), role.label());
        }
        return roles;
    }
}
