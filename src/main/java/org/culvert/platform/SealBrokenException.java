package org.culvert.platform;

/**
 * A sealed file is not what it was when it came in. Unlike any other refusal it leaves what the operation has written: that
 * somebody asked for the file, and what was found.
 */
public final class SealBrokenException extends CulvertException {
    /** @param sealed digest under which it was sealed, in hexadecimal; likewise that which was found */
    public SealBrokenException(String sealed, String found) {
        super("The original was sealed with the digest " + sealed + " and has now the digest " + found
                + ": it is not the file that came in, and is not given. That it was asked for is kept.");
    }

    @Override
    public String type() {
        return "seal-broken";
    }

    @Override
    public String title() {
        return "The seal of this file is broken";
    }

    @Override
    public int status() {
        return 409;
    }
}
