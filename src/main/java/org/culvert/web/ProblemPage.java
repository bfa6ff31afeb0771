package org.culvert.web;

import java.util.List;

/** What a type of problem means and what to do about it. */
public record ProblemPage(String type, int status, String title, String meaning, String remedy) {
    static final List<ProblemPage> ALL = List.of(
            new ProblemPage(
                    "invalid",
                    400,
                    "Something in the request is not right",
                    "A field holds something that cannot be understood or cannot be true.",
                    "Each entry of errors names the field, says what was wrong and what would be right, and where"
                            + " coordinates look swapped, the other reading. Nothing was kept; send it again corrected."),
            new ProblemPage(
                    "not-signed-in",
                    401,
                    "You are not signed in",
                    "The request carries no session and no token, or one that has ended or was taken back.",
                    "People sign in by the form; programs send a token as Bearer, or as the password of HTTP Basic with"
                            + " the name of its account."),
            new ProblemPage(
                    "too-many-tries",
                    429,
                    "Too many tries to sign in",
                    "Names and passwords that did not fit came too often, for this name or from this address.",
                    "Wait as long as Retry-After says. Ask an administrator for a link if the password is forgotten."),
            new ProblemPage(
                    "forged",
                    403,
                    "That was not sent from a page of this server",
                    "A browser that is signed in sent something without the secret that our pages give it.",
                    "Open the page again and repeat it there. Programs use a token, which needs no such secret."),
            new ProblemPage(
                    "not-allowed",
                    403,
                    "Your role does not reach that",
                    "The account is known, but none of its roles may do this or see this.",
                    "Ask a coordinator for the role; what no role of yours is given is refused."),
            new ProblemPage(
                    "not-found",
                    404,
                    "Nothing is there",
                    "There is nothing by that address or identifier, or nothing that you may see.",
                    "Check the identifier; follow the links that the server gave."),
            new ProblemPage(
                    "no-such-operation",
                    405,
                    "That cannot be done there",
                    "The address exists but not for this method.",
                    "See the API's contract for what may be done."),
            new ProblemPage(
                    "no-such-format",
                    415,
                    "That format is not spoken here",
                    "The content type sent or wanted is not one of those offered (406 or 415).",
                    "Send application/json, or application/geo+json where roads are imported."),
            new ProblemPage(
                    "too-large",
                    413,
                    "That is too large",
                    "The body is larger than anything that is meant: 1 MB of JSON, 30 MB of a release or a permit with its documents, 14 MB of a photograph, 200 MB of roads.",
                    "Send less at once, in several requests."),
            new ProblemPage(
                    "conflict",
                    409,
                    "That contradicts what is recorded",
                    "The database keeps rules that no one may break: two holders at once, a case that ends twice.",
                    "The detail says which rule. Read the record again; if the record is wrong, correct it first."),
            new ProblemPage(
                    "seal-broken",
                    409,
                    "The seal of this file is broken",
                    "The content of a sealed original has another digest (SHA-256) than it had when it came in: it was changed,"
                            + " or the disk that holds it is failing.",
                    "It is not given, and that it was asked for is kept. Compare it with a backup from before, and find out who"
                            + " could write to the database."),
            new ProblemPage(
                    "stale",
                    412,
                    "Someone changed it in between",
                    "The record is no longer the one that you read.",
                    "Read it again and repeat the change if it is still right."),
            new ProblemPage(
                    "idempotency-key-missing",
                    400,
                    "A change needs a key",
                    "Every change carries an Idempotency-Key, so that a try that was cut off can be made again without"
                            + " being made twice.",
                    "Make up a new key for each change, such as a random UUID, and send the same key when you try the"
                            + " same change again within a day."),
            new ProblemPage(
                    "still-running",
                    409,
                    "The first try is still running",
                    "A request with the same key is being carried out at this moment.",
                    "Send it again in a moment: you will hear what came of the first one."),
            new ProblemPage(
                    "key-used-otherwise",
                    422,
                    "That key belongs to another request",
                    "The same key came with another address or another body within the last day.",
                    "Make up a new key for a new change. A key is repeated only with the very same request."),
            new ProblemPage(
                    "if-match-missing",
                    428,
                    "Say which revision you mean",
                    "A record is changed only by who has read it as it is (RFC 6585).",
                    "Read the record and send the ETag of that answer as If-Match."),
            new ProblemPage(
                    "refused",
                    422,
                    "A rule refuses that",
                    "A rule that protects people or animals stops this: the gate before anyone is sent, an authorisation"
                            + " that is not listed, a release rule that is not passed.",
                    "The reasons are named. A policy of the network may be set aside by a named person with a reason; a"
                            + " statute only by a permit with number and document; a protection by nobody."),
            new ProblemPage(
                    "our-fault",
                    500,
                    "The server made a mistake",
                    "This is a bug of ours. It has been logged.",
                    "Nothing half done was kept. Tell whoever runs the server, with the time."),
            new ProblemPage(
                    "away",
                    503,
                    "The database is away for a moment",
                    "The server cannot reach its database and is trying again.",
                    "Wait as many seconds as Retry-After says and send the same request again."),
            new ProblemPage(
                    "other",
                    400,
                    "Something else is not right",
                    "The request was refused before it reached a room of this server.",
                    "The status and the detail say what is known."));
}
