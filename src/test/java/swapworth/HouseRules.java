package swapworth;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.tree.AnnotationTree;
import com.sun.source.tree.ArrayTypeTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.ImportTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.ModifiersTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.lang.model.element.Modifier;

/** What every source file of the house keeps to; each rule answers with the places where it is broken. */
final class HouseRules {

    /** The rooms from the top of the house to its foot; an arrow may only go down. */
    static final List<String> ROOMS = List.of("command", "notebook", "report", "chart", "project", "swap", "donor", "market",
            "listing", "assumptions", "reading", "money", "table", "statistics");
    private static final Set<String> FOOT = Set.of("money", "table", "statistics");

    /** Each library and the one room, or the one class, that may speak to it. */
    private static final Map<String, String> LIBRARIES = Map.of("org.apache.commons.math3", "swapworth.statistics",
            "org.knowm.xchart", "swapworth.chart", "java.awt", "swapworth.chart",
            "tech.tablesaw", "swapworth.listing.ListingsTable", "jdk.jshell", "swapworth.notebook",
            "org.commonmark", "swapworth.report", "org.apache.commons.cli", "swapworth.command",
            "de.siegmar.fastcsv", "swapworth.reading");

    private static final Pattern MACHINE_PATH =
            Pattern.compile("(?<![\\w.])(/home/|/root/|/work/|/tmp/|/Users/|/opt/|[A-Z]:\\\\)");
    private static final Pattern START = Pattern.compile("@link\\s+(swapworth\\.[a-z]+\\.[A-Z]\\w*)");
    private static final Pattern IMPORT = Pattern.compile("(?m)^import .*;$");
    /** A name of a type in a page: with a capital, as code, alone or with what it has; but for what every Java has. */
    private static final Pattern NAMED_TYPE = Pattern.compile("`(?!System\\.)([A-Z][a-z]\\w*)(?=[`.(])");
    private static final Set<String> OF_THE_MOMENT = Set.of("LocalDate.now", "LocalDateTime.now", "LocalTime.now",
            "ZonedDateTime.now", "OffsetDateTime.now", "Instant.now", "Year.now", "YearMonth.now", "MonthDay.now",
            "Clock.systemDefaultZone", "Clock.systemUTC", "System.currentTimeMillis", "ZoneId.systemDefault",
            "TimeZone.getDefault", "Math.random", "ThreadLocalRandom.current", "Charset.defaultCharset", "Locale.getDefault",
            "NumberFormat.getInstance");
    private static final Set<String> OF_THE_MOMENT_MADE = Set.of("Random", "SplittableRandom", "Date", "SecureRandom");

    private HouseRules() {
    }

    /** Arrows that go up, to a room that is not in the plan, or out of the foot of the house. */
    static Set<String> arrows(ParsedSource source) {
        int from = ROOMS.indexOf(room(source.packageName()));
        Set<String> breaches = new TreeSet<>();
        eachName(source, (place, name) -> {
            if (!name.startsWith("swapworth.")) {
                return;
            }
            String target = room(name);
            int to = ROOMS.indexOf(target);
            boolean same = to == from && to >= 0;
            if (from < 0 || to < 0 || !same && (to < from || FOOT.contains(ROOMS.get(from)))) {
                breaches.add(place + " " + source.packageName() + " may not use " + target);
            }
        });
        return breaches;
    }

    /** Libraries used outside the room that is theirs. */
    static Set<String> libraries(ParsedSource source) {
        String file = source.name.substring(source.name.lastIndexOf('/') + 1).replace(".java", "");
        String own = source.packageName() + "." + file;
        Set<String> breaches = new TreeSet<>();
        eachName(source, (place, name) -> LIBRARIES.forEach((library, home) -> {
            boolean used = name.equals(library) || name.startsWith(library + ".");
            if (used && !own.equals(home) && !source.packageName().equals(home)) {
                breaches.add(place + " only " + home + " may use " + library);
            }
        }));
        return breaches;
    }

    /** Public and protected things without a Javadoc comment; what overrides is described where it comes from. */
    static Set<String> undescribed(ParsedSource source) {
        Set<String> breaches = new TreeSet<>();
        new TreePathScanner<Void, Boolean>() {
            @Override
            public Void visitClass(ClassTree type, Boolean seen) {
                boolean visible = seen && (isPublic(type.getModifiers()) || inInterface(getCurrentPath()));
                require(type, visible, type.getSimpleName());
                return super.visitClass(type, visible);
            }

            @Override
            public Void visitMethod(MethodTree method, Boolean seen) {
                boolean generated = source.docs.getSourcePositions().getEndPosition(source.unit, method) < 0;
                boolean overrides = method.getModifiers().getAnnotations().stream().map(AnnotationTree::getAnnotationType)
                        .anyMatch(annotation -> annotation.toString().equals("Override"));
                boolean visible = isPublic(method.getModifiers()) || inInterface(getCurrentPath());
                require(method, seen && visible && !overrides && !generated, method.getName());
                return null;
            }

            @Override
            public Void visitVariable(VariableTree field, Boolean seen) {
                boolean ofType = getCurrentPath().getParentPath().getLeaf() instanceof ClassTree;
                boolean visible = isPublic(field.getModifiers()) || inInterface(getCurrentPath());
                require(field, seen && ofType && visible, field.getName());
                return null;
            }

            private void require(Tree tree, boolean needed, CharSequence name) {
                DocCommentTree doc = source.docs.getDocCommentTree(getCurrentPath());
                if (needed && (doc == null || doc.getFullBody().isEmpty() && doc.getBlockTags().isEmpty())) {
                    breaches.add(source.place(tree) + " " + name + " has no Javadoc");
                }
            }
        }.scan(source.unit, true);
        return breaches;
    }

