package org.culvert.support;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Follows one path of {@link Json}, from its first character to its last.
 *
 * <p>Inside {@code find} and {@code findAll}, {@code it} is the element that is asked. A condition is one comparison, or more
 * with {@code &&} between them; a comparison has {@code ==}, {@code !=}, {@code <}, {@code <=}, {@code >} or {@code >=}, or is
 * {@code it.text.startsWith('...')} or {@code it.text.contains('...')}, or the name of a boolean alone. Its sides are paths of
 * {@code it}, texts in single quotes, numbers, true, false and null. Numbers are compared by what they amount to.
 */
final class JsonReader {
    private final String path;
    private final @Nullable Object root;
    private int at;

    JsonReader(String path, @Nullable Object root) {
        this.path = path;
        this.root = root;
    }

    @Nullable
    Object read() {
        skipSpaces();
        if (at == path.length() || path.equals("$")) {
            return root;
        }
        Object there = path.startsWith("$.") ? afterRoot() : follow(root, true);
        skipSpaces();
        if (at < path.length()) {
            throw unreadable("the end");
        }
        return there;
    }

    private @Nullable Object afterRoot() {
        at = 1;
        return follow(root, false);
    }

    /** Goes on from what was reached, as far as the steps go. */
    private @Nullable Object follow(@Nullable Object from, boolean first) {
        Object there = from;
        boolean named = first && !isNext("[");
        while (named || isNext(".") || isNext("?.") || isNext("[")) {
            if (!named && isNext("[")) {
                there = element(there);
            } else {
                if (!named) {
                    at = path.indexOf('.', at) + 1;
                }
                there = step(there);
            }
            named = false;
        }
        return there;
    }

    private @Nullable Object step(@Nullable Object from) {
        String name = isNext("'") ? quoted() : name();
        if (isNext("()")) {
            at += 2;
            if (name.equals("size")) {
                return size(from);
            }
            throw unreadable("size()");
        }
        if (isNext("(")) {
            return isText(name, from);
        }
        int before = at;
        skipSpaces();
        if (isNext("{") && (name.equals("find") || name.equals("findAll"))) {
            return chosen(from, name.equals("find"));
        }
        at = before;
        return property(from, name);
    }

    private static @Nullable Object property(@Nullable Object from, String name) {
        if (from == null) {
            return null;
        } else if (from instanceof Map<?, ?> object) {
            return object.get(name);
        } else if (from instanceof List<?> list) {
            List<Object> all = new ArrayList<>();
            for (Object each : list) {
                if (each != null) {
                    all.add(property(each, name));
                }
            }
            return all;
        }
        throw new IllegalArgumentException("a value has no " + name + ": " + from);
    }

    private int size(@Nullable Object from) {
        if (from instanceof List<?> list) {
            return list.size();
        } else if (from instanceof Map<?, ?> object) {
            return object.size();
        }
        throw new IllegalArgumentException("has no size, in " + path + ": " + from);
    }

    private boolean isText(String name, @Nullable Object from) {
        at++;
        String wanted = quoted();
        expect(")");
        if (from == null) {
            return false;
        }
        return switch (name) {
            case "startsWith" -> from.toString().startsWith(wanted);
            case "contains" -> from.toString().contains(wanted);
            default -> throw unreadable("startsWith or contains");
        };
    }

    private @Nullable Object element(@Nullable Object from) {
        expect("[");
        int end = path.indexOf(']', at);
        if (end < 0) {
            throw unreadable("]");
        }
        int index;
        try {
            index = Integer.parseInt(path.substring(at, end).strip());
        } catch (NumberFormatException e) {
            throw unreadable("the number of an element");
        }
        at = end + 1;
        if (from == null) {
            return null;
        }
        if (!(from instanceof List<?> list)) {
            throw new IllegalArgumentException("no list has [" + index + "], in " + path + ": " + from);
        }
        int counted = index < 0 ? list.size() + index : index;
        return counted >= 0 && counted < list.size() ? list.get(counted) : null;
    }

