package org.tallywright.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;

/**
 * Turns the scenario's day offsets into dates around today. Offset 0 of the scenario is a Wednesday; weekdays are kept
 * by counting working days: as many as lie between the offset and 0 there are stepped back (or on) from today, or from
 * the Friday before when today is a weekend. A Saturday of the scenario counts as the Friday before it.
 */
final class DemoCalendar {
    private static final int WEDNESDAY = 2;

    private final LocalDate base;

    DemoCalendar(LocalDate today) {
        LocalDate day = today;
        while (isWeekend(day)) {
            day = day.minusDays(1);
        }
        this.base = day;
    }

    LocalDate date(int offset) {
        int step = offset < 0 ? -1 : 1;
        int workingDays = workingDaysToZero(offset, step);
        LocalDate day = base;
        while (workingDays > 0) {
            day = day.plusDays(step);
            if (!isWeekend(day)) {
                workingDays--;
            }
        }
        return day;
    }

    LocalDate date(String offset) {
        return date(Integer.parseInt(offset));
    }

    private static int workingDaysToZero(int offset, int step) {
        int count = 0;
        for (int day = 0; day != offset; day += step) {
            int weekday = Math.floorMod(WEDNESDAY + (offset < 0 ? day : day + 1), 7);
            if (weekday < 5) {
                count++;
            }
        }
        return count;
    }

    private static boolean isWeekend(LocalDate day) {
        return day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
    }
}
