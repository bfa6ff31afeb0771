package org.culvert.animal.photograph.picture;

/**
 * Which side of what is seen the first row and the first column of a picture are: tag 274 of TIFF 6.0, and of Exif 2.32 (CIPA
 * DC-008-2019, 4.6.4 A, Orientation), 1 to 8. Rows and columns count from 0.
 */
final class Orientation {
    /** The first row is the top, the first column the left. */
    static final int UPRIGHT = 1;

    private static final int LAST = 8;

    private Orientation() {}

    static boolean isOne(int value) {
        return value >= UPRIGHT && value <= LAST;
    }

    /** Whether width and height change places: the first row is a side then. */
    static boolean turnsOver(int orientation) {
        return orientation >= 5;
    }

    /**
     * A picture as it is seen.
     *
     * @param pixels row by row, {@code width} to a row
     * @return row by row; {@code height} to a row where {@link #turnsOver}
     */
    static int[] applied(int orientation, int[] pixels, int width, int height) {
        if (!isOne(orientation) || pixels.length != width * height) {
            throw new IllegalArgumentException(
                    "no picture of " + width + " by " + height + " turned by " + orientation);
        }
        int[] seen = new int[pixels.length];
        int across = turnsOver(orientation) ? height : width;
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                int x = switch (orientation) {
                    case 1, 4 -> column;
                    case 2, 3 -> width - 1 - column;
                    case 5, 8 -> row;
                    default -> height - 1 - row;
                };
                int y = switch (orientation) {
                    case 1, 2 -> row;
                    case 3, 4 -> height - 1 - row;
                    case 5, 6 -> column;
                    default -> width - 1 - column;
                };
                seen[y * across + x] = pixels[row * width + column];
            }
        }
        return seen;
    }
}
