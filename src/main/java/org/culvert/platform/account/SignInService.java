package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.culvert.platform.DailyJob;

/** Lets people in by name and password. */
@ApplicationScoped
public class SignInService implements DailyJob {
    private final SignInTries tries;
    private final Passwords passwords;
    private final Sessions sessions;
    private final Sql sql;

    SignInService(SignInTries tries, Passwords passwords, Sessions sessions, Sql sql) {
        this.tries = tries;
        this.passwords = passwords;
        this.sessions = sessions;
        this.sql = sql;
    }

    /**
     * Begins a session; what does not fit is counted.
     *
     * @param source the address of the asker
     * @return what goes into the cookie, or empty where name and password do not belong together
     * @throws org.culvert.platform.SignInException after too many tries
     */
    public Optional<String> signIn(String username, String password, String source) {
        return findAccount(username, password, source)
                .map(account -> sessions.begin(account).secret());
    }

    /**
     * Whether a password is that of an account; a wrong one counts like a wrong try to sign in.
     *
     * @throws org.culvert.platform.SignInException after too many tries
     */
    public boolean fits(String username, String password, String source) {
        return findAccount(username, password, source).isPresent();
    }

    private Optional<UUID> findAccount(String username, String password, String source) {
        UUID attempt = tries.begin(username, source);
        UUID account = sql.find(
                        "select id from accounts where username = ? and disabled_at is null",
                        row -> row.getObject(1, UUID.class),
                        username.replace("\0", ""))
                .orElse(null);
        boolean fits = passwords.fits(account, password);
        tries.end(attempt, fits);
        return fits ? Optional.ofNullable(account) : Optional.empty();
    }

    /** Ends one session of an account. */
    public void end(UUID accountId, UUID sessionId) {
        sessions.end(accountId, sessionId);
    }

    /** The sessions of an account that stand. */
    public List<Sessions.SessionView> listSessions(UUID accountId) {
        return sessions.list(accountId);
    }

    @Override
    public String name() {
        return "forget-sign-ins";
    }

    @Override
    public void run() {
        sql.find("select personal.forget_sign_ins()", row -> row.getInt(1));
    }
}
