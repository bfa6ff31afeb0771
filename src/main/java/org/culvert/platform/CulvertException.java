package org.culvert.platform;

/** What a service throws when a request cannot be met; one mapper turns it into problem details (RFC 9457). */
public abstract sealed class CulvertException extends RuntimeException
        permits InvalidException,
                NotFoundException,
                ConflictException,
                RefusedException,
                StaleException,
                LedgerException,
                SignInException,
                TooLargeException,
                SealBrokenException {

    protected CulvertException(String detail) {
        super(detail);
    }

    /** Name of the problem's type: its page is {@code /problems/{name}}. */
    public abstract String type();

    /** Short title, the same for every problem of the type. */
    public abstract String title();

    public abstract int status();
}
