package swapworth.reading;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * The text of a file, which must be UTF-8: read piece by piece from the beginning of any of its lines, so that a large file takes no more
 * room than a small one. A line ends with a line feed, a carriage return, or both.
 */
final class FileText {
    private static final int PIECE = 1 << 16;

    /** Where a line begins: the bytes before it, and its number from 1. */
    record Place(long offset, int line) {
    }

    private interface Source {
        InputStream open() throws IOException;
    }

    private final String file;
    private final Source source;

    private FileText(String file, Source source) {
        this.file = file;
        this.source = source;
    }

    static FileText of(String file, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return new FileText(file, () -> new ByteArrayInputStream(bytes));
    }

    static FileText of(Path path, long mostBytes) {
        try {
            if (Files.isDirectory(path)) {
                throw UnusableFileException.of(UnusableFileException.FOLDER, path);
            }
            long size = Files.size(path);
            if (size > mostBytes) {
                throw UnusableFileException.of(UnusableFileException.TOO_LARGE, path, size, mostBytes);
            }
        } catch (NoSuchFileException e) {
            throw UnusableFileException.of(UnusableFileException.MISSING, path);
        } catch (IOException e) {
            throw unreadable(path.toString(), e);
        }
        Path name = path.getFileName();
        String file = name == null ? path.toString() : name.toString();
        if (Files.isRegularFile(path)) {
            return new FileText(file, () -> Files.newInputStream(path));
        }
        // What comes through a pipe can be read only once.
        try {
            byte[] bytes = Files.readAllBytes(path);
            return new FileText(file, () -> new ByteArrayInputStream(bytes));
        } catch (IOException e) {
            throw unreadable(path.toString(), e);
        }
    }

    String file() {
        return file;
    }

    private static UnusableFileException unreadable(String file, IOException e) {
        // Of a file that one may not read the machine tells nothing but its name.
        return UnusableFileException.of(UnusableFileException.UNREADABLE, file,
                e instanceof AccessDeniedException ? "no permission to read it" : e.getMessage());
    }

    /** The first bytes; fewer than asked for if the file has no more. */
    byte[] first(int most) {
        return bytes(0, most);
    }

    private byte[] bytes(long offset, int most) {
        try (InputStream in = source.open()) {
            in.skipNBytes(offset);
            return in.readNBytes(most);
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    /** The first characters of a line and those that follow it, to be shown. */
    String beginning(Place place, int most) {
        String text = new String(bytes(place.offset, 4 * most), StandardCharsets.UTF_8);
        return text.substring(0, Math.min(text.length(), most));
    }

    /** Where a later line begins; the end of the file if it has fewer. */
    Place lineAfter(Place from, int line) {
        return counted(from, line, Long.MAX_VALUE);
    }

    /** Counts lines from a place on, up to the beginning of a line, an offset, or the end of the file. */
    private Place counted(Place from, int line, long end) {
        try (InputStream in = source.open()) {
            in.skipNBytes(from.offset);
            byte[] piece = new byte[PIECE];
            long offset = from.offset;
            int at = from.line;
            boolean afterReturn = false;
            for (int size = in.read(piece); size >= 0; size = in.read(piece)) {
                for (int i = 0; i < size; i++) {
                    // A line feed behind a carriage return still belongs to the line before.
                    boolean second = afterReturn && piece[i] == '\n';
                    if (at == line && !second || offset + i == end) {
                        return new Place(offset + i, at);
                    }
                    afterReturn = piece[i] == '\r';
                    at += afterReturn || piece[i] == '\n' && !second ? 1 : 0;
                }
                offset += size;
            }
            return new Place(offset, at);
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    /** Whether nothing stands at a place or behind it. */
    boolean endsAt(Place place) {
        return bytes(place.offset, 1).length == 0;
    }

    /** The characters from a place on; a byte that is not UTF-8 makes the file unusable when it is reached. */
    Reader from(Place place) {
        try {
            InputStream in = source.open();
            in.skipNBytes(place.offset);
            return new Pieces(in, place);
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    private final class Pieces extends Reader {
        private final InputStream in;
        private final Place begin;
        private final CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        private final ByteBuffer bytes = ByteBuffer.allocate(PIECE).flip();
        private long before;
        private boolean ended;

        Pieces(InputStream in, Place begin) {
            this.in = in;
            this.begin = begin;
            this.before = begin.offset;
        }

        @Override
        public int read(char[] into, int offset, int length) throws IOException {
            CharBuffer out = CharBuffer.wrap(into, offset, length);
            while (true) {
                int from = bytes.position();
                takePlain(out);
                CoderResult result = decoder.decode(bytes, out, ended);
                before += bytes.position() - from;
                if (result.isError()) {
                    throw UnusableFileException.of(UnusableFileException.UNDECODABLE, file, counted(begin, Integer.MAX_VALUE, before).line,
                            bytes.get(bytes.position()) & 0xff);
                }
                if (out.position() > offset) {
                    return out.position() - offset;
                }
                if (ended) {
                    return -1;
                }
                bytes.compact();
                int size = in.read(bytes.array(), bytes.position(), bytes.remaining());
                ended = size < 0;
                bytes.position(bytes.position() + Math.max(0, size)).flip();
            }
        }

        /** Takes bytes that are characters by themselves, as nearly all are. */
        private void takePlain(CharBuffer out) {
            byte[] from = bytes.array();
            char[] to = out.array();
            int at = bytes.position();
            int place = out.position();
            int end = at + Math.min(bytes.remaining(), out.remaining());
            while (at < end && from[at] >= 0) {
                to[place++] = (char) from[at++];
            }
            bytes.position(at);
            out.position(place);
        }

        @Override
        public void close() throws IOException {
            in.close();
        }
    }
}
