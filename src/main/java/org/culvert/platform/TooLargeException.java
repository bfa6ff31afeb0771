package org.culvert.platform;

/** A body that is larger than anything that is meant. */
public final class TooLargeException extends CulvertException {
    public TooLargeException(long largestBytes) {
        super("The body is larger than " + largestBytes + " bytes.");
    }

    @Override
    public String type() {
        return "too-large";
    }

    @Override
    public String title() {
        return "That is too large";
    }

    @Override
    public int status() {
        return 413;
    }
}
