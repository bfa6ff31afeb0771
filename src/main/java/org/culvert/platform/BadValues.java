package org.culvert.platform;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;
import org.postgresql.util.ServerErrorMessage;

/**
 * Reads from a refusal of the database which field holds a value that cannot be kept, where that shows: by the names that
 * PostgreSQL gives to constraints of one column, and by its error codes (PostgreSQL, appendix A).
 */
final class BadValues {
    private static final Pattern OF_ONE_COLUMN = Pattern.compile("(.+)_(fkey|check)");

    private BadValues() {}

    static @Nullable FieldError find(String sqlState, ServerErrorMessage message) {
        String table = message.getTable();
        String constraint = message.getConstraint();
        switch (sqlState) {
            case "23503", "23514" -> {
                Matcher name = OF_ONE_COLUMN.matcher(constraint == null ? "" : constraint);
                if (table == null || !name.matches() || !name.group(1).startsWith(table + "_")) {
                    return null;
                }
                String column = name.group(1).substring(table.length() + 1);
                if (column.equals("recorded_by") || column.equals("revised_by")) {
                    return null;
                }
                return name.group(2).equals("fkey")
                        ? new FieldError(
                                field(column),
                                "There is nothing by this identifier.",
                                "an identifier as this server gave it",
                                null)
                        : new FieldError(field(column), "This value cannot be kept.", "a value as documented", null);
            }
            case "23502" -> {
                String column = message.getColumn();
                return column == null
                        ? null
                        : new FieldError(field(column), "This is missing.", "a value as documented", null);
            }
            case "22021", "22P05" -> {
                return new FieldError(
                        "body", "A text holds a character that no text holds.", "text without U+0000", null);
            }
            // 54000: an index takes no longer text; 22009: a time of a year that nobody means
            case "22001", "54000" -> {
                return new FieldError("body", "A text is longer than can be kept.", "a shorter text", null);
            }
            case "22003", "22008", "22009" -> {
                return new FieldError(
                        "body", "A number or a time is out of all bounds.", "a value as documented", null);
            }
            default -> {
                return null;
            }
        }
    }

    /** The name of a column as the API writes it. */
    static String field(String column) {
        var field = new StringBuilder();
        boolean upper = false;
        for (char c : column.toCharArray()) {
            if (c == '_') {
                upper = true;
            } else {
                field.append(upper ? Character.toUpperCase(c) : c);
                upper = false;
            }
        }
        return field.toString();
    }
}
