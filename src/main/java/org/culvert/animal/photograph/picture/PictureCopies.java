package org.culvert.animal.photograph.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.KeptFiles;
import org.jboss.logging.Logger;

/**
 * Copies of a picture to be shown: its pixels and nothing else, the right way up, as baseline JPEG.
 *
 * @param widthPixels of the original as it is stored; likewise the height
 * @param copy with a longest side of {@value #LONGEST} pixels at most
 * @param small for lists, with a longest side of {@value #SMALL} pixels at most
 * @param notes what is to be known of the file
 */
public record PictureCopies(int widthPixels, int heightPixels, byte[] copy, byte[] small, List<String> notes) {
    static final int LONGEST = 2048;
    static final int SMALL = 320;

    private static final Logger LOG = Logger.getLogger(PictureCopies.class);

    /** A progressive JPEG has about ten; each costs as much as the whole picture. */
    private static final int MOST_SCANS = 100;

    private static final float QUALITY = 0.85f;

    /** Readers and writers of Java itself: others may have been added by libraries. */
    private static final String OF_JAVA = "com.sun.imageio.plugins.";

    /**
     * Makes the copies. The number of pixels is read from the header before any is decoded.
     *
     * @param mediaType {@code image/jpeg} or {@code image/png}
     * @param octets that begin as such a file does
     * @param orientation which side the first row and column are, 1 to 8
     * @param mostPixels that are decoded
     * @throws InvalidException naming {@code content} where it is no picture that can be shown
     */
    public static PictureCopies of(String mediaType, byte[] octets, int orientation, long mostPixels) {
        byte[] picture = octets;
        if (mediaType.equals(KeptFiles.PNG)) {
            PngChunks chunks = PngChunks.of(octets);
            if (!chunks.isWhole()) {
                throw unreadable();
            }
            picture = chunks.picture();
        } else if (scans(octets) > MOST_SCANS) {
            throw InvalidException.of(
                    "content", "This picture has too many parts to be shown.", "a JPEG as cameras write them");
        }
        ImageReader reader = reader(mediaType);
        try (var input = new MemoryCacheImageInputStream(new ByteArrayInputStream(picture))) {
            reader.setInput(input, true, true);
            return copies(reader, orientation, mostPixels);
        } catch (InvalidException refused) {
            throw refused;
        } catch (IOException | RuntimeException wrong) {
            LOG.infof(
                    "A picture that was sent could not be read: %s",
                    wrong.getClass().getName());
            throw unreadable();
        } finally {
            reader.dispose();
        }
    }

    private static InvalidException unreadable() {
        return InvalidException.of(
                "content",
                "This picture cannot be read: it is cut off, damaged, or of a sort that no camera writes.",
                "the whole file, as a PNG or as a JPEG in colour or grey");
    }

