package org.culvert.web.paper;

import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Draws the children of an {@code object} one over the other: {@code path}, {@code line}, {@code rect} and {@code circle} with the
 * attributes that SVG 1.1 gives them, of the commands of a path M, L, A (an arc of a circle, the shorter way) and Z alone. Each
 * has {@code fill} or {@code stroke} (six hexadecimal digits) with {@code stroke-width} and {@code stroke-dasharray}. A unit is
 * a CSS pixel, unless {@link #SCALE} says otherwise. Words stand over a drawing as text of the page, so that they can be read, searched and copied.
 */
final class Drawing implements FSObjectDrawer {
    /** Attribute of the object: how many pixels a unit is, where it is not one. */
    static final String SCALE = "data-scale";

    private static final int HEXADECIMAL = 16;

    @Override
    public @Nullable Map<Shape, String> drawObject(
            Element drawing,
            double x,
            double y,
            double width,
            double height,
            OutputDevice device,
            RenderingContext context,
            int dotsPerPixel) {
        var onPage = AffineTransform.getTranslateInstance(x, y);
        double scale = dotsPerPixel * number(drawing, SCALE, 1);
        onPage.scale(scale, scale);
        device.pushClip(new Rectangle2D.Double(x, y, width, height));
        for (Node node = drawing.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element part) {
                Shape shape = onPage.createTransformedShape(shape(part));
                if (part.hasAttribute("fill")) {
                    device.setColor(colour(part.getAttribute("fill")));
                    device.fill(shape);
                }
                if (part.hasAttribute("stroke")) {
                    device.setColor(colour(part.getAttribute("stroke")));
                    device.setStroke(stroke(part, dotsPerPixel));
                    device.draw(shape);
                }
            }
        }
        device.popClip();
        return null;
    }

    private static FSRGBColor colour(String digits) {
        return new FSRGBColor(Integer.parseInt(digits.substring(1), HEXADECIMAL));
    }

    private static BasicStroke stroke(Element part, int dotsPerPixel) {
        float width = (float) (number(part, "stroke-width", 1) * dotsPerPixel);
        String dashes = part.getAttribute("stroke-dasharray");
        if (dashes.isEmpty()) {
            return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
        }
        String[] lengths = dashes.split(" ", -1);
        float[] pattern = new float[lengths.length];
        for (int i = 0; i < pattern.length; i++) {
            pattern[i] = Float.parseFloat(lengths[i]) * dotsPerPixel;
        }
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, pattern, 0);
    }

    static Shape shape(Element part) {
        return switch (part.getTagName()) {
            case "path" -> path(part.getAttribute("d"));
            case "line" ->
                new Line2D.Double(number(part, "x1"), number(part, "y1"), number(part, "x2"), number(part, "y2"));
            case "rect" ->
                new Rectangle2D.Double(
                        number(part, "x"), number(part, "y"), number(part, "width"), number(part, "height"));
            case "circle" ->
                new Ellipse2D.Double(
                        number(part, "cx") - number(part, "r"),
                        number(part, "cy") - number(part, "r"),
                        2 * number(part, "r"),
                        2 * number(part, "r"));
            default -> throw new IllegalArgumentException("nothing is drawn of " + part.getTagName());
        };
    }

    private static double number(Element part, String name) {
        return Double.parseDouble(part.getAttribute(name));
    }

    private static double number(Element part, String name, double usual) {
        return part.hasAttribute(name) ? number(part, name) : usual;
    }

    static Path2D path(String commands) {
        var path = new Path2D.Double();
        var reader = new PathReader(commands);
        while (reader.goesOn()) {
            char command = reader.command();
            switch (command) {
                case 'M' -> path.moveTo(reader.number(), reader.number());
                case 'L' -> path.lineTo(reader.number(), reader.number());
                case 'Z' -> path.closePath();
                case 'A' -> {
                    double radius = reader.number();
                    reader.number();
                    reader.number();
                    reader.number();
                    boolean clockwise = reader.number() > 0;
                    arc(path, radius, clockwise, reader.number(), reader.number());
                }
                default -> throw new IllegalArgumentException("no command of a path: " + command);
            }
        }
        return path;
    }

    /** Commands and numbers of a path; spaces and commas between them say nothing. A report has some ten thousand of them. */
    private static final class PathReader {
        private final String text;
        private int at;

        PathReader(String text) {
            this.text = text;
        }

        boolean goesOn() {
            while (at < text.length() && (text.charAt(at) == ' ' || text.charAt(at) == ',')) {
                at++;
            }
            return at < text.length();
        }

        char command() {
            return text.charAt(at++);
        }

        double number() {
            int from = goesOn() ? at : text.length();
            while (at < text.length() && "0123456789.-+eE".indexOf(text.charAt(at)) >= 0) {
                at++;
            }
            return Double.parseDouble(text.substring(from, at));
        }
    }

    /** The shorter arc of a circle to a point, as straight pieces of three degrees. */
    private static void arc(Path2D path, double radius, boolean clockwise, double toX, double toY) {
        double fromX = path.getCurrentPoint().getX();
        double fromY = path.getCurrentPoint().getY();
        double chord = Math.hypot(toX - fromX, toY - fromY);
        double r = Math.max(radius, chord / 2);
        double toMiddle = Math.sqrt(Math.max(0, r * r - chord * chord / 4));
        double side = clockwise ? 1 : -1;
        double middleX = (fromX + toX) / 2 - side * toMiddle * (toY - fromY) / chord;
        double middleY = (fromY + toY) / 2 + side * toMiddle * (toX - fromX) / chord;
        double begin = Math.atan2(fromY - middleY, fromX - middleX);
        double turn = 2 * Math.asin(Math.min(1, chord / (2 * r))) * side;
        int pieces = Math.max(1, (int) Math.ceil(Math.toDegrees(Math.abs(turn)) / 3));
        for (int i = 1; i < pieces; i++) {
            double angle = begin + turn * i / pieces;
            path.lineTo(middleX + r * Math.cos(angle), middleY + r * Math.sin(angle));
        }
        path.lineTo(toX, toY);
    }
}
