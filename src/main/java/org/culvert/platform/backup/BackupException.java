package org.culvert.platform.backup;

import org.jspecify.annotations.Nullable;

/** A backup or restore that cannot be; the message tells an operator what is wrong and what to do about it. */
final class BackupException extends RuntimeException {
    BackupException(String message) {
        super(message);
    }

    BackupException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
