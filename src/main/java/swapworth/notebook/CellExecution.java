package swapworth.notebook;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.Optional;
import jdk.jshell.execution.DirectExecutionControl;

/**
 * Runs the compiled snippets in this very Java and keeps what came of the last one as it is: JShell itself hands values on as text,
 * and would print whole collections for nobody to read.
 */
final class CellExecution extends DirectExecutionControl {
    private Optional<Object> value = Optional.empty();
    private Optional<Throwable> thrown = Optional.empty();

    @Override
    protected String invoke(Method snippet) throws Exception {
        value = Optional.empty();
        thrown = Optional.empty();
        try {
            value = Optional.ofNullable(snippet.invoke(null));
            return "";
        } catch (InvocationTargetException e) {
            thrown = Optional.ofNullable(e.getCause());
            throw e;
        }
    }

    /** The value of the last snippet; empty if it had none. */
    Optional<Object> value() {
        return value;
    }

    /** What the last snippet threw. */
    Optional<Throwable> thrown() {
        return thrown;
    }

    @Override
    public void close() {
        // The snippets live in this Java and end with it.
    }
}
