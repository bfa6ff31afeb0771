package org.culvert.exchange.occurrence;

import java.io.StringWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.jspecify.annotations.Nullable;

/** The two papers of an archive: {@code meta.xml} by the Darwin Core text guide, and {@code eml.xml} by EML 2.1.1. */
final class ArchiveXml {
    private static final String TEXT = "http://rs.tdwg.org/dwc/text/";
    private static final String EML = "eml://ecoinformatics.org/eml-2.1.1";

    private ArchiveXml() {}

    /**
     * What the whole archive is.
     *
     * @param packageId another one for other content
     * @param creator name of the network
     * @param licence address of the licence, or null where none is given
     * @param contact address for letters, or null
     */
    record Dataset(
            String packageId,
            String title,
            String creator,
            LocalDate publishedOn,
            String about,
            @Nullable String licence,
            @Nullable String contact) {}

    /** Says which column of {@code occurrence.csv} holds what. */
    static String meta(List<ArchiveTerms.Column> columns) {
        return write(xml -> {
            xml.start("archive");
            xml.attribute("xmlns", TEXT);
            xml.attribute("metadata", "eml.xml");
            xml.start("core");
            xml.attribute("encoding", "UTF-8");
            xml.attribute("fieldsTerminatedBy", ",");
            xml.attribute("linesTerminatedBy", "\\r\\n");
            xml.attribute("fieldsEnclosedBy", "\"");
            xml.attribute("ignoreHeaderLines", "1");
            xml.attribute("rowType", ArchiveTerms.DWC + "Occurrence");
            xml.start("files");
            xml.element("location", "occurrence.csv");
            xml.end();
            xml.start("id");
            xml.attribute("index", "0");
            xml.end();
            for (int i = 0; i < columns.size(); i++) {
                xml.start("field");
                xml.attribute("index", Integer.toString(i));
                xml.attribute("term", columns.get(i).term());
                xml.end();
            }
            xml.end();
            xml.end();
        });
    }

    /** Elements in the order of GBIF's profile (gbif/eml-profile, eml-gbif-profile.xsd, commit f2d5548). */
    static String eml(Dataset dataset) {
        return write(xml -> {
            xml.start("eml:eml");
            xml.attribute("xmlns:eml", EML);
            xml.attribute("packageId", dataset.packageId());
            xml.attribute("system", "culvert");
            xml.attribute("scope", "system");
            xml.attribute("xml:lang", "en");
            xml.start("dataset");
            xml.element("title", dataset.title());
            party(xml, "creator", dataset);
            party(xml, "metadataProvider", dataset);
            xml.element("pubDate", dataset.publishedOn().toString());
            xml.element("language", "en");
            xml.start("abstract");
            xml.element("para", dataset.about());
            xml.end();
            xml.start("intellectualRights");
            xml.start("para");
            String licence = dataset.licence();
            if (licence == null) {
                xml.text("No licence is given.");
            } else {
                xml.text("These data may be used under ");
                xml.start("ulink");
                xml.attribute("url", licence);
                xml.element("citetitle", licence);
                xml.end();
                xml.text(".");
            }
            xml.end();
            xml.end();
            party(xml, "contact", dataset);
            xml.end();
            xml.end();
        });
    }

    private static void party(Writer xml, String role, Dataset dataset) {
        xml.start(role);
        xml.element("organizationName", dataset.creator());
        String contact = dataset.contact();
        if (contact != null) {
            xml.element("electronicMailAddress", contact);
        }
        xml.end();
    }

    private static String write(Consumer<Writer> what) {
        var text = new StringWriter();
        try {
            XMLStreamWriter out = XMLOutputFactory.newInstance().createXMLStreamWriter(text);
            out.writeStartDocument("UTF-8", "1.0");
            what.accept(new Writer(out));
            out.writeEndDocument();
            out.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("text is written to memory", e);
        }
        return text.toString();
    }

    /** Escapes, and leaves out what XML 1.0 cannot hold. */
    private record Writer(XMLStreamWriter out) {
        void start(String name) {
            run(() -> out.writeStartElement(name));
        }

        void end() {
            run(out::writeEndElement);
        }

        void attribute(String name, String value) {
            run(() -> out.writeAttribute(name, held(value)));
        }

        void text(String value) {
            run(() -> out.writeCharacters(held(value)));
        }

        void element(String name, String value) {
            start(name);
            text(value);
            end();
        }

        private static String held(String value) {
            return value.codePoints()
                    .filter(point -> point == '\t'
                            || point == '\n'
                            || point == '\r'
                            || point >= 0x20 && point <= 0xD7FF
                            || point >= 0xE000 && point <= 0xFFFD
                            || point >= 0x10000)
                    .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                    .toString();
        }

        private interface Step {
            void run() throws XMLStreamException;
        }

        private static void run(Step step) {
            try {
                step.run();
            } catch (XMLStreamException e) {
                throw new IllegalStateException("text is written to memory", e);
            }
        }
    }
}
