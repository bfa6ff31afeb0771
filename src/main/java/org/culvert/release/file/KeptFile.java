package org.culvert.release.file;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.Immutable;

/** A file as it was handed in. */
@Entity
@Immutable
@Table(name = "release_files")
class KeptFile extends Recorded {
    String mediaType;
    byte[] content;

    protected KeptFile() {}

    KeptFile(String mediaType, byte[] content) {
        this.mediaType = mediaType;
        this.content = content.clone();
    }
}
