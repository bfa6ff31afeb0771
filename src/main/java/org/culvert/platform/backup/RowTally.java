package org.culvert.platform.backup;

import java.math.BigInteger;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * Counts the rows of one table and keeps two sums of them: the SHA-256 of their bytes in their order, which tells a damaged
 * file, and the sum modulo 2^256 of the SHA-256 of each row, which is the same whatever order a database keeps them in.
 */
final class RowTally {
    /** What was counted; two of these are equal when their tables hold the same rows. */
    record Content(long rows, String sumOfRows) {}

    private static final BigInteger MODULUS = BigInteger.ONE.shiftLeft(256);
    private static final int HEX_DIGITS = 64;

    private final MessageDigest whole = sha256();
    private final MessageDigest each = sha256();
    private byte[] unfinished = new byte[8192];
    private int unfinishedLength;
    private BigInteger sum = BigInteger.ZERO;
    private long rows;
    private long bytes;

    /** Adds a piece of the table in PostgreSQL's text format, in which a line feed ends a row and is never within one. */
    void add(byte[] piece, int length) {
        whole.update(piece, 0, length);
        bytes += length;
        int from = 0;
        for (int i = 0; i < length; i++) {
            if (piece[i] == '\n') {
                endRow(piece, from, i + 1);
                from = i + 1;
            }
        }
        keepUnfinished(piece, from, length);
    }

    private void endRow(byte[] piece, int from, int to) {
        each.update(unfinished, 0, unfinishedLength);
        unfinishedLength = 0;
        each.update(piece, from, to - from);
        sum = sum.add(new BigInteger(1, each.digest()));
        rows++;
    }

    private void keepUnfinished(byte[] piece, int from, int to) {
        int length = to - from;
        if (unfinishedLength + length > unfinished.length) {
            unfinished = Arrays.copyOf(unfinished, Math.max(2 * unfinished.length, unfinishedLength + length));
        }
        System.arraycopy(piece, from, unfinished, unfinishedLength, length);
        unfinishedLength += length;
    }

    long rows() {
        return rows;
    }

    long bytes() {
        return bytes;
    }

    /** The rows, whatever their order. */
    Content content() {
        if (unfinishedLength > 0) {
            throw new IllegalStateException("the last row has no end");
        }
        String hex = sum.mod(MODULUS).toString(16);
        return new Content(rows, "0".repeat(HEX_DIGITS - hex.length()) + hex);
    }

    /** The SHA-256 of all bytes; nothing may be added after. */
    String sha256OfBytes() {
        return HexFormat.of().formatHex(whole.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every JDK has SHA-256", e);
        }
    }
}
