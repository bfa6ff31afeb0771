package org.culvert.exchange.occurrence;

import java.net.URI;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.w3c.dom.Attr;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The rules for the metafile of an archive: what the Darwin Core text guide of 2023-09-13 says must be (tdwg/dwc,
 * docs/text/2023-09-13.md, commit 1ee12dd), by its sections, and what its schema allows (docs/text/tdwg_dwc_text.xsd, commit
 * 6e645c9), in words of our own.
 */
final class MetafileRules {
    private static final String TEXT = "http://rs.tdwg.org/dwc/text/";
    private static final Set<String> OF_FILES = Set.of(
            "linesTerminatedBy",
            "fieldsTerminatedBy",
            "fieldsEnclosedBy",
            "ignoreHeaderLines",
            "rowType",
            "encoding",
            "dateFormat");
    private static final Set<String> OF_FIELDS = Set.of("index", "term", "default", "vocabulary", "delimitedBy");
    private static final Pattern WHOLE = Pattern.compile("\\d+");
    private static final Pattern DATE_FORMAT = Pattern.compile("(?:YYYY|MM|DD)[-/]?(?:YYYY|MM|DD)[-/]?(?:YYYY|MM|DD)");

    private final List<String> broken = new ArrayList<>();
    private final Map<String, Integer> columnsByFile;
    private final Set<String> files;

    private MetafileRules(Set<String> files, Map<String, Integer> columnsByFile) {
        this.files = files;
        this.columnsByFile = columnsByFile;
    }

    /**
     * The rules that a metafile breaks, each with its section.
     *
     * @param files names of all files of the archive
     * @param columnsByFile how many columns each table has
     */
    static List<String> brokenBy(Document metafile, Set<String> files, Map<String, Integer> columnsByFile) {
        var rules = new MetafileRules(files, columnsByFile);
        rules.archive(metafile.getDocumentElement());
        return rules.broken;
    }

    private void want(boolean kept, String rule) {
        if (!kept) {
            broken.add(rule);
        }
    }

    private void archive(Element archive) {
        want(files.contains("meta.xml"), "2 named meta.xml");
        want(isNamed(archive, "archive"), "2.1 archive");
        attributes(archive, Set.of("metadata"), "schema archive");
        String metadata = archive.getAttribute("metadata");
        want(metadata.isEmpty() || isThere(metadata), "2.1.1 metadata");
        List<Element> parts = children(archive);
        List<Element> cores = named(parts, "core");
        List<Element> extensions = named(parts, "extension");
        want(cores.size() == 1, "2.1.2 one core");
        want(parts.size() == cores.size() + extensions.size(), "2.1.2 nothing else");
        want(parts.isEmpty() || isNamed(parts.get(0), "core"), "schema core first");
        cores.forEach(core -> table(core, "id", !extensions.isEmpty()));
        extensions.forEach(extension -> table(extension, "coreid", true));
    }

    private void table(Element table, String key, boolean needsKey) {
        attributes(table, OF_FILES, "schema " + table.getLocalName());
        want(isUri(table.getAttribute("rowType")), "2.2.1 rowType");
        String fields = told(table, "fieldsTerminatedBy", ",");
        String lines = told(table, "linesTerminatedBy", "\n");
        String enclosed = told(table, "fieldsEnclosedBy", "\"");
        want(fields.length() == 1, "2.2.1 fieldsTerminatedBy");
        want(Set.of("\n", "\r\n", "\r").contains(lines), "2.2.1 linesTerminatedBy");
        want(enclosed.length() <= 1 && !enclosed.equals(fields) && !enclosed.equals(lines), "2.2.1 fieldsEnclosedBy");
        want(isCharset(told(table, "encoding", "UTF-8")), "2.2.1 encoding");
        want(isWhole(told(table, "ignoreHeaderLines", "0")), "2.2.1 ignoreHeaderLines");
        want(DATE_FORMAT.matcher(told(table, "dateFormat", "YYYY-MM-DD")).matches(), "2.2.1 dateFormat");

        List<Element> parts = children(table);
        List<Element> places = named(parts, "files");
        List<Element> keys = named(parts, key);
        List<Element> columns = named(parts, "field");
        want(places.size() == 1, "2.2.2 one files");
        want(keys.size() <= 1, "schema one " + key);
        want(!needsKey || keys.size() == 1, "2.2.2 " + key);
        want(!columns.isEmpty(), "2.2.2 field");
        List<Element> inOrder = new ArrayList<>(places);
        inOrder.addAll(keys);
        inOrder.addAll(columns);
        want(parts.equals(inOrder), "schema files, " + key + ", fields");
        int width = places.isEmpty() ? 0 : width(places.get(0));
        keys.forEach(one -> {
            attributes(one, Set.of("index"), "schema " + key);
            want(isIndex(one.getAttribute("index"), width), "2.2.2 index of " + key);
        });
        fields(columns, width);
    }

