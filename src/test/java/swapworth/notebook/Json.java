package swapworth.notebook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads JSON strictly, as far as tests of what we write need it: objects, arrays, strings and whole numbers. */
final class Json {
    private final String text;
    private int at;

    private Json(String text) {
        this.text = text;
    }

    static Object read(String text) {
        Json json = new Json(text);
        Object value = json.value();
        json.blanks();
        if (json.at != text.length()) {
            throw json.wrong("the end");
        }
        return value;
    }

    @SuppressWarnings("unchecked")
    static Map<String, Object> object(Object value) {
        return (Map<String, Object>) value;
    }

    static List<?> array(Object value) {
        return (List<?>) value;
    }

    private Object value() {
        blanks();
        char c = text.charAt(at);
        if (c == '{') {
            Map<String, Object> object = new LinkedHashMap<>();
            while (more('{', '}', object.isEmpty())) {
                String name = string();
                take(':');
                if (object.put(name, value()) != null) {
                    throw wrong("another name than " + name);
                }
            }
            return object;
        }
        if (c == '[') {
            List<Object> array = new ArrayList<>();
            while (more('[', ']', array.isEmpty())) {
                array.add(value());
            }
            return array;
        }
        if (c == '"') {
            return string();
        }
        int from = at;
        while (Character.isDigit(text.charAt(at))) {
            at++;
        }
        return Integer.parseInt(text.substring(from, at));
    }

    /** Whether another item follows; takes the bracket or the comma before it, or the closing bracket. */
    private boolean more(char open, char close, boolean first) {
        if (first) {
            take(open);
        }
        blanks();
        if (text.charAt(at) == close) {
            at++;
            return false;
        }
        if (!first) {
            take(',');
        }
        return true;
    }

    private String string() {
        take('"');
        StringBuilder string = new StringBuilder();
        while (text.charAt(at) != '"') {
            char c = text.charAt(at++);
            if (c < ' ') {
                throw wrong("an escape for a control character");
            }
            if (c != '\\') {
                string.append(c);
                continue;
            }
            char escaped = text.charAt(at++);
            if (escaped == 'u') {
                string.append((char) Integer.parseInt(text.substring(at, at + 4), 16));
                at += 4;
            } else if ("\"\\nt".indexOf(escaped) >= 0) {
                string.append(escaped == 'n' ? '\n' : escaped == 't' ? '\t' : escaped);
            } else {
                throw wrong("a known escape");
            }
        }
        at++;
        return string.toString();
    }

    private void take(char c) {
        blanks();
        if (text.charAt(at++) != c) {
            throw wrong("'" + c + "'");
        }
    }

    private void blanks() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    private IllegalStateException wrong(String wanted) {
        return new IllegalStateException(wanted + " is wanted near " + at + ": "
                + text.substring(Math.max(0, at - 20), Math.min(text.length(), at + 20)));
    }
}
