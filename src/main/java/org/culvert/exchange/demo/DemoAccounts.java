package org.culvert.exchange.demo;

import org.culvert.platform.account.TokenService;

/** The accounts of the demo: one a role, named like it, with a password and a token each that everybody knows. */
final class DemoAccounts {
    static final String PASSWORD = "invented-region";

    private DemoAccounts() {}

    /** The token of a role, for programs. */
    static String token(String role) {
        return TokenService.PREFIX + "demo-" + role;
    }
}
