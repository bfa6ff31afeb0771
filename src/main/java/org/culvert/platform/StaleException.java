package org.culvert.platform;

/** Someone else changed the record in between. */
public final class StaleException extends CulvertException {
    public StaleException(String detail) {
        super(detail);
    }

    @Override
    public String type() {
        return "stale";
    }

    @Override
    public String title() {
        return "Someone changed it in between";
    }

    @Override
    public int status() {
        return 412;
    }
}
