package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import org.culvert.platform.DailyJob;

/** Forgets the octets of files that nobody took in or called off in time, and of those that were taken in. */
@ApplicationScoped
class RecordFileSweeper implements DailyJob {
    private final RecordFileService files;

    RecordFileSweeper(RecordFileService files) {
        this.files = files;
    }

    @Override
    public String name() {
        return "forget-record-files";
    }

    @Override
    public void run() {
        files.forgetDue();
    }
}
