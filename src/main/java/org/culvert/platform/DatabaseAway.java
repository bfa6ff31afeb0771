package org.culvert.platform;

import io.quarkiverse.resteasy.problem.HttpProblem;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.ConnectException;
import java.net.SocketException;
import java.net.URI;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;

/** Says 503 with Retry-After while the database is away, whichever way that shows. */
public final class DatabaseAway {
    private static final String RETRY_AFTER_SECONDS = "5";

    private DatabaseAway() {}

    /** Class 08 is a lost connection, 57P0x a server that stops, starts or was told to end us (PostgreSQL, appendix A). */
    private static boolean isAway(String sqlState) {
        return sqlState.startsWith("08") || sqlState.startsWith("57P");
    }

    public static boolean isAway(Throwable thrown) {
        return Causes.find(thrown, DatabaseAway::saysSo) != null;
    }

    private static boolean saysSo(Throwable thrown) {
        return thrown instanceof ConnectException
                || thrown instanceof SocketException
                || thrown instanceof SQLTransientConnectionException
                || thrown instanceof SQLException sql && sql.getSQLState() != null && isAway(sql.getSQLState());
    }

    public static Response response(UriInfo uriInfo) {
        return HttpProblem.builder()
                .withType(URI.create(ProblemMapping.TYPES + "away"))
                .withTitle("The database is away for a moment")
                .withStatus(503)
                .withDetail(
                        "Try again in a few seconds. A change sent again with the same Idempotency-Key is not made twice.")
                .withInstance(URI.create(uriInfo.getRequestUri().getRawPath()))
                .withHeader("Retry-After", RETRY_AFTER_SECONDS)
                .build()
                .toResponse();
    }
}
