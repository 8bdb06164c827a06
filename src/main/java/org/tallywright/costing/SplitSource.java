package org.tallywright.costing;

/** What a part of the difference can be laid to. */
public sealed interface SplitSource permits TaskFigures, MaterialFigures {
    String name();
}