    private static boolean isPublic(ModifiersTree modifiers) {
        return modifiers.getFlags().contains(Modifier.PUBLIC) || modifiers.getFlags().contains(Modifier.PROTECTED);
    }

    private static boolean inInterface(TreePath path) {
        Tree parent = path.getParentPath().getLeaf();
        return parent.getKind() == Tree.Kind.INTERFACE || parent.getKind() == Tree.Kind.ANNOTATION_TYPE;
    }

    /** Public records that hold an array and leave it to Java to print it, which prints where it lies in memory. */
    static Set<String> unprintable(ParsedSource source) {
        Set<String> breaches = new TreeSet<>();
        new TreePathScanner<Void, Void>() {
            @Override
            public Void visitClass(ClassTree type, Void nothing) {
                boolean array = type.getMembers().stream().anyMatch(member -> member instanceof VariableTree field
                        && field.getType() instanceof ArrayTypeTree && !field.getModifiers().getFlags().contains(Modifier.STATIC));
                boolean prints = type.getMembers().stream()
                        .anyMatch(member -> member instanceof MethodTree method && method.getName().contentEquals("toString"));
                if (type.getKind() == Tree.Kind.RECORD && isPublic(type.getModifiers()) && array && !prints) {
                    breaches.add(source.place(type) + " " + type.getSimpleName() + " prints where its array lies in memory");
                }
                return super.visitClass(type, nothing);
            }
        }.scan(source.unit, null);
        return breaches;
    }

