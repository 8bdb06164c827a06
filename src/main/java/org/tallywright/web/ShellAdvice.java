package org.tallywright.web;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** Gives every page its frame: the shop's name, the reader and the places he may go to. */
@ControllerAdvice
class ShellAdvice {
    private final ShopFace shop;

    ShellAdvice(ShopFace shop) {
        this.shop = shop;
    }

    @ModelAttribute("shell")
    Shell shell(@Nullable SignedIn me) {
        if (me == null) {
            return new Shell(shop.shopName(), null, "", List.of(), List.of());
        }
        return new Shell(shop.shopName(), me.name(), me.role().code(), near(me.role()), more(me.role()));
    }

    static List<NavItem> near(Role role) {
        if (role == Role.BOOKKEEPER) {
            return List.of(
                    item("books", "Books", "/books"), item("hours", "Hours", "/hours"), item("crew", "Crew", "/crew"));
        }
        List<NavItem> nav = new ArrayList<>();
        nav.add(item("today", "Today", "/"));
        nav.add(item("jobs", "Jobs", "/jobs"));
        if (role != Role.HELPER) {
            nav.add(item("materials", "Materials", "/materials"));
        } else {
            nav.add(item("hours", "Hours", "/hours"));
        }
        return nav;
    }

    static List<NavItem> more(Role role) {
        List<NavItem> more = new ArrayList<>();
        if (role == Role.OWNER || role == Role.LEAD) {
            more.add(item("hours", "Hours", "/hours"));
            more.add(item("clients", "Clients", "/clients"));
            more.add(item("catalog", "Catalogue", "/catalog"));
            more.add(item("rates", "Rates", "/rates"));
        }
        if (role == Role.OWNER) {
            more.add(item("crew", "Crew", "/crew"));
            more.add(item("books", "Books", "/books"));
            more.add(item("shop", "Shop", "/shop"));
        }
        more.add(item("account", "My account", "/account"));
        return more;
    }

    private static NavItem item(String key, String label, String href) {
        return new NavItem(key, label, href);
    }
}
