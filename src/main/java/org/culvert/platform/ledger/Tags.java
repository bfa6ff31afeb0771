package org.culvert.platform.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeSet;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LedgerException;
import org.culvert.platform.StaleException;

/**
 * Entity tags (RFC 9110, section 8.8.3). A tag is a digest of the whole record with all its parts and of what the asker
 * may see at all: any change of any part makes another tag, and two askers with other rights have other tags.
 */
@ApplicationScoped
class Tags {
    private static final int BYTES = 16;

    private final SecurityIdentity identity;

    Tags(SecurityIdentity identity) {
        this.identity = identity;
    }

    String of(Object record) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            String rights = new TreeSet<>(identity.getRoles()) + " " + identity.getAttribute("organisation-id") + " "
                    + identity.getAttribute("member-id") + "\n";
            digest.update(rights.getBytes(StandardCharsets.UTF_8));
            digest.update(Canonical.text(record).getBytes(StandardCharsets.UTF_8));
            return '"' + HexFormat.of().formatHex(digest.digest(), 0, BYTES) + '"';
        } catch (NoSuchAlgorithmException | JsonProcessingException impossible) {
            throw new IllegalStateException("a record cannot be digested", impossible);
        }
    }

    /**
     * Holds {@code If-Match} against the tag of the record as it is now (RFC 9110, section 13.1.1: by strong comparison,
     * so that a weak tag matches nothing).
     *
     * @throws LedgerException when there is no condition
     * @throws StaleException when none of the tags is that of the record
     */
    static void requireMatch(List<String> headers, String current) {
        if (headers.isEmpty()) {
            throw LedgerException.tagMissing();
        }
        List<String> wanted = parse("If-Match", headers);
        if (!wanted.contains("*") && !wanted.contains(current)) {
            throw new StaleException(
                    "It is not the revision that you read any more. Read it again and repeat the change"
                            + " if it is still right.");
        }
    }

    /** Whether the asker has the record already (RFC 9110, section 13.1.2: by weak comparison). */
    static boolean isKnown(List<String> headers, String current) {
        return parse("If-None-Match", headers).stream()
                .anyMatch(tag -> tag.equals("*") || tag.equals(current) || tag.equals("W/" + current));
    }

    private static List<String> parse(String header, List<String> values) {
        List<String> tags = new ArrayList<>();
        for (String value : values) {
            String rest = value.strip();
            while (!rest.isEmpty()) {
                int end = rest.equals("*") ? 1 : endOfTag(rest);
                if (end < 0) {
                    throw InvalidException.of(header, "This is no entity tag.", "a tag in quotes, as an ETag gave it");
                }
                tags.add(rest.substring(0, end));
                rest = rest.substring(end).strip();
                if (rest.startsWith(",")) {
                    rest = rest.substring(1).strip();
                } else if (!rest.isEmpty()) {
                    throw InvalidException.of(header, "This is no list of entity tags.", "tags in quotes, with commas");
                }
            }
        }
        return tags;
    }

    private static int endOfTag(String text) {
        int start = text.startsWith("W/") ? 2 : 0;
        if (!text.startsWith("\"", start)) {
            return -1;
        }
        int close = text.indexOf('"', start + 1);
        return close < 0 ? -1 : close + 1;
    }
}
