package swapworth.statistics;

/** The triangular factor of a symmetric positive definite matrix A of p columns, and what it answers. */
sealed interface Factor permits Cholesky, BorderedFactor {
    /** The factor of a matrix that is held with a border, which is left as it is. */
    static Factor of(double[] matrix, Border border) {
        return border.isNone() ? Cholesky.of(matrix, border.columns()) : BorderedFactor.of(matrix, border);
    }

    /** 1 - R^2 of the most dependent column on those before it; not above 0 where the matrix is singular to working precision. */
    double smallestPivot();

    /** The solution of A x = r. */
    double[] solve(double[] right);

    /** For independent standard normal z a draw with the inverse matrix as covariance. */
    double[] backSolve(double[] z);

    double logDeterminant();

    /** The inverse at the places that rows ask for: wherever a matrix with the same border is held. Its room is lent. */
    Covariance inverseWhereHeld(Room room);

    /** The inverse, of which every entry can be asked for. */
    Covariance inverse();
}
