package org.culvert.web.paper;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class PaperTest {
    private static final Instant THEN = Instant.parse("2024-03-01T10:00:00Z");

    @Test
    void wordsCanBeReadAndTheirFontsAreInTheFile() throws IOException {
        try (PDDocument document =
                Loader.loadPDF(Paper.print(page("<p>Ährenweg, Größe 5 m², <b>дорога</b></p>"), THEN))) {
            assertThat(new PDFTextStripper().getText(document)).contains("Ährenweg, Größe 5 m², дорога");
            for (COSName name : document.getPage(0).getResources().getFontNames()) {
                PDFont font = document.getPage(0).getResources().getFont(name);
                assertThat(font.isEmbedded()).as(font.getName()).isTrue();
            }
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("A title");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo(THEN);
        }
    }

    @Test
    void aLetterThatNoFontHasIsABoxAndTheRestStays() throws IOException {
        try (PDDocument document = Loader.loadPDF(Paper.print(page("<p>before 道 after</p>"), THEN))) {
            assertThat(new PDFTextStripper().getText(document)).contains("before \u25a1 after");
        }
    }

    @Test
    void theSameIsTheSameOctets() {
        String page = page("<p>the same</p><object type=\"drawing\" alt=\"a line\" style=\"width: 90px; height: 20px\">"
                + "<line x1=\"0\" y1=\"0\" x2=\"90\" y2=\"20\" stroke=\"#a3301a\"/></object>");
        assertThat(Paper.print(page, THEN)).isEqualTo(Paper.print(page, THEN));
    }

    /** What a screen draws is drawn on paper, and its words are text that can be searched. */
    @Test
    void svgIsDrawnAndItsWordsAreText() throws IOException {
        String svg = "<svg viewBox=\"0 0 90 40\"><title>A picture</title><desc>of a line</desc>"
                + "<line x1=\"0\" y1=\"0\" x2=\"90\" y2=\"20\" class=\"axis\" stroke=\"#a3301a\"/>"
                + "<path d=\"M0 0L9 9\" fill=\"none\" stroke=\"#14514a\"/>"
                + "<text x=\"45\" y=\"36\" text-anchor=\"middle\" font-size=\"10\">under it</text></svg>";
        byte[] with = Paper.print(page("<p>before</p>" + svg), THEN);
        try (PDDocument document = Loader.loadPDF(with)) {
            assertThat(new PDFTextStripper().getText(document)).contains("before", "under it");
        }
        assertThat(with).isNotEqualTo(Paper.print(page("<p>before</p>" + svg.replaceAll("<line[^>]*>", "")), THEN));
    }

    @Test
    void nothingIsFetchedFromAnywhere() throws IOException {
        var asked = new AtomicInteger();
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            asked.incrementAndGet();
            exchange.sendResponseHeaders(404, -1);
            exchange.close();
        });
        server.start();
        try {
            String address = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
            Paper.print(
                    page("<img alt=\"\" src=\"" + address + "a.png\"/><link rel=\"stylesheet\" href=\"" + address
                            + "a.css\"/><img alt=\"\" src=\"file:///etc/hostname\"/>"
                            + "<p style=\"background-image: url(" + address + "b.png)\">words</p>"),
                    THEN);
        } finally {
            server.stop(0);
        }
        assertThat(asked).hasValue(0);
    }

    private static String page(String body) {
        return "<html lang=\"en\"><head><title>A title</title><meta name=\"subject\" content=\"of a test\"/>"
                + "<style>body { font-family: \"Liberation Sans\" }</style></head><body>" + body + "</body></html>";
    }
}
