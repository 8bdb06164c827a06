package org.tallywright.web.stick;

/**
 * Passive time that follows the work of a stage. It takes days, not hours of work, so it hangs from the stage's end mark
 * and has no length of its own.
 *
 * @param afterStage index of the stage, from 0
 * @param text what is waited for and until when, as in "glue cure until Thu 09:00"
 */
public record StickWait(int afterStage, String text) {}
