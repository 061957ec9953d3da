package swapworth.reading;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * Where the header of a file stands and what separates its cells: found in the first bytes, of which as many are looked at as are needed.
 *
 * @param place the first line that is neither blank, separators alone, nor a comment, nor states the separator as some spreadsheets do
 * @param separator what separates cells
 * @param comments how many comment lines stand above it
 */
record HeaderLine(FileText.Place place, char separator, int comments) {
    private static final char BYTE_ORDER_MARK = '\ufeff';
    private static final int MARK_BYTES = 3;
    private static final int FIRST_BYTES = 1 << 13;
    /** A header that begins or ends beyond so many bytes is none. */
    private static final int MOST_BYTES = 1 << 28;

    static HeaderLine of(FileText text) {
        for (int most = FIRST_BYTES;; most *= 8) {
            byte[] bytes = text.first(most);
            boolean all = bytes.length < most;
            checkKind(text.file(), bytes);
            Look look = new Look(text, bytes);
            if (look.isFound() && (all || look.endsBefore())) {
                return look.found();
            }
            if (all || most >= MOST_BYTES) {
                throw UnusableFileException.of(UnusableFileException.NO_HEADER, text.file());
            }
        }
    }

    private static void checkKind(String file, byte[] bytes) {
        int first = bytes.length > 0 ? bytes[0] & 0xff : 0;
        int second = bytes.length > 1 ? bytes[1] & 0xff : 0;
        if (bytes.length == 0 || bytes.length == 3 && first == 0xef && second == 0xbb && (bytes[2] & 0xff) == 0xbf) {
            throw UnusableFileException.of(UnusableFileException.EMPTY, file);
        }
        // Without its mark UTF-16 shows by a zero in every other byte of plain letters.
        boolean bare = bytes.length > 3 && (first == 0 && second != 0 && bytes[2] == 0 || first != 0 && second == 0 && bytes[3] == 0);
        if (bare || first == 0xff && second == 0xfe || first == 0xfe && second == 0xff) {
            throw UnusableFileException.of(UnusableFileException.UTF_16, file);
        }
        if (first == 'P' && second == 'K' && bytes.length > 3 && bytes[2] == 3 && bytes[3] == 4) {
            throw UnusableFileException.of(UnusableFileException.WORKBOOK, file);
        }
    }

    /** What the first bytes show. */
    private static final class Look {
        private final FileText file;
        private final String text;
        private final int offset;
        private final int line;
        private final int end;
        private final int comments;
        private final char separator;

        Look(FileText file, byte[] bytes) {
            this.file = file;
            text = new String(bytes, StandardCharsets.UTF_8);
            int at = text.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
            int lines = 1;
            int ofComment = 0;
            char stated = 0;
            while (at < text.length() && isBlankOrComment(at)) {
                if (text.startsWith("sep=", at) && at + 4 < text.length()) {
                    stated = text.charAt(at + 4);
                }
                ofComment += text.charAt(at) == '#' ? 1 : 0;
                at = nextLine(at);
                lines++;
            }
            offset = at;
            line = lines;
            comments = ofComment;
            int commas = 0;
            int semicolons = 0;
            int tabs = 0;
            boolean quoted = false;
            int i = at;
            for (; i < text.length(); i++) {
                char c = text.charAt(i);
                if (c == '"') {
                    quoted = !quoted;
                } else if (!quoted) {
                    if (c == '\n' || c == '\r') {
                        break;
                    }
                    commas += c == ',' ? 1 : 0;
                    semicolons += c == ';' ? 1 : 0;
                    tabs += c == '\t' ? 1 : 0;
                }
            }
            end = i;
            separator = stated != 0 ? stated : tabs > commas && tabs > semicolons ? '\t' : semicolons > commas ? ';' : ',';
        }

        boolean isFound() {
            return offset < text.length();
        }

        boolean endsBefore() {
            return end < text.length();
        }

        HeaderLine found() {
            FileText.Place first = new FileText.Place(text.charAt(0) == BYTE_ORDER_MARK ? MARK_BYTES : 0, 1);
            if (text.lastIndexOf('\ufffd', offset) >= 0) {
                refuseWrongBytes(first);
            }
            return new HeaderLine(file.lineAfter(first, line), separator, comments);
        }

        /** The quick decoder puts U+FFFD where a byte is wrong; whether it was wrong or truly U+FFFD, the strict one tells. */
        private void refuseWrongBytes(FileText.Place first) {
            try (Reader strict = file.from(first)) {
                for (long left = offset; left > 0;) {
                    left -= strict.read(new char[(int) Math.min(left, FIRST_BYTES)]);
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /** Some spreadsheets write {@code sep=;} above the header, and an empty row as separators alone. */
        private boolean isBlankOrComment(int from) {
            if (text.charAt(from) == '#') {
                return true;
            }
            int lineEnd = endOfLine(from);
            if (lineEnd - from == 5 && text.startsWith("sep=", from) && ",;\t".indexOf(text.charAt(from + 4)) >= 0) {
                return true;
            }
            for (int i = from; i < lineEnd; i++) {
                if (!Spelling.isSpace(text.charAt(i)) && ",;".indexOf(text.charAt(i)) < 0) {
                    return false;
                }
            }
            return true;
        }

        private int endOfLine(int from) {
            for (int i = from; i < text.length(); i++) {
                if (text.charAt(i) == '\n' || text.charAt(i) == '\r') {
                    return i;
                }
            }
            return text.length();
        }

        private int nextLine(int from) {
            int lineEnd = endOfLine(from);
            boolean pair = lineEnd + 1 < text.length() && text.charAt(lineEnd) == '\r' && text.charAt(lineEnd + 1) == '\n';
            return Math.min(text.length(), lineEnd + (pair ? 2 : 1));
        }
    }
}
