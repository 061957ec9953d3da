package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.NamedRows;
import swapworth.reading.RowsRead;
import swapworth.reading.UnusableFileException;
import swapworth.reading.Vocabulary;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What must be settled before money is spent: what a file {@code gates.csv} says, with the columns {@code gate}, {@code answer} (yes, no,
 * unknown) and {@code note}. Gates of the house that the file does not answer count as unknown.
 *
 * @param gates all gates: those of the house first, then the user's own
 * @param read what became of every row
 */
public record Gates(List<Gate> gates, RowsRead read) {

    /** What a gate says. */
    public enum Answer {
        /** It is open. */
        YES("yes"),
        /** It is shut. */
        NO("no"),
        /** Nobody asked yet. */
        UNKNOWN("unknown");

        private final String words;

        Answer(String words) {
            this.words = words;
        }

        /**
         * How it stands in a file and on a page.
         *
         * @return plain words in lower case
         */
        public String words() {
            return words;
        }
    }

    /**
     * One gate.
     *
     * @param name the gate in words
     * @param answer what it says
     * @param note the user's note; empty for none
     * @param caution what to do while it is not open
     */
    public record Gate(String name, Answer answer, String note, String caution) {
    }

    private enum Known {
        LAWFUL("lawful here", "Ask your registry or an engineer who may approve such changes whether this engine change is lawful where you"
                + " live, before you spend. (US: Clean Air Act 203(a)(3); EU: Regulation 2018/858, articles 44 and 45)",
                "lawful", "legal", "legal here", "may be driven here"),
        STRIPPED("may be stripped here", "Stripping and selling a car may need papers handed in first, a licence, or a limit on numbers:"
                + " ask your"
                + " registry. (for example California Vehicle Code 220 and 5500)", "may be stripped", "stripping", "strip", "may strip"),
        INSPECTABLE("inspectable", "Ask the inspection body before the work what it must see, and which papers of the donor it wants.",
                "inspected", "inspection", "can be inspected"),
        INSURABLE("insurable", "Ask the insurer in writing before you change the car: an undeclared change can end the policy. (UK:"
                + " Consumer Insurance (Disclosure and Representations) Act 2012, section 2)", "insured", "insurance", "can be insured"),
        LENDER("lender told", "If money is owed on the car, ask the lender: a change may break the terms of the loan.", "lender",
                "lender agrees",
                "bank told");

        private final String words;
        private final String caution;
        private final String[] synonyms;

        Known(String words, String caution, String... synonyms) {
            this.words = words;
            this.caution = caution;
            this.synonyms = synonyms;
        }
    }

    private static final Vocabulary<Answer> ANSWERS = Vocabulary.<Answer>empty().with(Answer.YES, "yes", "y", "true", "ok", "not needed")
            .with(Answer.NO, "no", "n", "false").with(Answer.UNKNOWN, "unknown", "not asked", "open");

    /** Copies the list in. */
    public Gates {
        gates = List.copyOf(gates);
        requireNonNull(read, "read");
    }

    /**
     * Reads a file.
     *
     * @param file the file
     * @return its gates
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static Gates read(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        FolderSettings settings = FolderSettings.of(folder == null ? Path.of("") : folder, Conventions.unstated());
        NamedRows rows = NamedRows.of(file, settings).needs("gate", "question", "what").needs("answer", "state").column("note", "remark");
        Vocabulary<Known> names = Vocabulary.empty();
        for (Known known : Known.values()) {
            names = names.with(known, known.words).with(known, known.synonyms);
        }
        List<Gate> own = new ArrayList<>();
        Map<Known, Gate> ofHouse = new EnumMap<>(Known.class);
        for (NamedRows.Row row : rows.rows()) {
            if (row.sumsUp("gate")) {
                continue;
            }
            Answer answer = row.word("answer", ANSWERS).orElse(Answer.UNKNOWN);
            String name = row.name("gate");
            Optional<Known> known = names.meaning(name);
            if (name.isEmpty()) {
                row.reject("gate", "a row needs the name of its gate, such as insurable");
            } else if (known.isPresent() && ofHouse.containsKey(known.get())) {
                row.setAside("gate", "this gate is answered by a row above");
            }
            if (!row.use()) {
                continue;
            }
            if (known.isPresent()) {
                ofHouse.put(known.get(), new Gate(known.get().words, answer, row.text("note"), known.get().caution));
            } else {
                own.add(new Gate(name, answer, row.text("note"), "Settle this before you spend."));
            }
        }
        List<Gate> all = new ArrayList<>();
        for (Known known : Known.values()) {
            all.add(ofHouse.containsKey(known) ? ofHouse.get(known) : new Gate(known.words, Answer.UNKNOWN, "the file does not answer",
                    known.caution));
        }
        all.addAll(own);
        return new Gates(all, rows.read());
    }

    /**
     * The gates that are not open.
     *
     * @return those that say no first, then those unknown
     */
    public List<Gate> notOpen() {
        List<Gate> shut = new ArrayList<>();
        for (Answer answer : List.of(Answer.NO, Answer.UNKNOWN)) {
            gates.stream().filter(gate -> gate.answer == answer).forEach(shut::add);
        }
        return shut;
    }

    /**
     * The gates that are answered with no, and how many more are open questions.
     *
     * @return a sentence; empty where none is answered with no
     */
    public String shut() {
        List<String> no = notOpen().stream().filter(gate -> gate.answer == Answer.NO).map(gate -> "'" + gate.name + "'").toList();
        int unknown = notOpen().size() - no.size();
        return no.isEmpty() ? "" : "Before any of this: " + String.join(", ", no) + (no.size() == 1 ? " is" : " are") + " answered with no"
                + (unknown == 0 ? "" : ", and " + unknown + (unknown == 1 ? " more gate is" : " more gates are") + " not answered")
                + ". Settle that before you spend; no figure below counts it.";
    }

    /**
     * One sentence for each gate that is not open, with what to do.
     *
     * @return for the head of a page
     */
    public List<String> warnings() {
        return notOpen().stream().map(gate -> gate.name + ": " + gate.answer.words + (gate.note.isEmpty() ? "" : " (" + gate.note + ")")
                + ". "
                + gate.caution).toList();
    }

    /**
     * The gates as a table.
     *
     * @return one row a gate
     */
    public Table table() {
        Table.Builder table = Table.titled("Gates").columns(Column.words("gate"), Column.words("answer"), Column.sentences("note"));
        table.note(read.sentence() + ".");
        gates.forEach(gate -> table.row(Cell.words(gate.name), Cell.words(gate.answer.words), Cell.words(gate.note)));
        return table.build();
    }
}
