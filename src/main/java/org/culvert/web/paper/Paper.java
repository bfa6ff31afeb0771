package org.culvert.web.paper;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.DefaultObjectDrawerFactory;
import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.logging.Level;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.jboss.logging.Logger;

/**
 * Lays well-formed XHTML out on pages, as tagged PDF (ISO 32000-1; its tags follow ISO 14289-1). Fonts are brought along and
 * embedded, so that paper is the same wherever it is made; what they have no letter for is shown as a box.
 *
 * <p>An {@code object} of the type {@link #DRAWING} is drawn from its children: see {@link Drawing}. SVG of a page becomes such a
 * one: see {@link SvgOnPaper}.
 */
public final class Paper {
    static final String DRAWING = "drawing";

    private static final Logger LOG = Logger.getLogger(Paper.class);

    static {
        // It would write to the console by itself
        XRLog.setLoggingEnabled(false);
    }

    private static final String FAMILY = "Liberation Sans";
    private static final String BOX = "\u25a1";
    private static final int REGULAR = 400;
    private static final int BOLD = 700;
    private static final int TABLE_COUNT_AT = 4;
    private static final int FIRST_TABLE_AT = 12;
    private static final int TABLE_LENGTH = 16;
    private static final Map<String, byte[]> FONTS = new ConcurrentHashMap<>();

    private Paper() {}

    /**
     * @param xhtml with the title, the language and a description in its head
     * @param madeAt what the document says of when it was made: the same input gives the same octets
     */
    public static byte[] print(String xhtml, Instant madeAt) {
        var builder = new PdfRendererBuilder();
        builder.useFastMode();
        builder.usePdfUaAccessibility(true);
        builder.withDiagnosticConsumer(Paper::tell);
        builder.withProducer("Culvert");
        builder.useReplacementText(BOX);
        builder.useFont(() -> font("Regular"), FAMILY, REGULAR, FontStyle.NORMAL, true);
        builder.useFont(() -> font("Bold"), FAMILY, BOLD, FontStyle.NORMAL, true);
        builder.useFont(() -> font("Italic"), FAMILY, REGULAR, FontStyle.ITALIC, true);
        builder.useExternalResourceAccessControl(
                (address, kind) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
        var drawers = new DefaultObjectDrawerFactory();
        drawers.registerDrawer(DRAWING, new Drawing());
        builder.useObjectDrawerFactory(drawers);
        builder.withW3cDocument(SvgOnPaper.read(xhtml), null);
        var octets = new ByteArrayOutputStream();
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            PDDocumentInformation about = document.getDocumentInformation();
            about.setCreationDate(GregorianCalendar.from(madeAt.atZone(ZoneOffset.UTC)));
            document.setDocumentId(madeAt.toEpochMilli());
            document.save(octets);
        } catch (IOException e) {
            throw new IllegalStateException("a page cannot be printed", e);
        }
        return octets.toByteArray();
    }

    private static void tell(Diagnostic diagnostic) {
        if (diagnostic.getLevel().intValue() >= Level.WARNING.intValue()) {
            LOG.warn(diagnostic.getFormattedMessage());
        }
    }

    private static InputStream font(String style) {
        return new ByteArrayInputStream(FONTS.computeIfAbsent(style, Paper::readFont));
    }

    /**
     * Without its table of other shapes of letters (GSUB; ISO/IEC 14496-22, 4.5 for the directory of tables), for which the library
     * would search every word anew: that took a third of the time of a report, and Latin letters stand as they are.
     */
    private static byte[] readFont(String style) {
        String name = "/liberation/LiberationSans-" + style + ".ttf";
        try (InputStream from = Objects.requireNonNull(Paper.class.getResourceAsStream(name), name)) {
            byte[] font = from.readAllBytes();
            int tables = ByteBuffer.wrap(font).getShort(TABLE_COUNT_AT);
            for (int i = 0; i < tables; i++) {
                int tag = FIRST_TABLE_AT + i * TABLE_LENGTH;
                if (new String(font, tag, 4, StandardCharsets.US_ASCII).equals("GSUB")) {
                    font[tag] = '-';
                }
            }
            return font;
        } catch (IOException e) {
            throw new IllegalStateException("a font cannot be read", e);
        }
    }
}
