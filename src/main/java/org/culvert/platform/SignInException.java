package org.culvert.platform;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/** What stands in the way of signing in, or of acting as whoever signed in. */
public final class SignInException extends CulvertException {
    private final String type;
    private final String title;
    private final int status;
    private final @Nullable Duration wait;

    private SignInException(String type, String title, int status, String detail, @Nullable Duration wait) {
        super(detail);
        this.type = type;
        this.title = title;
        this.status = status;
        this.wait = wait;
    }

    /** Too many tries; the same answer whether or not there is such an account. */
    public static SignInException tooManyTries(Duration wait) {
        long minutes = Math.max(1, (wait.toSeconds() + 59) / 60);
        return new SignInException(
                "too-many-tries",
                "Too many tries to sign in",
                429,
                "Too many tries did not fit. Try again in " + minutes + (minutes == 1 ? " minute." : " minutes."),
                wait);
    }

    /** A form that was not on a page of ours. */
    public static SignInException forged() {
        return new SignInException(
                "forged",
                "That was not sent from a page of this server",
                403,
                "The form lacks the secret of the page that it should have been on. Open the page again and repeat it.",
                null);
    }

    /** A token that reaches less than what was asked of it. */
    public static SignInException outsideScope(String needed) {
        return new SignInException(
                "not-allowed",
                "Your role does not reach that",
                403,
                "The token was not made for this: it would need the scope " + needed + ".",
                null);
    }

    /** A record of others, with what would make it one of the asker's. */
    public static SignInException notTheirs(String detail) {
        return new SignInException("not-allowed", "Your role does not reach that", 403, detail, null);
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

    /** How long to wait before another try makes sense, or null where waiting does not help. */
    public @Nullable Duration retryAfter() {
        return wait;
    }
}
