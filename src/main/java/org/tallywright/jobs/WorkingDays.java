package org.tallywright.jobs;

import java.time.DayOfWeek;
import java.time.LocalDate;

/** Days from Monday to Friday; holidays are the shop's own to see. */
final class WorkingDays {
    private WorkingDays() {}

    /** So many working days after a day. From a Saturday or Sunday the first is the Monday. */
    static LocalDate after(LocalDate day, int days) {
        LocalDate at = day;
        for (int left = days; left > 0; ) {
            at = at.plusDays(1);
            if (at.getDayOfWeek() != DayOfWeek.SATURDAY && at.getDayOfWeek() != DayOfWeek.SUNDAY) {
                left--;
            }
        }
        return at;
    }
}
