package swapworth.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads back the moves and lines of SVG path data, after the grammar of the SVG 1.1 recommendation, section 8.3.9. */
final class SvgPath {
    private static final Pattern TOKEN = Pattern.compile("[a-zA-Z]|-?(?:\\d+\\.?\\d*|\\.\\d+)");

    private SvgPath() {
    }

    /** Each place as {@code x,y}, and {@code z} for a closed figure. */
    static List<String> places(String data) {
        List<String> places = new ArrayList<>();
        List<String> tokens = new ArrayList<>();
        Matcher matcher = TOKEN.matcher(data);
        while (matcher.find()) {
            tokens.add(matcher.group());
        }
        double x = 0;
        double y = 0;
        double startX = 0;
        double startY = 0;
        char command = ' ';
        for (int i = 0; i < tokens.size();) {
            if (Character.isLetter(tokens.get(i).charAt(0))) {
                command = tokens.get(i++).charAt(0);
                if (command == 'z') {
                    places.add("z");
                    x = startX;
                    y = startY;
                    continue;
                }
            }
            switch (command) {
                case 'm', 'l' -> {
                    x += Double.parseDouble(tokens.get(i++));
                    y += Double.parseDouble(tokens.get(i++));
                    if (command == 'm') {
                        startX = x;
                        startY = y;
                        command = 'l';
                    }
                }
                case 'h' -> x += Double.parseDouble(tokens.get(i++));
                case 'v' -> y += Double.parseDouble(tokens.get(i++));
                default -> throw new IllegalArgumentException("the command " + command + " is not read here");
            }
            places.add(Math.round(x * 10) / 10.0 + "," + Math.round(y * 10) / 10.0);
        }
        return places;
    }
}
