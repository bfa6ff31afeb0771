package org.culvert.web.paper;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Turns drawings that stand in a page as SVG into drawings on paper: shapes as a {@link Paper#DRAWING}, words as text of the page
 * over it. Shapes are those that {@link Drawing} knows, with their paint as attributes; a unit of the {@code viewBox} is a pixel,
 * however wide a screen would draw it, or the share of one that an element around it says as {@code data-drawn-at}.
 */
final class SvgOnPaper {
    private static final double USUAL_SIZE = 9;

    /** From the top of a line of text to the line that letters stand on, as a share of the size. */
    private static final double ASCENT = 0.95;

    /** Smaller words could not be read. */
    private static final double LEAST_SIZE = 7.5;

    private static final double LINE = 1.2;
    private static final double WORDS_WIDTH = 240;

    private SvgOnPaper() {}

    static Document read(String xhtml) {
        try {
            var factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
            factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            var builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null);
            Document page = builder.parse(new InputSource(new StringReader(xhtml)));
            drawings(page).forEach(SvgOnPaper::replace);
            return page;
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalStateException("a page for paper is not well-formed", e);
        }
    }

    private static List<Element> drawings(Document page) {
        NodeList found = page.getElementsByTagName("svg");
        List<Element> drawings = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            drawings.add((Element) found.item(i));
        }
        return drawings;
    }

    private static void replace(Element svg) {
        Document page = svg.getOwnerDocument();
        String[] box = svg.getAttribute("viewBox").split(" ", -1);
        double scale = scale(svg);
        String size = String.format(
                Locale.ROOT,
                "width: %.1fpx; height: %.1fpx",
                scale * Double.parseDouble(box[2]),
                scale * Double.parseDouble(box[3]));
        Element around = page.createElement("div");
        around.setAttribute("class", "drawing");
        around.setAttribute("style", "position: relative; " + size);
        Element drawing = page.createElement("object");
        drawing.setAttribute("type", Paper.DRAWING);
        drawing.setAttribute("style", "display: block; " + size);
        drawing.setAttribute(Drawing.SCALE, Double.toString(scale));
        around.appendChild(drawing);
        var told = new StringBuilder();
        for (Node node = svg.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element part) {
                switch (part.getTagName()) {
                    case "title", "desc" ->
                        told.append(told.isEmpty() ? "" : ". ")
                                .append(part.getTextContent().strip());
                    case "text" -> around.appendChild(words(page, part, scale));
                    default -> drawing.appendChild(shape(part));
                }
            }
        }
        drawing.setAttribute("alt", told.toString());
        svg.getParentNode().replaceChild(around, svg);
    }

    private static double scale(Element svg) {
        for (Node node = svg.getParentNode(); node instanceof Element around; node = node.getParentNode()) {
            if (around.hasAttribute("data-drawn-at")) {
                return Double.parseDouble(around.getAttribute("data-drawn-at"));
            }
        }
        return 1;
    }

    private static Node shape(Element part) {
        Element shape = (Element) part.cloneNode(false);
        for (String paint : new String[] {"fill", "stroke"}) {
            if (shape.getAttribute(paint).equals("none")) {
                shape.removeAttribute(paint);
            }
        }
        return shape;
    }

    private static Element words(Document page, Element text, double scale) {
        double size = Math.max(LEAST_SIZE, scale * number(text, "font-size", USUAL_SIZE));
        double x = scale * number(text, "x", 0);
        String anchor = text.getAttribute("text-anchor");
        double left = anchor.equals("start") ? x : anchor.equals("end") ? x - WORDS_WIDTH : x - WORDS_WIDTH / 2;
        Element words = page.createElement("span");
        words.setAttribute(
                "style",
                String.format(
                        Locale.ROOT,
                        "position: absolute; left: %.1fpx; top: %.1fpx; width: %.0fpx; font-size: %.1fpx; line-height:"
                                + " %.1fpx; text-align: %s",
                        left,
                        scale * number(text, "y", 0) - ASCENT * size,
                        WORDS_WIDTH,
                        size,
                        LINE * size,
                        anchor.equals("start") ? "left" : anchor.equals("end") ? "right" : "center"));
        words.setTextContent(text.getTextContent().strip());
        return words;
    }

    private static double number(Element part, String name, double usual) {
        return part.hasAttribute(name) ? Double.parseDouble(part.getAttribute(name)) : usual;
    }
}
