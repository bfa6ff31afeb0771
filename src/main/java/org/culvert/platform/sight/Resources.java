package org.culvert.platform.sight;

import java.util.Locale;

/** Names of resources in the table. */
public final class Resources {
    private Resources() {}

    /**
     * The name of a record: {@code CaseView} is {@code case}, and its nested {@code HandOverView} is {@code
     * case.hand-over}. A class around it that is no record gives no name.
     */
    public static String name(Class<?> record) {
        Class<?> outer = record.getEnclosingClass();
        String name = kebab(record.getSimpleName().replaceFirst("(?<=.)View$", ""));
        return outer != null && outer.isRecord() ? name(outer) + "." + name : name;
    }

    private static String kebab(String camel) {
        return camel.replaceAll("(?<=[a-z0-9])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
    }
}
