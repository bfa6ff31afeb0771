package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Signing in, accounts and what belongs to them. */
@MessageBundle("account")
public interface AccountWords {
    @Message("Sign in")
    String signIn();

    @Message("Not signed in.")
    String notSignedIn();

    @Message("Name")
    String name();

    @Message("Password")
    String password();

    @Message("Forgotten? Ask an administrator for a link by which you set another; this server sends no "
            + "mail. Programs sign in with tokens, which you make under your account.")
    String forgotten();

    @Message("No account has this name and password.")
    String noSuchAccount();

    @Message("Set a password")
    String setPassword();

    @Message("Welcome: set your password")
    String welcome();

    @Message("Set another password")
    String setAnother();

    @Message("Not set.")
    String notSet();

    @Message("For this account; the link works once:")
    String forAccount();

    @Message("Password: 12 characters or more; several words are good")
    String passwordHint();

    @Message("Once more")
    String onceMore();

    @Message("Set it")
    String setIt();

    @Message("This link was used, has run out, or was replaced by a newer one. Ask whoever sent it for " + "another.")
    String linkGone();

    @Message("The two are not the same.")
    String notTheSame();

    @Message("Your account")
    String yourAccount();

    @Message("Roles")
    String roles();

    @Message("Nothing was changed.")
    String nothingChanged();

    @Message("The new token, shown this once.")
    String newToken();

    @Message("Copy it now; who has it acts in your name.")
    String newTokenMeans();

    @Message("In QGIS, GDAL or curl: HTTP Basic with your name and the token as password. Elsewhere: "
            + "Authorization: Bearer.")
    String tokenUse();

    @Message("Tokens for programs")
    String tokens();

    @Message("None yet. A token lets a program act in your name, as far as you say.")
    String noTokens();

    @Message("For")
    String purpose();

    @Message("Reaches")
    String reaches();

    @Message("Made")
    String made();

    @Message("Last used")
    String lastUsed();

    @Message("never")
    String never();

    @Message("taken back")
    String takenBack();

    @Message("Take back")
    String takeBack();

    @Message("What it is for")
    String purposeHint();

    @Message("What it reaches: the first part of an address under /api with :read or :write; *:read reads "
            + "all that you may")
    String scopesHint();

    @Message("Make a token")
    String makeToken();

    @Message("Where you are signed in")
    String sessions();

    @Message("since {at}")
    String since(String at);

    @Message("last seen {at}")
    String lastSeen(String at);

    @Message("here")
    String here();

    @Message("End")
    String end();

    @Message("The one so far")
    String before();

    @Message("A new one, 12 characters or more")
    String anotherHint();

    @Message("Change it")
    String changeIt();

    @Message("Changing it signs you out everywhere. Tokens stay.")
    String changeMeans();

    @Message("This is not the password so far.")
    String notThePassword();

    @Message("Say in up to 100 characters what the token is for.")
    String purposeWanted();

    @Message("Say what the token may reach, such as hotspot-runs:read.")
    String scopesWanted();

    @Message("Accounts")
    String accounts();

    @Message("A link for {name}, shown this once.")
    String linkFor(Object name);

    @Message("This server sends no mail: hand it over yourself, by a way that only they read. It works "
            + "once; a newer one ends it.")
    String linkMeans();

    @Message("State")
    String state();

    @Message("disabled")
    String disabled();

    @Message("in use")
    String inUse();

    @Message("no password yet")
    String noPassword();

    @Message("Link for a password")
    String makeLink();

    @Message("Link for a password: {name}")
    String makeLinkFor(Object name);

    @Message("Disable")
    String disable();

    @Message("Disable {name}")
    String disableNamed(Object name);

    @Message("More accounts")
    String moreAccounts();

    @Message("Invite someone")
    String invite();

    @Message("Name to sign in with")
    String signInName();

    @Message("Make the account and a link")
    String makeAccount();

    @Message("Say in which roles.")
    String rolesWanted();

    @Message("another name")
    String nameAnother();

    @Message("one or more of them")
    String rolesOneOrMore();

    @Message("Roles")
    String changeRoles();

    @Message("Roles of {name}")
    String changeRolesOf(Object name);

    @Message("Give these roles")
    String keepRoles();

    @Message("Let it sign in again")
    String enable();

    @Message("Let {name} sign in again")
    String enableNamed(Object name);

    @Message("the same twice")
    String sameTwice();

    @Message("the one so far")
    String oneSoFar();

    @Message("a few words, up to 100 characters")
    String purposeAFew();

    @Message("Another account has this name already.")
    String nameTaken();

    @Message("{#switch name}{#case 'dispatcher'}dispatcher{#case 'rescuer'}rescuer{#case "
            + "'clinic'}clinic{#case 'carer'}carer{#case 'coordinator'}coordinator{#case "
            + "'roads-authority'}roads authority{#case 'officer'}wildlife officer{#case "
            + "'recipient'}recipient of exact places{#case}administrator{/switch}")
    String role(Object name);
}
