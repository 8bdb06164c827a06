package org.tallywright.clients;

import java.util.UUID;

/** A client as kept; empty where nothing is known. */
public record ClientCard(UUID id, String name, String phone, String email, String note, int version) {}
