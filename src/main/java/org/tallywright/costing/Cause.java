package org.tallywright.costing;

/** Where cost left its plan. The order is that of the page. */
public enum Cause {
    /** More or less work than estimated: (hours the done quantity should take - planned hours) x planned rate. */
    QUANTITY,
    /** It took longer: (hours in rate classes - hours the done quantity should take) x planned rate. */
    EFFICIENCY,
    /** Rework, call-backs and standby on planned tasks, at the planned rate. */
    REWORK,
    /** An hour cost more: labour - hours x planned rate, on planned tasks. */
    RATE,
    /** Hours on no estimate line, at what they cost. */
    LOOSE_HOURS,
    /** Tasks that are not finished: labour so far - planned labour. */
    OPEN_TASKS,
    /** Overhead so far - planned overhead. */
    OVERHEAD,
    /** More or less in the work than estimated: (purchase the net should take - planned purchase) x planned price. */
    MATERIAL_QUANTITY,
    /** Wasted or saved: (charged - purchase the net should take) x planned price. */
    MATERIAL_YIELD,
    /** (Charged - planned purchase) x planned price where nobody said what is in the work. */
    MATERIAL_USAGE,
    /** Dearer: cost - charged x planned price - planned freight; freight and credits fall in here. */
    MATERIAL_PRICE,
    /** Material on no estimate line, at what it cost. */
    LOOSE_MATERIAL,
    /** Material of a running job: (charged so far - planned purchase) x planned price. */
    OPEN_MATERIAL,
    /** Delivery, disposal and the like: spent - planned. */
    OTHER,
    /** Less what the bid held for hours and material that no line of it names: labour and material of its sums - of its lines. */
    BEYOND_LINES,
    /** Cents of rounding. */
    ROUNDING
}
