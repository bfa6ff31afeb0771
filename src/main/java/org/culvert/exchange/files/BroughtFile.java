package org.culvert.exchange.files;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.file.FileParts;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** Somebody's order to read a file; its octets are apart. */
@Entity
@Immutable
@Table(name = "brought_files")
class BroughtFile extends Recorded {
    String kind;
    String fileName;
    long octets;
    byte[] sha256;
    UUID contentId;

    @JdbcTypeCode(SqlTypes.JSON)
    Map<String, Object> told;

    protected BroughtFile() {}

    BroughtFile(BroughtFileKind kind, String fileName, FileParts.Kept kept, UUID contentId, Map<String, Object> told) {
        this.kind = kind.name();
        this.fileName = fileName;
        this.octets = kept.octets();
        this.sha256 = kept.sha256().clone();
        this.contentId = contentId;
        this.told = told;
    }
}
