package org.culvert.web.acts;

/** Names of the API's addresses in words of Java, by which message bundles know them. */
public final class WordKeys {
    private WordKeys() {}

    public static String of(String name) {
        var key = new StringBuilder();
        boolean up = false;
        for (char letter : name.toCharArray()) {
            if (letter == '-') {
                up = true;
            } else {
                key.append(up ? Character.toUpperCase(letter) : letter);
                up = false;
            }
        }
        return key.toString();
    }
}
