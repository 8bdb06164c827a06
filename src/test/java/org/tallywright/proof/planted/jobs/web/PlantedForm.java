package org.tallywright.proof.planted.jobs.web;

/** A tool of a page, for the rule that the domain does not know its pages. */
public record PlantedForm(String title) {}
