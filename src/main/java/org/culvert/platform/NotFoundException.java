package org.culvert.platform;

/** There is nothing by that identifier, or nothing that the asker may see. */
public final class NotFoundException extends CulvertException {
    public NotFoundException(String what, Object id) {
        super("There is no " + what + " " + id + ".");
    }

    @Override
    public String type() {
        return "not-found";
    }

    @Override
    public String title() {
        return "Nothing is there";
    }

    @Override
    public int status() {
        return 404;
    }
}
