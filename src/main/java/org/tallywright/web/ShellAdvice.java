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
            return new Shell(shop.shopName(), null, null, "", List.of(), List.of());
        }
        return new Shell(
                shop.shopName(),
                me.name(),
                me.personId().toString(),
                me.role().code(),
                near(me.role()),
                more(me.role()));
    }

    static List<NavItem> near(Role role) {
        if (role == Role.BOOKKEEPER) {
            return List.of(item("books", "/books"), item("hours", "/hours"), item("crew", "/crew"));
        }
        List<NavItem> nav = new ArrayList<>();
        nav.add(item("today", "/"));
        nav.add(item("jobs", "/jobs"));
        if (role != Role.HELPER) {
            nav.add(item("materials", "/materials"));
        } else {
            nav.add(item("hours", "/hours"));
        }
        return nav;
    }

    static List<NavItem> more(Role role) {
        List<NavItem> more = new ArrayList<>();
        if (role == Role.OWNER || role == Role.LEAD) {
            more.add(item("hours", "/hours"));
            more.add(item("clients", "/clients"));
            more.add(item("catalog", "/catalog"));
            more.add(item("rates", "/rates"));
        }
        if (role == Role.OWNER) {
            more.add(item("crew", "/crew"));
            more.add(item("books", "/books"));
            more.add(item("shop", "/shop"));
        }
        more.add(item("account", "/account"));
        return more;
    }

    private static NavItem item(String key, String href) {
        return new NavItem(key, "web.place." + key, href);
    }
}
