package org.tallywright.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the frame of a page needs to know: whose shop, who reads, and where the reader may go.
 *
 * @param personName null where nobody is signed in
 * @param personId by which what a phone keeps is told apart from what it keeps for others
 * @param role owner, lead, helper, bookkeeper, or empty where nobody is signed in
 * @param nav places always in sight, four at the most on a phone
 * @param more places behind "More"
 */
public record Shell(
        String shopName,
        @Nullable String personName,
        @Nullable String personId,
        String role,
        List<NavItem> nav,
        List<NavItem> more) {

    public Shell {
        nav = List.copyOf(nav);
        more = List.copyOf(more);
    }

    /** Whether the current place is one of those behind "More". */
    public boolean moreMarks(@Nullable String section) {
        return more.stream().anyMatch(item -> item.marks(section));
    }
}
