package org.tallywright.bench;

import java.io.IOException;

/** One measurement that can be run by its name. */
public interface Benchmark {

    /** Its name on the command line and of its output file. */
    String name();

    /** One line for the list. */
    String purpose();

    /** Measures and returns the figures to be written. */
    Figures run(BenchInput input) throws IOException;
}
