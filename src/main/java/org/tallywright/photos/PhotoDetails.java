package org.tallywright.photos;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a person says of a photo.
 *
 * @param caption one line, up to 200 characters, may be empty
 * @param forClient whether the client sees it by his link
 */
public record PhotoDetails(String caption, @Nullable UUID pieceId, boolean forClient) {}
