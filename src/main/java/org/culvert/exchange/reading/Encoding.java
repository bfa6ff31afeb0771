package org.culvert.exchange.reading;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/**
 * How the characters of a file are written, told from its octets: by a byte order mark (Unicode 15.0, section 2.13), by the
 * zeros that UTF-16 has in Latin text, or by whether all of it is well-formed UTF-8 (RFC 3629, section 3). What is none of
 * these is taken for Windows-1252, which any octets are.
 *
 * @param markOctets how many octets at the beginning are the mark, and no text
 * @param isSure whether the octets themselves tell it; otherwise it is the usual one, and to be asked
 */
public record Encoding(Charset charset, int markOctets, boolean isSure) {
    public static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    /** A file with that many well-formed sequences for one that is not is UTF-8 with an accident in it. */
    private static final int ACCIDENTS = 20;

    /** Looks through a whole file as it comes, block by block. */
    public static final class Looker {
        private static final int BEGINNING = 1 << 16;

        private final byte[] beginning = new byte[BEGINNING];
        private final Utf8 utf8 = new Utf8();
        private int begun;
        private boolean plain = true;

        /** Takes the next octets of the file. */
        public void take(byte[] block, int length) {
            int more = Math.min(length, BEGINNING - begun);
            System.arraycopy(block, 0, beginning, begun, more);
            begun += more;
            for (int i = 0; i < length; i++) {
                if (plain && block[i] >= 0) {
                    continue;
                }
                plain = false;
                utf8.take(block[i]);
            }
        }

        /** What was taken so far is written so. */
        public Encoding encoding() {
            Encoding marked = byMark(beginning, begun);
            if (marked != null) {
                return marked;
            }
            Encoding sixteen = byZeros(beginning, begun);
            if (sixteen != null) {
                return sixteen;
            }
            if (plain || utf8.isWellFormed()) {
                return new Encoding(StandardCharsets.UTF_8, 0, true);
            }
            return new Encoding(utf8.isNearly() ? StandardCharsets.UTF_8 : WINDOWS_1252, 0, false);
        }
    }

    private static @Nullable Encoding byMark(byte[] b, int n) {
        if (n >= 3 && (b[0] & 0xff) == 0xef && (b[1] & 0xff) == 0xbb && (b[2] & 0xff) == 0xbf) {
            return new Encoding(StandardCharsets.UTF_8, 3, true);
        }
        if (n >= 2 && (b[0] & 0xff) == 0xff && (b[1] & 0xff) == 0xfe) {
            return new Encoding(StandardCharsets.UTF_16LE, 2, true);
        }
        if (n >= 2 && (b[0] & 0xff) == 0xfe && (b[1] & 0xff) == 0xff) {
            return new Encoding(StandardCharsets.UTF_16BE, 2, true);
        }
        return null;
    }

    /** Separators, digits and line ends are one octet beside a zero in UTF-16; other text has no zeros at all. */
    private static @Nullable Encoding byZeros(byte[] b, int n) {
        int even = 0;
        int odd = 0;
        for (int i = 0; i < n; i++) {
            if (b[i] == 0) {
                if (i % 2 == 0) {
                    even++;
                } else {
                    odd++;
                }
            }
        }
        if (odd > n / 10 && odd > 20L * even) {
            return new Encoding(StandardCharsets.UTF_16LE, 0, false);
        }
        if (even > n / 10 && even > 20L * odd) {
            return new Encoding(StandardCharsets.UTF_16BE, 0, false);
        }
        return null;
    }

    /** Well-formed byte sequences, table 3-7 of the Unicode Standard. */
    private static final class Utf8 {
        private int wanted;
        private int low = 0x80;
        private int high = 0xbf;
        private long whole;
        private long wrong;

        void take(byte octet) {
            int b = octet & 0xff;
            if (wanted > 0) {
                boolean fits = b >= low && b <= high;
                low = 0x80;
                high = 0xbf;
                if (fits) {
                    wanted--;
                    whole += wanted == 0 ? 1 : 0;
                    return;
                }
                wrong++;
                wanted = 0;
            }
            if (b < 0x80) {
                return;
            }
            if (b >= 0xc2 && b <= 0xdf) {
                wanted = 1;
            } else if (b >= 0xe0 && b <= 0xef) {
                wanted = 2;
                low = b == 0xe0 ? 0xa0 : 0x80;
                high = b == 0xed ? 0x9f : 0xbf;
            } else if (b >= 0xf0 && b <= 0xf4) {
                wanted = 3;
                low = b == 0xf0 ? 0x90 : 0x80;
                high = b == 0xf4 ? 0x8f : 0xbf;
            } else {
                wrong++;
            }
        }

        boolean isWellFormed() {
            return wrong == 0 && wanted == 0;
        }

        boolean isNearly() {
            return whole > ACCIDENTS * (wrong + (wanted > 0 ? 1 : 0));
        }
    }
}
