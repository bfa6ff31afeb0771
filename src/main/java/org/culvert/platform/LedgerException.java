package org.culvert.platform;

/** A request does not say, or says wrongly, whether it is a retry or which revision it is meant for. */
public final class LedgerException extends CulvertException {
    private final String type;
    private final String title;
    private final int status;

    private LedgerException(String type, String title, int status, String detail) {
        super(detail);
        this.type = type;
        this.title = title;
        this.status = status;
    }

    public static LedgerException keyMissing() {
        return new LedgerException(
                "idempotency-key-missing",
                "A change needs a key",
                400,
                "Send an Idempotency-Key that you make up for this change, such as a random UUID, and send the same one"
                        + " when you try again.");
    }

    public static LedgerException stillRunning() {
        return new LedgerException(
                "still-running",
                "The first try is still running",
                409,
                "A request with this key is being carried out. Send it again in a moment to hear what came of it.");
    }

    public static LedgerException keyUsedOtherwise() {
        return new LedgerException(
                "key-used-otherwise",
                "That key belongs to another request",
                422,
                "This key came with another request within the last day. Make up a new one for a new change.");
    }

    public static LedgerException tagMissing() {
        return new LedgerException(
                "if-match-missing",
                "Say which revision you mean",
                428,
                "Read the record and send its ETag back as If-Match, so that no one's change is overwritten unseen.");
    }

    @Override
    public String type() {
        return type;
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public int status() {
        return status;
    }
}
