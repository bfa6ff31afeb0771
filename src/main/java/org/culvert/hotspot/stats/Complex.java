package org.culvert.hotspot.stats;

/** A complex number. */
record Complex(double re, double im) {
    static final Complex ONE = new Complex(1, 0);

    Complex plus(Complex other) {
        return new Complex(re + other.re, im + other.im);
    }

    Complex minus(Complex other) {
        return new Complex(re - other.re, im - other.im);
    }

    Complex times(Complex other) {
        return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Complex times(double factor) {
        return new Complex(re * factor, im * factor);
    }

    /** One over this, for numbers whose squares neither overflow nor vanish. */
    Complex reciprocal() {
        double square = re * re + im * im;
        return new Complex(re / square, -im / square);
    }

    Complex exp() {
        double size = Math.exp(re);
        return new Complex(size * Math.cos(im), size * Math.sin(im));
    }

    /** The square root in the right half of the plane. */
    Complex root() {
        double size = Math.hypot(re, im);
        double real = Math.sqrt((size + Math.abs(re)) / 2);
        if (real == 0) {
            return this;
        }
        double other = Math.abs(im) / (2 * real);
        return re >= 0 ? new Complex(real, Math.copySign(other, im)) : new Complex(other, Math.copySign(real, im));
    }

    boolean isZero() {
        return re == 0 && im == 0;
    }

    /** Complex numbers in a row, without an object for each. */
    static final class Row {
        private final double[] re;
        private final double[] im;

        /** All zero. */
        Row(int length) {
            this.re = new double[length];
            this.im = new double[length];
        }

        Complex get(int at) {
            return new Complex(re[at], im[at]);
        }

        double re(int at) {
            return re[at];
        }

        double im(int at) {
            return im[at];
        }

        void set(int at, Complex value) {
            re[at] = value.re;
            im[at] = value.im;
        }
    }
}
