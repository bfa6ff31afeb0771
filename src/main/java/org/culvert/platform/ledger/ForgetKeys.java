package org.culvert.platform.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import org.culvert.platform.DailyJob;
import org.jboss.logging.Logger;

/** Once a day, forgets the keys of the day before. */
@ApplicationScoped
class ForgetKeys implements DailyJob {
    private static final Logger LOG = Logger.getLogger(ForgetKeys.class);

    private final KeptAnswers answers;

    ForgetKeys(KeptAnswers answers) {
        this.answers = answers;
    }

    @Override
    public String name() {
        return "forget-idempotency-keys";
    }

    @Override
    @Transactional
    public void run() {
        LOG.infof("%d idempotency keys forgotten", answers.forget());
    }
}
