package org.culvert.platform.database;

import org.jspecify.annotations.Nullable;

/** The server cannot start as things are; the message tells an operator what is wrong and what to do about it. */
public class CannotStartException extends RuntimeException {
    public CannotStartException(String message) {
        super(message);
    }

    public CannotStartException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
