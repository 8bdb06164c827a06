/** Benchmarks, each run by name: {@code mvn -q -Pbench verify -Dbench=NAME}. */
@NullMarked
package org.tallywright.bench;

import org.jspecify.annotations.NullMarked;
