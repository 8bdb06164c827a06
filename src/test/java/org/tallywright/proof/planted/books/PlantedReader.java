package org.tallywright.proof.planted.books;

import org.tallywright.proof.planted.jobs.PlantedRows;

/** Another module that reaches for the rows. */
public record PlantedReader(PlantedRows rows) {}
