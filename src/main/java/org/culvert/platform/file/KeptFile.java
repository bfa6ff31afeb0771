package org.culvert.platform.file;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.Immutable;

/** A file as it was handed in, with the digest that the database holds against it. */
@Entity
@Immutable
@Table(name = "kept_files")
class KeptFile extends Recorded {
    String mediaType;
    byte[] content;
    byte[] sha256;

    protected KeptFile() {}

    KeptFile(String mediaType, byte[] content, byte[] sha256) {
        this.mediaType = mediaType;
        this.content = content.clone();
        this.sha256 = sha256.clone();
    }
}
