package org.tallywright.catalog;

import java.time.LocalDate;
import org.tallywright.shared.UnitPrice;

/** The price of one unit of a material from a day on, until the next one. */
public record MaterialPrice(LocalDate from, UnitPrice price, String basis) {}
