package org.culvert.platform.backup;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.jspecify.annotations.Nullable;

/** A backup to read from. Opening it reads it to its end and checks every sum, before anything is done with it. */
final class BackupFile implements AutoCloseable {
    private static final int PIECE = 1 << 16;

    private final Path file;
    private final ZipFile zip;
    private final BackupManifest manifest;

    private BackupFile(Path file, ZipFile zip, BackupManifest manifest) {
        this.file = file;
        this.zip = zip;
        this.manifest = manifest;
    }

    static BackupFile open(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new BackupException("There is no file " + file + ".");
        }
        ZipFile zip = openZip(file);
        boolean whole = false;
        try {
            var backup = new BackupFile(file, zip, readManifest(file, zip));
            backup.check();
            whole = true;
            return backup;
        } finally {
            if (!whole) {
                close(zip);
            }
        }
    }

    private static ZipFile openZip(Path file) {
        try {
            return new ZipFile(file.toFile());
        } catch (ZipException e) {
            throw damaged(file, "it is cut off or no backup at all (" + e.getMessage() + ")", e);
        } catch (IOException e) {
            throw new BackupException(file + " cannot be read: " + e, e);
        }
    }

    private static BackupManifest readManifest(Path file, ZipFile zip) {
        ZipEntry entry = zip.getEntry(BackupManifest.ENTRY);
        if (entry == null) {
            throw new BackupException(file + " is no backup of Culvert: it lacks " + BackupManifest.ENTRY + ".");
        }
        try (InputStream in = zip.getInputStream(entry)) {
            return BackupManifest.read(in.readAllBytes());
        } catch (IOException e) {
            throw damaged(file, "its account of itself cannot be read", e);
        }
    }

    BackupManifest manifest() {
        return manifest;
    }

    private void check() {
        for (BackupManifest.TablePart part : manifest.tables()) {
            RowTally tally = new RowTally();
            try (InputStream in = read(part)) {
                byte[] piece = new byte[PIECE];
                for (int length = in.read(piece); length > 0; length = in.read(piece)) {
                    tally.add(piece, length);
                }
            } catch (IOException e) {
                throw damaged(file, "the table " + part.name() + " cannot be read (" + e.getMessage() + ")", e);
            }
            if (tally.rows() != part.rows() || !tally.sha256OfBytes().equals(part.sha256())) {
                throw damaged(file, "the table " + part.name() + " is not as it was written", null);
            }
        }
    }

    InputStream read(BackupManifest.TablePart part) throws IOException {
        ZipEntry entry = zip.getEntry(part.entry());
        if (entry == null) {
            throw damaged(file, "the table " + part.name() + " is missing", null);
        }
        return zip.getInputStream(entry);
    }

    private static BackupException damaged(Path file, String how, @Nullable Throwable cause) {
        return new BackupException(
                file + " is damaged: " + how + ". Nothing was restored. Take another copy of the backup.", cause);
    }

    @Override
    public void close() {
        close(zip);
    }

    private static void close(ZipFile zip) {
        try {
            zip.close();
        } catch (IOException e) {
            throw new BackupException("The backup cannot be closed: " + e, e);
        }
    }
}
