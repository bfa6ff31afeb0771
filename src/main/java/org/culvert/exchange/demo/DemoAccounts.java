package org.culvert.exchange.demo;

/** The accounts of the demo: one a role, named like it, all with one password that everybody knows. */
final class DemoAccounts {
    static final String PASSWORD = "invented-region";

    private DemoAccounts() {}
}
