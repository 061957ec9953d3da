package swapworth;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.Tree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/** One source file as the compiler reads it, for rules about the source. */
final class ParsedSource {
    private static final JavaCompiler COMPILER = ToolProvider.getSystemJavaCompiler();

    final String name;
    final String text;
    final CompilationUnitTree unit;
    final DocTrees docs;

    private ParsedSource(String name, String text, CompilationUnitTree unit, DocTrees docs) {
        this.name = name;
        this.text = text;
        this.unit = unit;
        this.docs = docs;
    }

    static ParsedSource of(Path file) {
        try {
            return of(file.toString().replace('\\', '/'), Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static ParsedSource of(String name, String text) {
        URI address = URI.create("string:///" + name);
        JavaFileObject source = new SimpleJavaFileObject(address, JavaFileObject.Kind.SOURCE) {
            @Override
            public CharSequence getCharContent(boolean ignoreEncodingErrors) {
                return text;
            }
        };
        JavacTask task = (JavacTask) COMPILER.getTask(null, null, found -> {
            throw new IllegalArgumentException(name + ": " + found);
        }, List.of("-proc:none"), null, List.of(source));
        try {
            return new ParsedSource(name, text, task.parse().iterator().next(), DocTrees.instance(task));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The name of the package that the file is in. */
    String packageName() {
        return unit.getPackageName() == null ? "" : unit.getPackageName().toString();
    }

    /** Where something stands, as {@code file:line}. */
    String place(Tree tree) {
        LineMap lines = unit.getLineMap();
        return name + ":" + lines.getLineNumber(docs.getSourcePositions().getStartPosition(unit, tree));
    }
}
