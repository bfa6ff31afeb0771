package org.culvert.platform;

import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import jakarta.annotation.Priority;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;

/** For JSON of another shape than is wanted: the framework's own answer to it is no problem, and names classes. */
@Provider
@Priority(1)
class UnreadableJson implements ExceptionMapper<MismatchedInputException> {
    private final UriInfo uriInfo;

    UnreadableJson(UriInfo uriInfo) {
        this.uriInfo = uriInfo;
    }

    @Override
    public Response toResponse(MismatchedInputException exception) {
        return ProblemShape.invalid(ProblemShape.errors(exception), ProblemMapping.instance(uriInfo))
                .toResponse();
    }
}
