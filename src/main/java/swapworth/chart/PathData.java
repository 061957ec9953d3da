package swapworth.chart;

/**
 * Writes the data of an SVG path as short as it goes: relative coordinates, one decimal, no needless separator or command.
 * Differences are taken between rounded places, so that no rounding error adds up along a path.
 */
final class PathData {
    private final StringBuilder out = new StringBuilder();
    private int x;
    private int y;
    private int startX;
    private int startY;
    private char command = ' ';
    private boolean afterNumber;
    private boolean afterPoint;

    boolean isEmpty() {
        return out.length() == 0;
    }

    /** Whether the pen rests, within rounding, at this place, in a subpath that can go on. */
    boolean restsAt(double toX, double toY) {
        return command != ' ' && command != 'z' && tenths(toX) == x && tenths(toY) == y;
    }

    void move(double toX, double toY) {
        if (command == 'z') {
            x = startX;
            y = startY;
        }
        // The first relative move counts from the origin.
        write('m');
        pair(toX, toY);
        startX = x;
        startY = y;
    }

    void line(double toX, double toY) {
        int dx = tenths(toX) - x;
        int dy = tenths(toY) - y;
        if (dy == 0) {
            write('h');
            number(dx);
        } else if (dx == 0) {
            write('v');
            number(dy);
        } else {
            // Pairs after a move are lines without being told.
            if (command != 'm' && command != 'l') {
                write('l');
            }
            number(dx);
            number(dy);
        }
        x += dx;
        y += dy;
    }

    void quadratic(double cX, double cY, double toX, double toY) {
        write('q');
        difference(cX, cY);
        pair(toX, toY);
    }

    void cubic(double c1X, double c1Y, double c2X, double c2Y, double toX, double toY) {
        write('c');
        difference(c1X, c1Y);
        difference(c2X, c2Y);
        pair(toX, toY);
    }

    void close() {
        write('z');
    }

    private void pair(double toX, double toY) {
        difference(toX, toY);
        x = tenths(toX);
        y = tenths(toY);
    }

    private void difference(double toX, double toY) {
        number(tenths(toX) - x);
        number(tenths(toY) - y);
    }

    private void write(char next) {
        out.append(next);
        command = next;
        afterNumber = false;
    }

    private void number(int tenths) {
        int whole = Math.abs(tenths) / 10;
        int rest = Math.abs(tenths) % 10;
        boolean leadingPoint = whole == 0 && rest != 0;
        if (tenths < 0) {
            out.append('-');
        } else if (afterNumber && !(leadingPoint && afterPoint)) {
            out.append(' ');
        }
        if (!leadingPoint) {
            out.append(whole);
        }
        if (rest != 0) {
            out.append('.').append((char) ('0' + rest));
        }
        afterNumber = true;
        afterPoint = rest != 0;
    }

    /** A place in tenths of a unit; a million units off the picture is as good as any farther. */
    private static int tenths(double place) {
        return (int) Math.round(Math.max(-1e6, Math.min(1e6, place)) * 10);
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
