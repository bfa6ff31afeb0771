package org.culvert.platform;

/** The request contradicts what is already recorded. */
public final class ConflictException extends CulvertException {
    public ConflictException(String detail) {
        super(detail);
    }

    @Override
    public String type() {
        return "conflict";
    }

    @Override
    public String title() {
        return "That contradicts what is recorded";
    }

    @Override
    public int status() {
        return 409;
    }
}
