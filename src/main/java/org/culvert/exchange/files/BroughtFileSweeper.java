package org.culvert.exchange.files;

import jakarta.enterprise.context.ApplicationScoped;
import org.culvert.platform.DailyJob;

/** Forgets the octets of files of which nothing was taken in time. */
@ApplicationScoped
class BroughtFileSweeper implements DailyJob {
    private final BroughtFileService files;

    BroughtFileSweeper(BroughtFileService files) {
        this.files = files;
    }

    @Override
    public String name() {
        return "forget-brought-files";
    }

    @Override
    public void run() {
        files.forgetDue();
    }
}
