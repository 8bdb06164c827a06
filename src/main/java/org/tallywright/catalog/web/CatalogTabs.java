package org.tallywright.catalog.web;

import java.util.List;
import org.tallywright.web.NavItem;

/** The parts of the catalogue. */
final class CatalogTabs {
    static final String TASK_KINDS = "task-kinds";
    static final String PIECE_KINDS = "piece-kinds";
    static final String STAGES = "stages";
    static final String MATERIALS = "materials";

    private CatalogTabs() {}

    static List<NavItem> at(String current) {
        return List.of(
                tab(TASK_KINDS, "catalog.taskKinds", current),
                tab(PIECE_KINDS, "catalog.pieceKinds", current),
                tab(MATERIALS, "catalog.materials", current),
                tab(STAGES, "catalog.stages", current));
    }

    private static NavItem tab(String key, String label, String current) {
        return new NavItem(key, label, "/catalog/" + key, key.equals(current));
    }
}
