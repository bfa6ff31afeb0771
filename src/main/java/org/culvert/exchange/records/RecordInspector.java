package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.culvert.exchange.reading.CellWords;
import org.culvert.exchange.reading.ColumnWays;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.Names;
import org.culvert.exchange.reading.TableInspection;
import org.culvert.exchange.records.RecordInspectionView.RecordChoice;
import org.culvert.exchange.records.RecordInspectionView.RecordColumn;
import org.culvert.exchange.records.RecordInspectionView.RecordFormerReading;
import org.culvert.exchange.records.RecordInspectionView.RecordProposal;
import org.culvert.exchange.records.RecordInspectionView.RecordQuestion;
import org.culvert.exchange.records.RecordInspectionView.RecordWord;
import org.culvert.taxon.SynonymService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Says in words what was found in a file: columns, proposals, questions, and words that have to mean something. */
@ApplicationScoped
class RecordInspector {
    private static final int EXAMPLES = 5;
    private static final int LONGEST_EXAMPLE = 100;
    private static final int MOST_WORDS = 500;
    private static final int MOST_PERHAPS = 5;
    private static final double THOUSANDTHS = 1000;
    private static final Set<Headings.Field> OF_WORDS = Set.of(
            Headings.Field.scientificName,
            Headings.Field.vernacularName,
            Headings.Field.direction,
            Headings.Field.vitality,
            Headings.Field.sex,
            Headings.Field.cause);

    private final TaxonService taxa;
    private final SynonymService synonyms;
    private final EntityManager entities;

    RecordInspector(TaxonService taxa, SynonymService synonyms, EntityManager entities) {
        this.taxa = taxa;
        this.synonyms = synonyms;
        this.entities = entities;
    }

    RecordInspectionView view(
            boolean encodingIsSure, RecordFileText.Inspected inspected, @Nullable RecordFormerReading former) {
        return view(encodingIsSure, inspected, former, inspected.table().proposedColumns());
    }

    /**
     * What was found, with the questions and the words of columns that hold something else than is proposed.
     *
     * @param columns what they hold
     */
    RecordInspectionView view(
            boolean encodingIsSure,
            RecordFileText.Inspected inspected,
            @Nullable RecordFormerReading former,
            Map<Headings.Field, Integer> columns) {
        TableInspection table = inspected.table();
        List<Headings.Proposal> proposals = table.proposals();
        return new RecordInspectionView(
                inspected.form().encoding(),
                encodingIsSure,
                inspected.form().separator(),
                inspected.form().headingRow(),
                inspected.start().titles(),
                table.rows(),
                table.emptyRows(),
                table.shorterRows(),
                table.longerRows(),
                table.brokenQuotes(),
                columns(table),
                proposals.stream()
                        .map(one -> new RecordProposal(one.field().name(), one.column(), one.because()))
                        .toList(),
                questions(encodingIsSure, inspected, columns),
                words(table, columns),
                former);
    }

    private static List<RecordColumn> columns(TableInspection table) {
        List<RecordColumn> columns = new ArrayList<>();
        for (int i = 0; i < table.headings().size(); i++) {
            ColumnWays way = table.column(i);
            columns.add(new RecordColumn(
                    i,
                    table.headings().get(i),
                    way.told(),
                    way.missing(),
                    rounded(way.shareOfDays()),
                    rounded(way.shareOfNumbers()),
                    way.examples().stream()
                            .limit(EXAMPLES)
                            .map(RecordInspector::shortened)
                            .toList()));
        }
        return columns;
    }

    private static double rounded(double share) {
        return Math.round(share * THOUSANDTHS) / THOUSANDTHS;
    }

    /** The database keeps no NUL. */
    private static String shortened(String cell) {
        String shown = cell.replace('\0', '␀');
        return shown.length() > LONGEST_EXAMPLE ? shown.substring(0, LONGEST_EXAMPLE) + "…" : shown;
    }

    /** All that is open if the columns hold this: of the text, of the cells, and of the cause. */
    List<RecordQuestion> questions(
            boolean encodingIsSure, RecordFileText.Inspected inspected, Map<Headings.Field, Integer> columns) {
        List<RecordQuestion> questions = new ArrayList<>();
        if (!encodingIsSure) {
            questions.add(new RecordQuestion(
                    "encoding",
                    "In which encoding is the text?",
                    RecordFileText.encodings().stream()
                            .map(name -> new RecordChoice(name, name))
                            .toList(),
                    "Its octets do not tell. Look at words with accents among the examples.",
                    false,
                    inspected.form().encoding()));
        }
        if (!inspected.start().rivals().isEmpty()) {
            questions.add(new RecordQuestion(
                    "separator",
                    "Which sign separates the cells?",
                    inspected.start().rivals().stream()
                            .map(rival -> new RecordChoice(rival.name(), rival.name()))
                            .toList(),
                    "Others fit nearly as well as the "
                            + inspected.form().separator().name() + ".",
                    false,
                    inspected.form().separator().name()));
        }
        if (inspected.form().headingRow() == 0) {
            questions.add(new RecordQuestion(
                    "headingRow",
                    "Which row has the headings?",
                    List.of(new RecordChoice("0", "none"), new RecordChoice("1", "the first")),
                    "None of the first rows looks like headings.",
                    false,
                    "0"));
        }
        inspected.table().questions(columns).stream()
                .map(RecordInspector::question)
                .forEach(questions::add);
        if (!columns.containsKey(Headings.Field.cause)) {
            questions.add(new RecordQuestion(
                    "cause",
                    "What happened to the animals of this file?",
                    causes(),
                    "No column tells it. Only collisions are evidence of roads.",
                    true,
                    null));
        }
        return List.copyOf(questions);
    }

    private static RecordQuestion question(TableInspection.Question asked) {
        return new RecordQuestion(
                asked.key(),
                shortened(asked.words()),
                asked.choices().stream()
                        .map(choice -> new RecordChoice(choice.value(), choice.words()))
                        .toList(),
                asked.evidence().replace('\0', '␀'),
                asked.needed(),
                asked.proposed());
    }

    List<RecordChoice> causes() {
        List<?> rows = entities.createNativeQuery("select key, name from causes order by key", Object[].class)
                .getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new RecordChoice((String) row[0], (String) row[1]))
                .toList();
    }

    private List<RecordWord> words(TableInspection table, Map<Headings.Field, Integer> columns) {
        List<RecordWord> words = new ArrayList<>();
        var names = new AnimalNames(taxa.findTaxa(null), taxa.listGroups(), synonyms.listCurrent());
        columns.forEach((field, column) -> {
            if (OF_WORDS.contains(field)) {
                table.column(column).words().entrySet().stream()
                        .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                        .limit(MOST_WORDS)
                        .map(word -> word(names, field, word.getKey(), word.getValue()))
                        .forEach(words::add);
            }
        });
        return words;
    }

    private static RecordWord word(AnimalNames names, Headings.Field field, String word, int rows) {
        String meaning = CellWords.meaning(field, word);
        Map<String, String> perhaps = new LinkedHashMap<>();
        boolean isName = field == Headings.Field.scientificName || field == Headings.Field.vernacularName;
        if (isName && meaning == null) {
            List<Names.Match> matches = names.find(word);
            if (matches.size() == 1 && matches.get(0).likeness().isSure()) {
                meaning = matches.get(0).key();
            }
            matches.stream().limit(MOST_PERHAPS).forEach(match -> perhaps.put(match.key(), names.told(match)));
        }
        return new RecordWord(field.name(), shortened(word), rows, meaning, perhaps);
    }
}
