package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import swapworth.listing.CarFacts;
import swapworth.listing.Damage;

/** Columns of the model are remembered by state: two states that differ anywhere must never count as one. */
class StateTest {

    private static Object[] values(State state) throws ReflectiveOperationException {
        RecordComponent[] components = State.class.getRecordComponents();
        Object[] values = new Object[components.length];
        for (int c = 0; c < values.length; c++) {
            Method component = components[c].getAccessor();
            component.setAccessible(true);
            values[c] = component.invoke(state);
        }
        return values;
    }

    private static State made(Object[] values) throws ReflectiveOperationException {
        var constructor = State.class.getDeclaredConstructors()[0];
        constructor.setAccessible(true);
        return (State) constructor.newInstance(values);
    }

    @Test
    void states_that_differ_in_one_thing_are_not_equal() throws ReflectiveOperationException {
        State state = State.of(CarFacts.of("Sivrette").build());
        Object[] values = values(state);
        for (int c = 0; c < values.length; c++) {
            Object[] other = values.clone();
            other[c] = values[c] instanceof Enum<?> one ? another(one) : Optional.of(EnumSet.of(Damage.FRONT));
            assertNotEquals(state, made(other), State.class.getRecordComponents()[c].getName());
        }
    }

    private static Object another(Enum<?> one) {
        Object[] all = one.getDeclaringClass().getEnumConstants();
        return all[(one.ordinal() + 1) % all.length];
    }

    @Test
    void equal_states_have_one_number() {
        State one = State.of(CarFacts.of("Sivrette").damage(Set.of(Damage.FRONT)).build());
        State other = State.of(CarFacts.of("Velmarch").damage(EnumSet.of(Damage.FRONT)).build());
        assertEquals(one, other);
        assertEquals(one.hashCode(), other.hashCode());
        assertNotEquals(one, State.of(CarFacts.of("Sivrette").damage(Set.of()).build()));
    }
}
