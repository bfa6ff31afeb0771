package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URI;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.platform.FormSignIn;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.Request;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Signing in, inviting, tokens and forgotten passwords as people go about them, in Chromium. */
@QuarkusTest
class SignInPagesIT {
    private static final String FIRST = "a heron stood by the culvert";
    private static final String SECOND = "two herons stood by the culvert";
    private static final int TRIES = 10;

    @TempDir
    Path folder;

    @Inject
    DataSource database;

    private Browser browser;

    /** All tests come from one address, which others need too. */
    @AfterEach
    void letTheAddressTryAgain() throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("update personal.sign_in_tries set tried_at = tried_at - interval '1 hour'");
        }
    }

    @Test
    void aPersonIsInvitedWorksForgetsAndComesBack() {
        String name = "walker-" + UUID.randomUUID().toString().substring(0, 8);
        try (Browser opened = Browser.start(folder.resolve("profile"))) {
            browser = opened;
            aWrongPasswordIsSaidToBeWrong();
            String invitation = theAdministratorInvites(name);
            theLinkSetsAPasswordOnce(invitation, name);
            aTokenIsShownOnce(name);
            thePasswordIsChanged(name);
            theAdministratorResets(name);
            aNameThatWasGuessedAtWaits();
        }
    }

    private void aWrongPasswordIsSaidToBeWrong() {
        browser.open("/accounts");
        assertThat(browser.path()).as("who is nobody is led to the form").isEqualTo("/sign-in?next=%2Faccounts");
        looksRight("sign-in");
        keysLeadThroughTheForm();
        signIn("test-admin", "not the password at all");
        assertThat(browser.text("[role=alert]")).isEqualTo("Not signed in. No account has this name and password.");
        assertThat(browser.find("#username").getDomProperty("value")).isEqualTo("test-admin");
        assertThat(browser.find("#password").getDomProperty("value")).isEmpty();
        looksRight("sign-in-wrong");
    }

    private void keysLeadThroughTheForm() {
        WebElement username = browser.find("#username");
        username.click();
        username.sendKeys(Keys.TAB);
        assertThat(browser.focused().getDomAttribute("id")).isEqualTo("password");
        browser.focused().sendKeys(Keys.TAB);
        assertThat(browser.focused().getText()).isEqualTo("Sign in");
        assertThat(browser.script("return getComputedStyle(document.activeElement).outlineStyle;"))
                .as("who has the focus is shown")
                .isEqualTo("solid");
    }

    private String theAdministratorInvites(String name) {
        signIn("test-admin", Api.PASSWORD);
        assertThat(browser.path()).isEqualTo("/accounts");
        browser.fill("#username", name);
        browser.press("form[action='/accounts'] button");
        assertThat(browser.text("[role=alert]")).contains("Say in which roles.");
        looksRight("accounts-wrong");
        assertThat(browser.find("#username").getDomProperty("value"))
                .as("what was typed stands there still")
                .isEqualTo(name);
        browser.find("form[action='/accounts'] input[name=roles][value=roads-authority]")
                .click();
        browser.press("form[action='/accounts'] button");
        looksRight("accounts-link");
        String link = browser.text("#link");
        assertThat(link).startsWith(Request.server() + "/invitation/");
        browser.open("/accounts");
        assertThat(browser.list("#link")).as("shown once").isEmpty();
        looksRight("accounts");
        signOut();
        browser.open("/accounts");
        assertThat(browser.path()).startsWith("/sign-in");
        return link.substring(link.indexOf("/invitation/"));
    }

    private void theLinkSetsAPasswordOnce(String invitation, String name) {
        browser.open(invitation);
        assertThat(browser.text("main")).contains(name);
        looksRight("invitation");
        setPassword(FIRST, SECOND);
        assertThat(browser.text("[role=alert]")).isEqualTo("Not set. The two are not the same.");
        setPassword(name + name, name + name);
        assertThat(browser.text("[role=alert]")).startsWith("Not set.");
        looksRight("invitation-wrong");
        setPassword(FIRST, FIRST);
        assertThat(browser.path()).isEqualTo("/sign-in");
        browser.open(invitation);
        assertThat(browser.text("main")).contains("This link was used, has run out, or was replaced");
        looksRight("invitation-used");
        browser.open("/sign-in");
        signIn(name, FIRST);
        assertThat(browser.text(".who")).contains(name, "Sign out");
        assertThat(browser.list("nav a[href='/accounts']")).as("not for them").isEmpty();
        browser.open("/accounts");
        assertThat(browser.text("h1")).isEqualTo("Your role does not reach that");
        looksRight("not-allowed");
    }

    private void aTokenIsShownOnce(String name) {
        browser.open("/account");
        browser.fill("#name", "map program");
        browser.fill("#scopes", "everything");
        browser.press("form[action='/account/tokens'] button");
        assertThat(browser.text("[role=alert]")).startsWith("Nothing was changed.");
        looksRight("account-wrong");
        browser.fill("#name", "map program");
        browser.fill("#scopes", "hotspot-runs:read");
        browser.press("form[action='/account/tokens'] button");
        String token = browser.text("#token");
        looksRight("account-token");
        assertThat(reach(name, token)).isEqualTo(200);
        browser.open("/account");
        assertThat(browser.words()).contains("map program").doesNotContain(token);
        looksRight("account");
        browser.press("form[action$='/revocation'] button");
        assertThat(browser.text("main")).contains("taken back");
        assertThat(reach(name, token)).isEqualTo(401);
    }

    private void thePasswordIsChanged(String name) {
        browser.fill("#before", SECOND);
        browser.fill("#password", SECOND);
        browser.fill("#again", SECOND);
        browser.press("form[action='/account/password'] button");
        assertThat(browser.text("[role=alert]")).contains("Nothing was changed.", "This is not the password so far.");
        browser.fill("#before", FIRST);
        browser.fill("#password", SECOND);
        browser.fill("#again", SECOND);
        browser.press("form[action='/account/password'] button");
        assertThat(browser.path()).isEqualTo("/sign-in?next=/account");
        signIn(name, SECOND);
        assertThat(browser.path()).isEqualTo("/account");
        signOut();
    }

    private void theAdministratorResets(String name) {
        browser.open("/sign-in?next=/accounts");
        signIn("test-admin", Api.PASSWORD);
        while (browser.list("button[aria-label='Link for a password: " + name + "']")
                .isEmpty()) {
            browser.press("a[href^='/accounts?cursor=']");
        }
        browser.press("button[aria-label='Link for a password: " + name + "']");
        String link = browser.text("#link");
        signOut();
        browser.open(link.substring(link.indexOf("/reset/")));
        looksRight("reset");
        setPassword(FIRST, FIRST);
        signIn(name, SECOND);
        assertThat(browser.text("[role=alert]")).startsWith("Not signed in.");
        signIn(name, FIRST);
        assertThat(browser.text(".who")).contains(name);
        signOut();
        assertThat(browser.text(".who")).isEqualTo("Sign in");
    }

    private void aNameThatWasGuessedAtWaits() {
        String guessed = "guessed-" + UUID.randomUUID().toString().substring(0, 8);
        var elsewhere = new FormSignIn(URI.create(Request.server() + "/"));
        for (int i = 0; i < TRIES; i++) {
            assertThat(elsewhere.signIn(guessed, "guess " + i).statusCode()).isEqualTo(401);
        }
        browser.open("/sign-in");
        signIn(guessed, "guess again");
        assertThat(browser.text("[role=alert]"))
                .isEqualTo("Not signed in. Too many tries did not fit. Try again in 1 minute.");
        looksRight("sign-in-waits");
    }

    private void signIn(String username, String password) {
        browser.fill("#username", username);
        browser.fill("#password", password);
        browser.press("main button");
    }

    private void signOut() {
        browser.press("form[action='/sign-out'] button");
        assertThat(browser.path()).isEqualTo("/");
    }

    private void setPassword(String password, String again) {
        browser.fill("#password", password);
        browser.fill("#again", again);
        browser.press("main button");
    }

    private void looksRight(String name) {
        browser.assertNothingRan();
        browser.assertUsable(name);
    }

    private static int reach(String username, String token) {
        return Request.given().basic(username, token).get("/api/hotspot-runs").statusCode();
    }
}
