package org.culvert.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EncodingTest {
    private static final String TABLE = "Ort;Tier;Länge\nMühlbäche;Fuchs;3,5\n";

    /** In blocks of a size that no sequence of octets is a part of. */
    private static Encoding of(byte[] octets) {
        var looker = new Encoding.Looker();
        for (int at = 0; at < octets.length; at += 7919) {
            byte[] block = java.util.Arrays.copyOfRange(octets, at, Math.min(octets.length, at + 7919));
            looker.take(block, block.length);
        }
        return looker.encoding();
    }

    private static byte[] marked(int[] mark, Charset charset) throws IOException {
        var octets = new ByteArrayOutputStream();
        for (int one : mark) {
            octets.write(one);
        }
        octets.write(TABLE.getBytes(charset));
        return octets.toByteArray();
    }

    /** Byte order marks: Unicode 15.0, table 2-4 and section 23.8 (from memory). */
    @Test
    void aMarkTellsTheEncodingAndIsNoText() throws IOException {
        assertThat(of(marked(new int[] {0xef, 0xbb, 0xbf}, StandardCharsets.UTF_8)))
                .isEqualTo(new Encoding(StandardCharsets.UTF_8, 3, true));
        assertThat(of(marked(new int[] {0xff, 0xfe}, StandardCharsets.UTF_16LE)))
                .isEqualTo(new Encoding(StandardCharsets.UTF_16LE, 2, true));
        assertThat(of(marked(new int[] {0xfe, 0xff}, StandardCharsets.UTF_16BE)))
                .isEqualTo(new Encoding(StandardCharsets.UTF_16BE, 2, true));
    }

    @ParameterizedTest
    @CsvSource({"UTF-8,true", "UTF-16LE,false", "UTF-16BE,false", "windows-1252,false", "US-ASCII,true"})
    void withoutAMarkTheOctetsTell(String name, boolean sure) {
        Charset charset = Charset.forName(name);
        String text = name.equals("US-ASCII") ? "place,animal\nmill,fox\n" : TABLE;
        Encoding told = of(text.getBytes(charset));
        assertThat(new String(text.getBytes(charset), told.charset())).isEqualTo(text);
        assertThat(told.isSure()).isEqualTo(sure);
        assertThat(told.markOctets()).isZero();
    }

    /** RFC 3629, sections 3 and 4: overlong forms, surrogates, and what lies beyond U+10FFFF are not UTF-8; nor is a cut one. */
    @ParameterizedTest
    @CsvSource({"c0 af", "e0 80 af", "ed a0 80", "f4 90 80 80", "80", "c3", "f8 88 80 80 80", "fe", "e2 28 a1"})
    void whatIsNotWellFormedIsNotUtf8(String hex) {
        String[] parts = hex.split(" ");
        byte[] octets = new byte[parts.length];
        for (int i = 0; i < parts.length; i++) {
            octets[i] = (byte) Integer.parseInt(parts[i], 16);
        }
        assertThat(of(octets).charset()).isEqualTo(Encoding.WINDOWS_1252);
    }

    @Test
    void oneAccidentInAFileOfUtf8IsAskedAndMakesNoOtherEncodingOfIt() {
        byte[] octets = ("café,Übergang\n".repeat(30)).getBytes(StandardCharsets.UTF_8);
        octets[octets.length - 2] = (byte) 0xe9;
        assertThat(of(octets)).isEqualTo(new Encoding(StandardCharsets.UTF_8, 0, false));
    }

    /** The decoder of java.nio.charset on 20,000 random texts of few octets, which lie across the edge of a block too. */
    @Test
    void itAgreesWithTheDecoderOfTheLibrary() {
        long seed = 20261129;
        var random = new Random(seed);
        int[] likely = {0x41, 0x80, 0x9f, 0xa0, 0xbf, 0xc2, 0xdf, 0xe0, 0xe1, 0xed, 0xef, 0xf0, 0xf4, 0xf5};
        int both = 0;
        for (int round = 0; round < 20_000; round++) {
            int before = round % 100 == 0 ? (1 << 16) - 2 : 0;
            byte[] octets = new byte[before + 1 + random.nextInt(6)];
            java.util.Arrays.fill(octets, 0, before, (byte) 'x');
            for (int i = before; i < octets.length; i++) {
                octets[i] = (byte) likely[random.nextInt(likely.length)];
            }
            if (octets.length >= 3 && (octets[0] & 0xff) == 0xef && (octets[1] & 0xff) == 0xbb) {
                continue;
            }
            boolean theirs;
            try {
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .decode(ByteBuffer.wrap(octets));
                theirs = true;
            } catch (CharacterCodingException malformed) {
                theirs = false;
            }
            both += theirs ? 1 : 0;
            assertThat(of(octets).charset().equals(StandardCharsets.UTF_8))
                    .as("seed %d round %d", seed, round)
                    .isEqualTo(theirs);
        }
        assertThat(both).isBetween(300, 19_700);
    }
}
