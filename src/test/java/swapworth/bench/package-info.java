/**
 * Measurements that run by hand: warm speed ({@link swapworth.bench.JudgeBenchmark}) and closeness to real listings
 * ({@link swapworth.bench.AccuracyBench}). What they reckon with is tested; what they find is not.
 */
@NullMarked
package swapworth.bench;

import org.jspecify.annotations.NullMarked;
