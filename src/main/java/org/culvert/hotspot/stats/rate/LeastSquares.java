package org.culvert.hotspot.stats.rate;

/**
 * Weighted least squares by Householder reflections (G. H. Golub 1965, Numerische Mathematik 7, 206-216).
 *
 * <p>Finds {@code b} that makes {@code sum_i w_i (z_i - x_i b)^2} least. A column that the columns before it make up, to
 * one part in 10^9 of its length, is named by {@link #dependentColumn()} and nothing is solved.
 */
final class LeastSquares {
    private static final double DEPENDENT = 1e-9;

    private final int columns;
    private final double[][] r;
    private final double[] solution;
    private int dependent = -1;

    LeastSquares(double[][] covariates, double[] weights, double[] response) {
        int rows = covariates.length;
        this.columns = covariates[0].length;
        double[][] x = new double[columns][rows];
        double[] z = new double[rows];
        for (int row = 0; row < rows; row++) {
            double root = Math.sqrt(weights[row]);
            z[row] = root * response[row];
            for (int column = 0; column < columns; column++) {
                x[column][row] = root * covariates[row][column];
            }
        }
        this.r = new double[columns][columns];
        this.solution = new double[columns];
        reduce(x, z);
        if (dependent < 0) {
            substituteBack(z);
        }
    }

    /** Number of the first column that the columns before it make up, or -1. */
    int dependentColumn() {
        return dependent;
    }

    double[] solution() {
        return solution;
    }

    /** The inverse of {@code X'WX}. */
    double[][] inverse() {
        double[][] inverseOfR = new double[columns][columns];
        for (int column = 0; column < columns; column++) {
            inverseOfR[column][column] = 1 / r[column][column];
            for (int row = column - 1; row >= 0; row--) {
                double sum = 0;
                for (int k = row + 1; k <= column; k++) {
                    sum += r[row][k] * inverseOfR[k][column];
                }
                inverseOfR[row][column] = -sum / r[row][row];
            }
        }
        double[][] inverse = new double[columns][columns];
        for (int i = 0; i < columns; i++) {
            for (int j = 0; j < columns; j++) {
                for (int k = Math.max(i, j); k < columns; k++) {
                    inverse[i][j] += inverseOfR[i][k] * inverseOfR[j][k];
                }
            }
        }
        return inverse;
    }

    private void reduce(double[][] x, double[] z) {
        double[] whole = new double[columns];
        for (int column = 0; column < columns; column++) {
            whole[column] = length(x[column], 0);
        }
        for (int column = 0; column < columns; column++) {
            double left = column < z.length ? length(x[column], column) : 0;
            if (!(left > DEPENDENT * whole[column])) {
                dependent = column;
                return;
            }
            double diagonal = x[column][column] > 0 ? -left : left;
            x[column][column] -= diagonal;
            double scale = -diagonal * x[column][column];
            for (int other = column + 1; other < columns; other++) {
                reflect(x[column], x[other], column, scale);
                r[column][other] = x[other][column];
            }
            reflect(x[column], z, column, scale);
            r[column][column] = diagonal;
        }
    }

    private void substituteBack(double[] z) {
        for (int row = columns - 1; row >= 0; row--) {
            double sum = z[row];
            for (int k = row + 1; k < columns; k++) {
                sum -= r[row][k] * solution[k];
            }
            solution[row] = sum / r[row][row];
        }
    }

    private static void reflect(double[] mirror, double[] vector, int from, double scale) {
        double dot = 0;
        for (int i = from; i < vector.length; i++) {
            dot += mirror[i] * vector[i];
        }
        double factor = dot / scale;
        for (int i = from; i < vector.length; i++) {
            vector[i] -= factor * mirror[i];
        }
    }

    private static double length(double[] vector, int from) {
        double sum = 0;
        for (int i = from; i < vector.length; i++) {
            sum += vector[i] * vector[i];
        }
        return Math.sqrt(sum);
    }
}
