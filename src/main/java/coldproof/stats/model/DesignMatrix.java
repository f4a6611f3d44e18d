package coldproof.stats.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The fixed effects of a linear model: an intercept, factors in sum-to-zero coding, their interactions, and covariates. Immutable; every
 * {@code with} gives a new matrix.
 *
 * <p>Sum-to-zero coding of a factor with L levels has L - 1 columns: column j is 1 for level j, -1 for the last level, else 0. In this coding
 * a difference of main-effect coefficients averages the levels of every other factor equally, however many trials each has.
 */
public final class DesignMatrix {
    private final int rows;
    private final List<double[]> columns;
    private final List<String> columnNames;
    private final List<Term> terms;

    private record Term(String name, int levels, int first, int count) {}

    private DesignMatrix(int rows, List<double[]> columns, List<String> columnNames, List<Term> terms) {
        this.rows = rows;
        this.columns = columns;
        this.columnNames = columnNames;
        this.terms = terms;
    }

    /**
     * The matrix that holds the intercept only.
     *
     * @param rows number of trials, 1 or more
     * @throws IllegalArgumentException if there is no row
     */
    public static DesignMatrix intercept(int rows) {
        if (rows < 1) {
            throw new IllegalArgumentException("rows " + rows + " is not 1 or more");
        }
        double[] ones = new double[rows];
        Arrays.fill(ones, 1);
        return new DesignMatrix(rows, List.of(ones), List.of("intercept"), List.of(new Term("intercept", 1, 0, 1)));
    }

