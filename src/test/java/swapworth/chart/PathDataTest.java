package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PathDataTest {

    @Test
    void lines_after_a_move_need_no_command_and_no_needless_separator() {
        PathData path = new PathData();
        path.move(10, 20.5);
        path.line(10.4, 20.2);
        path.line(11, 19);
        path.line(11.5, 19.5);
        assertEquals("m10 20.5.4-.3.6-1.2.5.5", path.toString());
    }

    @Test
    void level_and_upright_lines_use_one_number() {
        PathData path = new PathData();
        path.move(1, 1);
        path.line(5, 1);
        path.line(5, -2);
        path.line(4, -3);
        assertEquals("m1 1h4v-3l-1-1", path.toString());
    }

    @Test
    void a_move_after_a_closed_figure_counts_from_its_start() {
        PathData path = new PathData();
        path.move(10, 10);
        path.line(12, 13);
        path.close();
        path.move(20, 20);
        path.line(21, 22);
        assertEquals(List.of("10.0,10.0", "12.0,13.0", "z", "20.0,20.0", "21.0,22.0"), SvgPath.places(path.toString()));
    }

    @Test
    void rounding_never_adds_up_along_a_path() {
        PathData path = new PathData();
        Random random = new Random(11);
        List<String> wanted = new ArrayList<>();
        for (int i = 0; i < 2_000; i++) {
            double x = 640 * random.nextDouble();
            double y = 400 * random.nextDouble() - 50;
            if (i % 7 == 0) {
                path.move(x, y);
            } else {
                path.line(x, y);
            }
            wanted.add(Math.round(x * 10) / 10.0 + "," + Math.round(y * 10) / 10.0);
        }
        assertEquals(wanted, SvgPath.places(path.toString()));
    }

    @Test
    void curves_keep_their_control_points_relative() {
        PathData path = new PathData();
        path.move(1, 2);
        path.quadratic(2, 3, 4, 5);
        path.cubic(4, 6, 5, 6, 6, 7);
        assertEquals("m1 2q1 1 3 3c0 1 1 1 2 2", path.toString());
    }

    @Test
    void the_pen_rests_where_it_was_left_until_the_figure_is_closed() {
        PathData path = new PathData();
        assertFalse(path.restsAt(0, 0));
        path.move(3, 4);
        path.line(5, 6);
        assertTrue(path.restsAt(5.02, 5.98));
        assertFalse(path.restsAt(5.1, 6));
        path.close();
        assertFalse(path.restsAt(5, 6));
    }

    @Test
    void a_place_beyond_all_measure_stays_a_number() {
        PathData path = new PathData();
        path.move(1e300, -1e300);
        assertEquals("m1000000-1000000", path.toString());
    }

    @Test
    void a_shape_of_java_comes_out_as_it_went_in() {
        Path2D shape = new Path2D.Double();
        shape.moveTo(0.25, 0.75);
        shape.lineTo(7.5, 0.75);
        shape.lineTo(3, 9);
        shape.closePath();
        SvgGraphics graphics = new SvgGraphics();
        graphics.setColor(new SvgGraphics.Classes("a"));
        graphics.fill(shape);
        assertEquals("<path class=\"a\" d=\"m.3.8h7.2l-4.5 8.2z\"/>", graphics.elements());
    }
}
