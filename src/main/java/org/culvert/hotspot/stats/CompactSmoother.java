package org.culvert.hotspot.stats;

/** Smooths by adding up sparse rows of a kernel that ends at its reach: only what an event reaches is touched. */
final class CompactSmoother implements Smoother {
    private final Responses rows;

    CompactSmoother(Responses rows) {
        this.rows = rows;
    }

    @Override
    public Responses responses() {
        return rows;
    }

    @Override
    public NullModel.Moments moments(NullModel chance) {
        return chance.moments();
    }

    @Override
    public int atOnce() {
        return 1;
    }

    @Override
    public Brush newBrush() {
        return new Adding();
    }

    private final class Adding implements Brush {
        private final double[] density = new double[rows.pieces().count()];
        private final int[] touched = new int[density.length];
        private int count;

        @Override
        public void smooth(int[]... sets) {
            for (int i = 0; i < count; i++) {
                density[touched[i]] = 0;
            }
            count = 0;
            for (int row : sets[0]) {
                count = rows.addTo(row, density, touched, count);
            }
        }

        @Override
        public double[] density(int set) {
            return density;
        }

        @Override
        public int touchedCount(int set) {
            return count;
        }

        @Override
        public int[] touched(int set) {
            return touched;
        }
    }
}