    private static PictureCopies copies(ImageReader reader, int orientation, long mostPixels) throws IOException {
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > mostPixels) {
            throw InvalidException.of(
                    "content",
                    "This picture has " + width + " by " + height + " pixels.",
                    "a picture of at most " + mostPixels / 1_000_000 + " million pixels");
        }
        // Of large pictures every second or third pixel is read, so that never many more are held than are shown
        int step = Math.max(1, Math.max(width, height) / LONGEST);
        ImageReadParam sparsely = reader.getDefaultReadParam();
        sparsely.setSourceSubsampling(step, step, 0, 0);
        var warned = new AtomicBoolean();
        reader.addIIOReadWarningListener((source, warning) -> warned.set(true));
        BufferedImage read = reader.read(0, sparsely);
        List<String> notes = new ArrayList<>();
        if (warned.get()) {
            notes.add("The picture itself is damaged or cut off. Send it again, if it can be had whole.");
        }
        BufferedImage copy = shrunk(plain(read), orientation, LONGEST);
        return new PictureCopies(
                width, height, jpeg(copy), jpeg(shrunk(copy, Orientation.UPRIGHT, SMALL)), List.copyOf(notes));
    }

    /** Marks of the start of a scan (ISO/IEC 10918-1, B.1.1.3): what is compressed holds none of them. */
    private static int scans(byte[] octets) {
        int scans = 0;
        for (int i = 1; i < octets.length; i++) {
            if (octets[i] == (byte) 0xda && octets[i - 1] == (byte) 0xff) {
                scans++;
            }
        }
        return scans;
    }

    private static ImageReader reader(String mediaType) {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByMIMEType(mediaType);
        while (readers.hasNext()) {
            ImageReader reader = readers.next();
            if (reader.getClass().getName().startsWith(OF_JAVA)) {
                return reader;
            }
        }
        throw new IllegalStateException("this Java reads no " + mediaType);
    }

    private static ImageWriter writer() {
        Iterator<ImageWriter> writers = ImageIO.getImageWritersByMIMEType(KeptFiles.JPEG);
        while (writers.hasNext()) {
            ImageWriter writer = writers.next();
            if (writer.getClass().getName().startsWith(OF_JAVA)) {
                return writer;
            }
        }
        throw new IllegalStateException("this Java writes no " + KeptFiles.JPEG);
    }

    /** In plain red, green and blue; what can be seen through stands on white. */
    private static BufferedImage plain(BufferedImage read) {
        var plain = new BufferedImage(read.getWidth(), read.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D canvas = plain.createGraphics();
        try {
            canvas.setColor(Color.WHITE);
            canvas.fillRect(0, 0, plain.getWidth(), plain.getHeight());
            canvas.drawImage(read, 0, 0, null);
        } finally {
            canvas.dispose();
        }
        return plain;
    }

    /** Each pixel the mean of those that it stands for; a picture is never made larger. */
    private static BufferedImage shrunk(BufferedImage from, int orientation, int longest) {
        int fromWidth = from.getWidth();
        int fromHeight = from.getHeight();
        int side = Math.max(fromWidth, fromHeight);
        int width = side <= longest ? fromWidth : Math.max(1, Math.round((float) fromWidth * longest / side));
        int height = side <= longest ? fromHeight : Math.max(1, Math.round((float) fromHeight * longest / side));
        int[] pixels = from.getRGB(0, 0, fromWidth, fromHeight, null, 0, fromWidth);
        int[] means = new int[width * height];
        for (int y = 0; y < height; y++) {
            int top = (int) ((long) y * fromHeight / height);
            int bottom = Math.max(top + 1, (int) ((long) (y + 1) * fromHeight / height));
            for (int x = 0; x < width; x++) {
                int left = (int) ((long) x * fromWidth / width);
                int right = Math.max(left + 1, (int) ((long) (x + 1) * fromWidth / width));
                means[y * width + x] = mean(pixels, fromWidth, left, right, top, bottom);
            }
        }
        boolean over = Orientation.turnsOver(orientation);
        var seen = new BufferedImage(over ? height : width, over ? width : height, BufferedImage.TYPE_INT_RGB);
        seen.setRGB(
                0,
                0,
                seen.getWidth(),
                seen.getHeight(),
                Orientation.applied(orientation, means, width, height),
                0,
                seen.getWidth());
        return seen;
    }

    private static int mean(int[] pixels, int across, int left, int right, int top, int bottom) {
        long red = 0;
        long green = 0;
        long blue = 0;
        for (int y = top; y < bottom; y++) {
            for (int x = left; x < right; x++) {
                int pixel = pixels[y * across + x];
                red += pixel >> 16 & 0xff;
                green += pixel >> 8 & 0xff;
                blue += pixel & 0xff;
            }
        }
        long count = (long) (right - left) * (bottom - top);
        return (int) (red / count) << 16 | (int) (green / count) << 8 | (int) (blue / count);
    }

    private static byte[] jpeg(BufferedImage picture) {
        var octets = new ByteArrayOutputStream();
        ImageWriter writer = writer();
        try (var output = new MemoryCacheImageOutputStream(octets)) {
            writer.setOutput(output);
            ImageWriteParam quality = writer.getDefaultWriteParam();
            quality.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            quality.setCompressionQuality(QUALITY);
            writer.write(null, new IIOImage(picture, null, null), quality);
        } catch (IOException e) {
            throw new UncheckedIOException("a picture in memory was not written", e);
        } finally {
            writer.dispose();
        }
        return octets.toByteArray();
    }
}