    /** Columns of the narrowest file of a table. */
    private int width(Element place) {
        List<Element> locations = named(children(place), "location");
        want(!locations.isEmpty() && locations.size() == children(place).size(), "2.3 location");
        int width = Integer.MAX_VALUE;
        for (Element location : locations) {
            String name = location.getTextContent();
            want(isThere(name), "2.3.1 location " + name);
            width = Math.min(width, columnsByFile.getOrDefault(name, 0));
        }
        return width;
    }

    private void fields(List<Element> columns, int width) {
        Set<String> indices = new HashSet<>();
        Set<String> terms = new HashSet<>();
        for (Element field : columns) {
            attributes(field, OF_FIELDS, "schema field");
            String term = field.getAttribute("term");
            want(isUri(term), "2.4.1 term");
            want(terms.add(term), "2.4 one field for each term");
            if (field.hasAttribute("index")) {
                want(isIndex(field.getAttribute("index"), width), "2.4.1 index");
                want(indices.add(field.getAttribute("index")), "2.4.1 index twice");
            } else {
                want(field.hasAttribute("default"), "2.4.1 neither index nor default");
            }
            want(!field.hasAttribute("vocabulary") || isUri(field.getAttribute("vocabulary")), "2.4.1 vocabulary");
            want(children(field).isEmpty(), "schema field is empty");
        }
    }

    private void attributes(Element element, Set<String> known, String rule) {
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            Attr attribute = (Attr) element.getAttributes().item(i);
            boolean ofXml = attribute.getName().startsWith("xmlns")
                    || "http://www.w3.org/2001/XMLSchema-instance".equals(attribute.getNamespaceURI());
            want(ofXml || known.contains(attribute.getName()), rule + " has no " + attribute.getName());
        }
    }

    private static String told(Element table, String attribute, String usual) {
        return table.hasAttribute(attribute)
                ? table.getAttribute(attribute)
                        .replace("\\t", "\t")
                        .replace("\\r", "\r")
                        .replace("\\n", "\n")
                : usual;
    }

    /** A file beside the metafile, or an address on the web. */
    private boolean isThere(String location) {
        String name = location.startsWith("./") ? location.substring(2) : location;
        return files.contains(name) || location.matches("(?:https?|ftp)://.+");
    }

    private static boolean isUri(String text) {
        return passes(text, one -> URI.create(one).isAbsolute());
    }

    private static boolean isCharset(String text) {
        return passes(text, Charset::isSupported);
    }

    private static boolean passes(String text, Predicate<String> test) {
        try {
            return test.test(text);
        } catch (IllegalArgumentException none) {
            return false;
        }
    }

    private static boolean isWhole(String text) {
        return WHOLE.matcher(text).matches();
    }

    private static boolean isIndex(String text, int width) {
        return isWhole(text) && Integer.parseInt(text) < width;
    }

    private static boolean isNamed(Element element, String name) {
        return name.equals(element.getLocalName()) && TEXT.equals(element.getNamespaceURI());
    }

    private static List<Element> named(List<Element> elements, String name) {
        return elements.stream().filter(element -> isNamed(element, name)).toList();
    }

    private static List<Element> children(Element parent) {
        List<Element> children = new ArrayList<>();
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }
}