    /**
     * Adds the main effect of a factor.
     *
     * @param name not used before
     * @param level level of each row, 0 to {@code levels - 1}
     * @param levels number of levels, 2 or more
     * @throws IllegalArgumentException if the name is taken, the length is wrong or a level is out of range
     */
    public DesignMatrix withFactor(String name, int[] level, int levels) {
        if (levels < 2) {
            throw new IllegalArgumentException("factor " + name + " has " + levels + " levels, not 2 or more");
        }
        if (level.length != rows) {
            throw new IllegalArgumentException("factor " + name + " has " + level.length + " entries for " + rows + " rows");
        }
        List<double[]> added = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int column = 0; column < levels - 1; column++) {
            added.add(new double[rows]);
            names.add(name + "[" + column + "]");
        }
        for (int row = 0; row < rows; row++) {
            if (level[row] < 0 || level[row] >= levels) {
                throw new IllegalArgumentException("factor " + name + " has level " + level[row] + " outside [0, " + levels + ")");
            }
            for (int column = 0; column < levels - 1; column++) {
                added.get(column)[row] = coding(level[row], column, levels);
            }
        }
        return with(name, levels, added, names);
    }

    /**
     * Adds a covariate as it stands, for example the run order centred inside each session.
     *
     * @param name not used before
     * @param values one finite value for each row
     * @throws IllegalArgumentException if the name is taken, the length is wrong or a value is not finite
     */
    public DesignMatrix withCovariate(String name, double[] values) {
        if (values.length != rows) {
            throw new IllegalArgumentException("covariate " + name + " has " + values.length + " entries for " + rows + " rows");
        }
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("covariate " + name + " holds " + value + ", which is not finite");
            }
        }
        return with(name, 1, List.of(values.clone()), List.of(name));
    }

    /**
     * Adds the interaction of two terms already present: all products of their columns. Its name is {@code first:second}.
     *
     * @throws IllegalArgumentException if a term is not present or the interaction already is
     */
    public DesignMatrix withInteraction(String first, String second) {
        Term a = term(first);
        Term b = term(second);
        List<double[]> added = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < a.count; i++) {
            for (int j = 0; j < b.count; j++) {
                double[] left = columns.get(a.first + i);
                double[] right = columns.get(b.first + j);
                double[] product = new double[rows];
                for (int row = 0; row < rows; row++) {
                    product[row] = left[row] * right[row];
                }
                added.add(product);
                names.add(columnNames.get(a.first + i) + ":" + columnNames.get(b.first + j));
            }
        }
        return with(first + ":" + second, a.levels * b.levels, added, names);
    }

    private DesignMatrix with(String name, int levels, List<double[]> added, List<String> names) {
        for (Term term : terms) {
            if (term.name.equals(name)) {
                throw new IllegalArgumentException("the term " + name + " is in the model already");
            }
        }
        List<double[]> allColumns = new ArrayList<>(columns);
        allColumns.addAll(added);
        List<String> allNames = new ArrayList<>(columnNames);
        allNames.addAll(names);
        List<Term> allTerms = new ArrayList<>(terms);
        allTerms.add(new Term(name, levels, columns.size(), added.size()));
        return new DesignMatrix(rows, List.copyOf(allColumns), List.copyOf(allNames), List.copyOf(allTerms));
    }

    /**
     * The contrast "level {@code to} minus level {@code from}" of a factor, every other factor's levels weighted equally.
     *
     * @return coefficients, one for each column
     * @throws IllegalArgumentException if there is no such factor or level
     */
    public double[] difference(String factor, int from, int to) {
        double[] contrast = new double[columns.size()];
        addDifference(contrast, term(factor), from, to, 1);
        return contrast;
    }

    /**
     * The contrast "what {@code second} does at {@code to} of {@code first}, minus what it does at {@code from}": the difference of the
     * differences.
     *
     * @throws IllegalArgumentException if the interaction is not in the model or there is no such level
     */
    public double[] differenceOfDifferences(String first, int from, int to, String second, int secondFrom, int secondTo) {
        Term a = term(first);
        Term b = term(second);
        Term both = term(first + ":" + second);
        double[] contrast = new double[columns.size()];
        double[] ofFirst = new double[columns.size()];
        double[] ofSecond = new double[columns.size()];
        addDifference(ofFirst, a, from, to, 1);
        addDifference(ofSecond, b, secondFrom, secondTo, 1);
        for (int i = 0; i < a.count; i++) {
            for (int j = 0; j < b.count; j++) {
                contrast[both.first + i * b.count + j] = ofFirst[a.first + i] * ofSecond[b.first + j];
            }
        }
        return contrast;
    }

    /**
     * The contrast that picks one column, for example a covariate's slope.
     *
     * @throws IllegalArgumentException if the term is absent or has several columns
     */
    public double[] slope(String covariate) {
        Term term = term(covariate);
        if (term.count != 1) {
            throw new IllegalArgumentException("the term " + covariate + " has " + term.count + " columns, not one slope");
        }
        double[] contrast = new double[columns.size()];
        contrast[term.first] = 1;
        return contrast;
    }

    /**
     * The rows that together test a whole term: one for each of its columns.
     *
     * @throws IllegalArgumentException if the term is absent
     */
    public double[][] hypothesis(String name) {
        Term term = term(name);
        double[][] contrasts = new double[term.count][columns.size()];
        for (int i = 0; i < term.count; i++) {
            contrasts[i][term.first + i] = 1;
        }
        return contrasts;
    }

    /** Number of rows: trials. */
    public int rows() {
        return rows;
    }

    /** Number of columns: coefficients. */
    public int columns() {
        return columns.size();
    }

    /** Name of a column, for messages. */
    String columnName(int column) {
        return columnNames.get(column);
    }

    /** A copy of the columns, in the order of the coefficients. */
    public double[][] copyOfColumns() {
        double[][] copy = new double[columns.size()][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = columns.get(i).clone();
        }
        return copy;
    }

    private static double coding(int level, int column, int levels) {
        if (level == levels - 1) {
            return -1;
        }
        return level == column ? 1 : 0;
    }

    private static void addDifference(double[] contrast, Term term, int from, int to, double weight) {
        if (term.count != term.levels - 1) {
            throw new IllegalArgumentException("the term " + term.name + " is no factor");
        }
        if (from < 0 || from >= term.levels || to < 0 || to >= term.levels) {
            throw new IllegalArgumentException("levels " + from + " and " + to + " of " + term.name + " are not both in [0, " + term.levels
                    + ")");
        }
        for (int column = 0; column < term.count; column++) {
            contrast[term.first + column] += weight * (coding(to, column, term.levels) - coding(from, column, term.levels));
        }
    }

    private Term term(String name) {
        for (Term term : terms) {
            if (term.name.equals(name)) {
                return term;
            }
        }
        throw new IllegalArgumentException("the model has no term " + name);
    }
}
