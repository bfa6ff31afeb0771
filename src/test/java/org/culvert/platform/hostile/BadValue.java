package org.culvert.platform.hostile;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** What may stand in the place of a value, as JSON text; chosen by us, from common practice (no source). */
final class BadValue {
    /** Texts that can be kept, and that must come back as they went in: nothing reads them as anything but words. */
    static final List<String> WORDS = List.of(
            "'; DROP TABLE calls; --",
            "' OR '1'='1",
            "%",
            "_",
            "\\",
            "\\x00",
            "<script>window.hit=1</script>",
            "\"><img src=x onerror=window.hit=1>",
            "javascript:window.hit=1",
            "{inject:frame.csrf}",
            "${jndi:ldap://127.0.0.1/a}",
            "{#include layout /}",
            "../../../etc/passwd",
            "a\r\nSet-Cookie: a=b",
            "=HYPERLINK(\"http://127.0.0.1/\")",
            "\u202eevil\u202c",
            "e\u0301\u0301\u0301\u0301",
            "\ud83e\udd94\ufe0f\u200d",
            "NULL");

    private BadValue() {}

    static List<String> all(Random random) {
        List<String> values = new ArrayList<>(List.of(
                "null",
                "true",
                "0",
                "-0",
                "-1",
                "1e400",
                "-1e400",
                "9007199254740993",
                "9223372036854775808",
                "3.7",
                "91",
                "-91",
                "181",
                "NaN",
                "Infinity",
                "\"NaN\"",
                "\"Infinity\"",
                "\"91\"",
                "\"1e400\"",
                "[]",
                "{}",
                "[[]]",
                "[null]",
                "[\"\"]",
                "{\"a\":1}",
                "{\"\":null}",
                "\"\"",
                "\" \"",
                "\"\\u00a0\"",
                "\"0000-01-01\"",
                "\"+999999999-12-31\"",
                "\"1500-01-01\"",
                "\"2026-02-30\"",
                "\"2026-01-01T00:00:00\"",
                "\"0000-01-01T00:00:00Z\"",
                "\"+999999999-12-31T23:59:59Z\"",
                "\"1500-06-01T00:00:00Z\"",
                "\"9999-12-31T23:59:59Z\"",
                "\"9999-12-31\"",
                "\"-4800-01-01T00:00:00Z\"",
                "\"2026-02-30T00:00:00Z\"",
                "1e18",
                "99999999999999",
                "1e-400",
                "\"00000000-0000-0000-0000-000000000000\"",
                "\"not-an-identifier\"",
                "\"1-1-1-1-1\"",
                "\"\\u0000\"",
                "\"a\\u0000b\"",
                "\"\\ud800\"",
                "\"\\udc00x\"",
                "\"\\u0007\\u001b[31m\"",
                "\"\\uffff\\ufeff\""));
        for (String words : WORDS) {
            values.add(Contract.JSON.getNodeFactory().textNode(words).toString());
        }
        values.add('"' + "x".repeat(100_000) + '"');
        values.add('"' + "\\ud83e\\udd94".repeat(9_000) + '"');
        values.add('"' + noise(random, 1_990) + '"');
        values.add('"' + noise(random, 190) + '"');
        values.add("1".repeat(5_000));
        values.add("[" + "1,".repeat(20_000) + "1]");
        values.add("[".repeat(10_000) + "]".repeat(10_000));
        values.add("{\"a\":".repeat(10_000) + "1" + "}".repeat(10_000));
        return values;
    }

    /** Characters of three octets each that do not compress, so that an index has to take them as they are. */
    private static String noise(Random random, int length) {
        var noise = new StringBuilder();
        for (int i = 0; i < length; i++) {
            noise.append((char) (0x4e00 + random.nextInt(0x5000)));
        }
        return noise.toString();
    }

    /** Whole bodies that no operation can mean. */
    static List<String> bodies(String good) {
        return new ArrayList<>(List.of(
                "",
                "null",
                "[",
                "{",
                "]",
                "\"",
                "1",
                "true",
                "{}",
                "[]",
                "[null]",
                "[[]]",
                "{\"noSuchField\":1}",
                "\u0000",
                "\ufeff{}",
                good + good,
                good + "x",
                good.substring(0, good.length() / 2),
                good.replaceFirst("\\{", "{\"noSuchField\":1,"),
                good.replaceFirst("\\{(\"[^\"]+\":)", "{$1null,$1"),
                "[".repeat(10_000),
                "{\"a\":".repeat(10_000),
                "{\"a\":\"" + "x".repeat(1_000_000) + "\"}",
                " ".repeat(1_100_000) + good,
                "{'a':1}",
                "{a:1}",
                "/* a */{}",
                "<xml/>",
                "a=1&b=2"));
    }

    /** Already encoded for an address. */
    static List<String> parameters() {
        return new ArrayList<>(List.of(
                "",
                "abc",
                "-1",
                "0",
                "99999999999",
                "1e3",
                "NaN",
                "junk",
                "%00",
                "%ff",
                "%F0%9F%A6%94",
                "%27%3B--",
                "%25",
                "_",
                "%5C",
                "1,2",
                "1,2,3,4",
                "NaN,NaN,NaN,NaN",
                "200,100,-200,-100",
                "2026-02-30",
                "%2B999999999-12-31T23:59:59Z",
                "0000-01-01T00:00:00Z",
                "-4800-01-01T00:00:00Z",
                "9999-12-31T23:59:59Z",
                "2026-01-01T00:00:00",
                "%3Cscript%3E",
                "$%7Bjndi:a%7D",
                "%ED%A0%80",
                "1-1-1-1-1",
                "x".repeat(3_000)));
    }
}
