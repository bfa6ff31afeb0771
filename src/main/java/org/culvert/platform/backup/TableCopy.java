package org.culvert.platform.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;
import org.postgresql.copy.CopyOut;

/** Streams whole tables in and out in PostgreSQL's text format, which every version reads and writes alike. */
final class TableCopy {
    private static final int PIECE = 1 << 16;

    private TableCopy() {}

    /** Makes values look the same whatever the server is set to. */
    static void settle(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("SET datestyle = 'ISO, YMD'");
            statement.execute("SET intervalstyle = 'postgres'");
            statement.execute("SET timezone = 'UTC'");
            statement.execute("SET extra_float_digits = 1");
            statement.execute("SET bytea_output = 'hex'");
            statement.execute("SET statement_timeout = 0");
            statement.execute("SET lock_timeout = 0");
            statement.execute("SET idle_in_transaction_session_timeout = 0");
            statement.execute("SET row_security = off");
        }
    }

    static RowTally copyOut(Connection connection, Catalogue.Table table, OutputStream out)
            throws SQLException, IOException {
        RowTally tally = new RowTally();
        CopyOut copy = connection
                .unwrap(PGConnection.class)
                .getCopyAPI()
                .copyOut("COPY " + table.sql() + " (" + table.columnsSql() + ") TO STDOUT");
        try {
            for (byte[] row = copy.readFromCopy(); row != null; row = copy.readFromCopy()) {
                tally.add(row, row.length);
                out.write(row);
            }
        } finally {
            if (copy.isActive()) {
                copy.cancelCopy();
            }
        }
        return tally;
    }

    static RowTally copyIn(Connection connection, BackupManifest.TablePart part, InputStream in)
            throws SQLException, IOException {
        var table = new Catalogue.Table(part.schema(), part.name(), part.columns());
        RowTally tally = new RowTally();
        CopyIn copy = connection
                .unwrap(PGConnection.class)
                .getCopyAPI()
                .copyIn("COPY " + table.sql() + " (" + table.columnsSql() + ") FROM STDIN");
        try {
            byte[] piece = new byte[PIECE];
            for (int length = in.read(piece); length > 0; length = in.read(piece)) {
                tally.add(piece, length);
                copy.writeToCopy(piece, 0, length);
            }
            copy.endCopy();
        } finally {
            if (copy.isActive()) {
                copy.cancelCopy();
            }
        }
        return tally;
    }
}