    private @Nullable Object chosen(@Nullable Object from, boolean one) {
        expect("{");
        int condition = at;
        if (!(from instanceof List<?> list)) {
            throw new IllegalArgumentException("no list to choose from, in " + path + ": " + from);
        }
        List<Object> chosen = new ArrayList<>();
        holds(null);
        int end = at;
        for (Object each : list) {
            at = condition;
            if (holds(each)) {
                chosen.add(each);
            }
        }
        at = end;
        expect("}");
        return one ? (chosen.isEmpty() ? null : chosen.get(0)) : chosen;
    }

    /** Reads a whole condition, whatever the first of it says. */
    private boolean holds(@Nullable Object it) {
        boolean holds = compares(it);
        skipSpaces();
        while (isNext("&&")) {
            at += 2;
            holds &= compares(it);
            skipSpaces();
        }
        return holds;
    }

    private boolean compares(@Nullable Object it) {
        Object left = operand(it);
        skipSpaces();
        for (String sign : List.of("==", "!=", "<=", ">=", "<", ">")) {
            if (isNext(sign)) {
                at += sign.length();
                return compare(left, sign, operand(it));
            }
        }
        if (left != null && !(left instanceof Boolean)) {
            throw new IllegalArgumentException("neither true nor false, in " + path + ": " + left);
        }
        return Boolean.TRUE.equals(left);
    }

    private static boolean compare(@Nullable Object left, String sign, @Nullable Object right) {
        if (left == null || right == null) {
            return sign.equals("==") ? left == right : sign.equals("!=") && left != right;
        }
        int order;
        if (left instanceof Number one && right instanceof Number other) {
            order = new java.math.BigDecimal(one.toString()).compareTo(new java.math.BigDecimal(other.toString()));
        } else if (left instanceof String one && right instanceof String other) {
            order = one.compareTo(other);
        } else {
            order = left.equals(right) ? 0 : 1;
            if (!sign.equals("==") && !sign.equals("!=")) {
                throw new IllegalArgumentException("no order between " + left + " and " + right);
            }
        }
        return switch (sign) {
            case "==" -> order == 0;
            case "!=" -> order != 0;
            case "<=" -> order <= 0;
            case ">=" -> order >= 0;
            case "<" -> order < 0;
            default -> order > 0;
        };
    }

    private @Nullable Object operand(@Nullable Object it) {
        skipSpaces();
        if (isNext("'")) {
            return quoted();
        }
        String name = name();
        if (name.equals("it")) {
            return follow(it, false);
        } else if (name.equals("null")) {
            return null;
        } else if (name.equals("true") || name.equals("false")) {
            return Boolean.valueOf(name);
        }
        int end = at;
        while (end < path.length() && (Character.isDigit(path.charAt(end)) || path.charAt(end) == '.')) {
            end++;
        }
        String number = name + path.substring(at, end);
        at = end;
        try {
            return new java.math.BigDecimal(number);
        } catch (NumberFormatException e) {
            throw unreadable("it, a text in quotes, a number, true, false or null");
        }
    }

    private String name() {
        int end = at;
        while (end < path.length()
                && (Character.isLetterOrDigit(path.charAt(end)) || "_-$@".indexOf(path.charAt(end)) >= 0)) {
            end++;
        }
        if (end == at) {
            throw unreadable("a name");
        }
        String name = path.substring(at, end);
        at = end;
        return name;
    }

    private String quoted() {
        expect("'");
        int end = path.indexOf('\'', at);
        if (end < 0) {
            throw unreadable("a quote");
        }
        String text = path.substring(at, end);
        at = end + 1;
        return text;
    }

    private boolean isNext(String text) {
        return path.startsWith(text, at);
    }

    private void expect(String text) {
        skipSpaces();
        if (!isNext(text)) {
            throw unreadable(text);
        }
        at += text.length();
    }

    private void skipSpaces() {
        while (at < path.length() && Character.isWhitespace(path.charAt(at))) {
            at++;
        }
    }

    private IllegalArgumentException unreadable(String wanted) {
        return new IllegalArgumentException(
                "Not a path that can be read: " + path + " wants " + wanted + " at character " + (at + 1));
    }
}
