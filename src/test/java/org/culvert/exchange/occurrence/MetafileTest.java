package org.culvert.exchange.occurrence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The metafile as it is written keeps every rule, and one with a fault breaks the rule of that fault. */
class MetafileTest {
    private static final List<ArchiveTerms.Column> COLUMNS = ArchiveTerms.columns(null);
    private static final String WRITTEN = ArchiveXml.meta(COLUMNS);

    private static List<String> broken(String metafile) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return MetafileRules.brokenBy(
                factory.newDocumentBuilder().parse(new ByteArrayInputStream(metafile.getBytes(StandardCharsets.UTF_8))),
                Set.of("meta.xml", "eml.xml", "occurrence.csv"),
                Map.of("occurrence.csv", COLUMNS.size()));
    }

    @Test
    void whatIsWrittenKeepsEveryRule() throws Exception {
        assertThat(broken(WRITTEN)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "http://rs.tdwg.org/dwc/text/ | http://example.org/ | 2.1 archive",
                "\"eml.xml\" | \"other.xml\" | 2.1.1 metadata",
                "</core> | </core><core rowType=\"urn:x\"><files><location>occurrence.csv</location></files><field term=\"urn:y\" default=\"z\"/></core> | 2.1.2 one core",
                "</core> | </core><more/> | 2.1.2 nothing else",
                "rowType=\"http | rowType=\" | 2.2.1 rowType",
                "fieldsTerminatedBy=\",\" | fieldsTerminatedBy=\"\" | 2.2.1 fieldsTerminatedBy",
                "linesTerminatedBy=\"\\r\\n\" | linesTerminatedBy=\"x\" | 2.2.1 linesTerminatedBy",
                "fieldsEnclosedBy=\"&quot;\" | fieldsEnclosedBy=\",\" | 2.2.1 fieldsEnclosedBy",
                "\"UTF-8\" fields | \"UTF-88\" fields | 2.2.1 encoding",
                "ignoreHeaderLines=\"1\" | ignoreHeaderLines=\"one\" | 2.2.1 ignoreHeaderLines",
                "ignoreHeaderLines=\"1\" | dateFormat=\"d.m.y\" | 2.2.1 dateFormat",
                "ignoreHeaderLines=\"1\" | colour=\"red\" | schema core has no colour",
                "<files><location>occurrence.csv</location></files> | `` | 2.2.2 one files",
                "<location>occurrence.csv</location> | `` | 2.3 location",
                ">occurrence.csv< | >elsewhere.csv< | 2.3.1 location elsewhere.csv",
                "<id index=\"0\"></id> | <id index=\"99\"></id> | 2.2.2 index of id",
                "<id index=\"0\"></id> | <id index=\"0\"></id><id index=\"1\"></id> | schema one id",
                "<id index=\"0\"></id> | <field index=\"0\" term=\"urn:x\"/><id index=\"0\"/> | schema files, id, fields",
                "</core> | </core><extension rowType=\"urn:x\"><files><location>occurrence.csv</location></files><field term=\"urn:y\" default=\"z\"/></extension> | 2.2.2 coreid",
                "<field index=\"1\" | <field index=\"0\" | 2.4.1 index twice",
                "<field index=\"1\" | <field index=\"20\" | 2.4.1 index",
                "<field index=\"1\" | <field index=\"-1\" | 2.4.1 index",
                "<field index=\"1\" | <field | 2.4.1 neither index nor default",
                "terms/basisOfRecord | terms/occurrenceID | 2.4 one field for each term",
                "http://rs.tdwg.org/dwc/terms/basisOfRecord | basisOfRecord | 2.4.1 term"
            })
    void aFaultBreaksItsRule(String there, String instead, String rule) throws Exception {
        String faulty = WRITTEN.replace(there, instead == null ? "" : instead);
        assertThat(faulty).isNotEqualTo(WRITTEN);
        assertThat(broken(faulty)).contains(rule);
    }
}
