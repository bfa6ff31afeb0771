package org.culvert.platform.account;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.Set;
import org.culvert.platform.Role;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** On a server without accounts, makes one administrator and shows a random password once. */
@ApplicationScoped
class FirstAdmin {
    private static final Logger LOG = Logger.getLogger(FirstAdmin.class);

    private final AccountService accounts;
    private final Optional<String> configuredPassword;

    FirstAdmin(
            AccountService accounts,
            @ConfigProperty(name = "culvert.first-admin.password") Optional<String> configuredPassword) {
        this.accounts = accounts;
        this.configuredPassword = configuredPassword;
    }

    void make(@Observes @Priority(10) StartupEvent event) {
        if (accounts.hasPeople()) {
            return;
        }
        String password = configuredPassword.orElseGet(FirstAdmin::randomPassword);
        accounts.createAccount("admin", password, Set.of(Role.ADMIN), null, null);
        if (configuredPassword.isEmpty()) {
            LOG.infof("First start: sign in as admin with the password %s (shown this once)", password);
        }
    }

    private static String randomPassword() {
        byte[] bytes = new byte[18];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
