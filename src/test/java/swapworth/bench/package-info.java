/** Measurements of warm speed; they are no tests and run by hand. Start with {@link swapworth.bench.JudgeBenchmark}. */
@NullMarked
package swapworth.bench;

import org.jspecify.annotations.NullMarked;
