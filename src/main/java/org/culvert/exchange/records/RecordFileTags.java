package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.util.Map;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;

/** Whose revisions are read with a file of old records. */
@ApplicationScoped
class RecordFileTags {
    @Produces
    @Singleton
    TagSource ofRecordFile(EntityManager entities, RecordFileService files) {
        return new RowTag(
                "record-file",
                "record_files",
                entities,
                files::getFile,
                Map.of("record_readings", "record_file_id", "record_trials", "record_file_id"));
    }
}
