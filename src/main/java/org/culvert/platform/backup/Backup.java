package org.culvert.platform.backup;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.culvert.platform.database.DatabaseAccess;

/**
 * Writes every record as it stands at one instant into one file, while others go on writing. The file is readable by its
 * owner alone, and has its final name only once it is whole and on the disk.
 */
final class Backup {
    private final DatabaseAccess access;
    private final Progress progress;

    Backup(DatabaseAccess access, Progress progress) {
        this.access = access;
        this.progress = progress;
    }

    BackupManifest write(Path file) {
        Path whole = file.toAbsolutePath();
        if (Files.exists(whole)) {
            throw new BackupException(file + " is there already; a backup overwrites nothing. Choose another name.");
        }
        Path folder = whole.getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new BackupException("There is no folder " + folder + " to write the backup into.");
        }
        Path half = folder.resolve(
                "." + whole.getFileName() + ".part-" + ProcessHandle.current().pid());
        try {
            try (Connection connection = access.connectAsOwner("culvert backup")) {
                BackupManifest manifest = writeHalf(half, connection);
                publish(half, whole, folder);
                return manifest;
            } finally {
                Files.deleteIfExists(half);
            }
        } catch (SQLException e) {
            throw new BackupException("The database cannot be read: " + e.getMessage(), e);
        } catch (IOException e) {
            throw new BackupException("The backup cannot be written to " + file + ": " + e, e);
        }
    }

    private BackupManifest writeHalf(Path half, Connection connection) throws IOException, SQLException {
        Files.createFile(half, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        try (FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE)) {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            ZipOutputStream zip = new ZipOutputStream(out);
            BackupManifest manifest = dump(connection, zip);
            zip.putNextEntry(new ZipEntry(BackupManifest.ENTRY));
            zip.write(manifest.toJson());
            zip.closeEntry();
            zip.finish();
            out.flush();
            channel.force(true);
            return manifest;
        }
    }

    /** Not over a file that came meanwhile; and on the disk under its name before anyone is told that it is there. */
    private static void publish(Path half, Path whole, Path folder) throws IOException {
        if (Files.exists(whole)) {
            throw new FileAlreadyExistsException(whole.toString());
        }
        Files.move(half, whole, StandardCopyOption.ATOMIC_MOVE);
        try (FileChannel directory = FileChannel.open(folder, StandardOpenOption.READ)) {
            directory.force(true);
        }
    }

    private BackupManifest dump(Connection connection, ZipOutputStream zip) throws SQLException, IOException {
        TableCopy.settle(connection);
        connection.setAutoCommit(false);
        connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        connection.setReadOnly(true);
        String takenAt = value(connection, "SELECT to_char(now(), 'YYYY-MM-DD\"T\"HH24:MI:SS.US\"Z\"')");
        List<Catalogue.Table> tables = Catalogue.listTables(connection);
        Set<String> names = Set.copyOf(tables.stream().map(Catalogue.Table::sql).toList());
        if (!names.contains("\"public\".\"" + Catalogue.MIGRATIONS + "\"")) {
            throw new BackupException("There is nothing of Culvert in this database to back up.");
        }
        try (Statement statement = connection.createStatement()) {
            statement.execute("LOCK TABLE " + String.join(", ", names) + " IN ACCESS SHARE MODE");
        }
        Map<String, Integer> migrations = Catalogue.readMigrations(connection);
        List<BackupManifest.TablePart> parts = new ArrayList<>();
        for (Catalogue.Table table : tables) {
            // Which migrations there were is in the manifest: the restored database has its own account of them.
            if (!table.name().equals(Catalogue.MIGRATIONS)) {
                parts.add(dump(connection, table, zip));
                progress.after("Backing up", parts.size(), tables.size() - 1, parts.get(parts.size() - 1));
            }
        }
        // Sequences stand outside of transactions: read after the rows, they are never behind them.
        return new BackupManifest(
                BackupManifest.FORMAT,
                takenAt,
                BackupManifest.thisCulvertVersion(),
                value(connection, "SHOW server_version"),
                SchemaVersions.latest(migrations.keySet()),
                migrations,
                parts,
                Catalogue.readSequences(connection));
    }

    private static BackupManifest.TablePart dump(Connection connection, Catalogue.Table table, ZipOutputStream zip)
            throws SQLException, IOException {
        zip.putNextEntry(new ZipEntry("tables/" + table.schema() + "/" + table.name() + ".copy"));
        RowTally tallied = TableCopy.copyOut(connection, table, zip);
        zip.closeEntry();
        RowTally.Content content = tallied.content();
        return new BackupManifest.TablePart(
                table.schema(),
                table.name(),
                table.columns(),
                content.rows(),
                tallied.bytes(),
                tallied.sha256OfBytes(),
                content.sumOfRows());
    }

    private static String value(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }
}