    /** Results that would depend on the machine, its language, its clock or on chance. */
    static Set<String> machine(ParsedSource source) {
        Set<String> breaches = new TreeSet<>();
        new TreePathScanner<Void, Void>() {
            @Override
            public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
                String called = call.getMethodSelect().toString();
                String method = called.substring(called.lastIndexOf('.') + 1);
                List<? extends ExpressionTree> arguments = call.getArguments();
                boolean localeFirst = !arguments.isEmpty()
                        && arguments.get(0).toString().toLowerCase(Locale.ROOT).contains("locale");
                boolean formats = (called.equals("String.format") || method.equals("printf")) && !localeFirst
                        || method.equals("formatted");
                boolean cases = (method.equals("toLowerCase") || method.equals("toUpperCase") || method.equals("getBytes"))
                        && arguments.isEmpty();
                if (formats || cases || OF_THE_MOMENT.contains(lastTwo(called)) && arguments.isEmpty()) {
                    breaches.add(source.place(call) + " " + called + " depends on the machine");
                }
                return super.visitMethodInvocation(call, nothing);
            }

            @Override
            public Void visitNewClass(NewClassTree made, Void nothing) {
                String type = made.getIdentifier().toString();
                String simple = type.substring(type.lastIndexOf('.') + 1);
                if (OF_THE_MOMENT_MADE.contains(simple) && made.getArguments().isEmpty()
                        || simple.equals("DecimalFormat") && made.getArguments().size() < 2) {
                    breaches.add(source.place(made) + " new " + simple + " depends on the machine");
                }
                return super.visitNewClass(made, nothing);
            }
        }.scan(source.unit, null);
        breaches.addAll(paths(source.name, source.text));
        return breaches;
    }

    /** Paths of somebody's machine in a text. */
    static Set<String> paths(String name, String text) {
        Set<String> breaches = new TreeSet<>();
        Matcher path = MACHINE_PATH.matcher(text);
        while (path.find()) {
            breaches.add(name + ":" + text.substring(0, path.start()).lines().count() + " holds the path " + path.group());
        }
        return breaches;
    }

    /** What a package-info lacks: the mark that nothing is null, or a class to start with that exists. */
    static Set<String> introduction(ParsedSource source, Predicate<String> exists) {
        Set<String> breaches = new TreeSet<>();
        boolean marked = source.unit.getPackageAnnotations().stream()
                .anyMatch(annotation -> annotation.getAnnotationType().toString().endsWith("NullMarked"));
        if (!marked) {
            breaches.add(source.name + " is not @NullMarked");
        }
        String start = start(source);
        if (start.isEmpty()) {
            breaches.add(source.name + " names no class to start with");
        } else if (!start.startsWith(source.packageName() + ".") || !exists.test(start)) {
            breaches.add(source.name + " starts with " + start + ", which is not there");
        }
        return breaches;
    }

    /** The class with which a package says that one should start; empty where it says nothing. */
    private static String start(ParsedSource source) {
        DocCommentTree doc = source.docs.getDocCommentTree(new TreePath(new TreePath(source.unit), source.unit.getPackage()));
        Matcher start = START.matcher(doc == null ? "" : doc.toString());
        return start.find() ? start.group(1) : "";
    }

    /** A room that the plan of the house has one begin elsewhere than the room itself does. */
    static Set<String> misplanned(ParsedSource source, String plan) {
        String room = source.packageName().substring(source.packageName().lastIndexOf('.') + 1);
        String first = start(source).substring(start(source).lastIndexOf('.') + 1);
        boolean same = Pattern.compile("(?m)^\\| `" + room + "` \\|[^|]*\\| `" + first + "`").matcher(plan).find();
        return same ? Set.of() : Set.of(source.name + " starts with " + first + ", the plan of the house with something else");
    }

    /** Imports that nothing in the file speaks of, or that stand there twice. */
    static Set<String> idleImports(ParsedSource source) {
        Set<String> breaches = new TreeSet<>();
        Set<String> met = new TreeSet<>();
        String rest = IMPORT.matcher(source.text).replaceAll("");
        for (ImportTree line : source.unit.getImports()) {
            String name = line.getQualifiedIdentifier().toString();
            String simple = name.substring(name.lastIndexOf('.') + 1);
            boolean used = simple.equals("*") || Pattern.compile("\\b" + simple + "\\b").matcher(rest).find();
            if (!used || !met.add(name)) {
                breaches.add(source.place(line) + " nothing asks for this import of " + name);
            }
        }
        return breaches;
    }

    /** The types that a file declares, those within others among them. */
    static Set<String> types(ParsedSource source) {
        Set<String> types = new TreeSet<>();
        new TreePathScanner<Void, Void>() {
            @Override
            public Void visitClass(ClassTree type, Void nothing) {
                types.add(type.getSimpleName().toString());
                return super.visitClass(type, nothing);
            }
        }.scan(source.unit, null);
        return types;
    }

    /** Types of which a page speaks and that are not there. */
    static Set<String> gone(String page, Set<String> types) {
        Set<String> gone = new TreeSet<>();
        Matcher named = NAMED_TYPE.matcher(page);
        while (named.find()) {
            if (!types.contains(named.group(1))) {
                gone.add(named.group(1));
            }
        }
        return gone;
    }

    /** Names at the top of the repository that have no business there. */
    static Set<String> strangers(List<String> names, List<String> ignored) {
        Set<String> known = Set.of("README.md", "DEVELOPERS.md", "LICENSE", "pom.xml", "src", "notebooks", "sample-listings");
        Set<String> strangers = new TreeSet<>();
        for (String name : names) {
            boolean left = ignored.stream().anyMatch(pattern -> pattern.startsWith("*") ? name.endsWith(pattern.substring(1))
                    : pattern.replace("/", "").equals(name));
            if (!name.startsWith(".") && !known.contains(name) && !left) {
                strangers.add(name);
            }
        }
        return strangers;
    }

    /** What a folder of reference data leaves unsaid about itself. */
    static List<String> unsaid(String sourceNote) {
        List<String> missing = new ArrayList<>();
        String note = sourceNote.toLowerCase(Locale.ROOT);
        for (String needed : List.of("source", "licence", "made")) {
            if (!note.contains(needed)) {
                missing.add(needed);
            }
        }
        return missing;
    }

    private interface NameVisitor {
        void take(String place, String name);
    }

    /** Every dotted name of a file: imports, and names written out in full. */
    private static void eachName(ParsedSource source, NameVisitor visitor) {
        new TreePathScanner<Void, Void>() {
            @Override
            public Void visitMemberSelect(MemberSelectTree select, Void nothing) {
                boolean outermost = !(getCurrentPath().getParentPath().getLeaf() instanceof MemberSelectTree);
                boolean ownName = select == source.unit.getPackageName();
                if (outermost && !ownName) {
                    visitor.take(source.place(select), select.toString());
                }
                return super.visitMemberSelect(select, nothing);
            }
        }.scan(source.unit, null);
    }

    private static String room(String name) {
        String[] parts = name.split("\\.");
        return parts.length < 2 ? "" : parts[1];
    }

    private static String lastTwo(String called) {
        int last = called.lastIndexOf('.');
        int before = last < 0 ? -1 : called.lastIndexOf('.', last - 1);
        return called.substring(before + 1);
    }
}
