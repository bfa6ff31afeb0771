package org.culvert.platform.ledger;

import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;

/**
 * The answer is known without running the operation. It is thrown, since what a resource's method returns has the type of
 * its record and the answer is bytes.
 */
final class AnsweredAlready extends RuntimeException {
    private final transient Response response;

    AnsweredAlready(Response response) {
        super("answered already", null, false, false);
        this.response = response;
    }

    /** Sends it. */
    @Provider
    static class Mapper implements ExceptionMapper<AnsweredAlready> {
        @Override
        public Response toResponse(AnsweredAlready answered) {
            return answered.response;
        }
    }
}
