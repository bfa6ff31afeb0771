package org.culvert.platform.sight;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.culvert.platform.Role;
import org.jspecify.annotations.Nullable;

/**
 * The table of who sees what, read from {@code who-sees-what.md}. It knows three tables by their first column: operations,
 * fields of resources, and records that are somebody's own. A server whose table cannot be read does not start.
 */
public final class SightTable {
    /** The column of those who are not signed in; everybody may do and see what they may. */
    public static final String PUBLIC = "public";

    private static final String LEGEND = "cell";
    private static final String FILE = "/who-sees-what.md";

    /**
     * Records that are somebody's own.
     *
     * @param path where single ones are, such as {@code /api/cases}
     * @param holders database view of {@code id} and {@code organisation_id}, or null where they are nobody's own
     * @param sensitivity database view of {@code id} and {@code strictness}, or null where no place is generalised
     */
    record Held(
            @Nullable String path,
            @Nullable String holders,
            @Nullable String sensitivity) {}

    private final Map<String, Set<String>> rolesByOperation = new LinkedHashMap<>();
    private final Map<String, Map<String, Map<String, Right>>> rights = new LinkedHashMap<>();
    private final Map<String, Held> held = new LinkedHashMap<>();

    private SightTable() {}

    /** The table that this build carries. */
    public static SightTable load() {
        try (InputStream file = SightTable.class.getResourceAsStream(FILE)) {
            if (file == null) {
                throw new IllegalStateException(FILE + " is not in this build");
            }
            return parse(new String(file.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @throws IllegalArgumentException naming the line that is wrong */
    public static SightTable parse(String markdown) {
        var table = new SightTable();
        List<String> header = List.of();
        int number = 0;
        for (String line : markdown.lines().toList()) {
            number++;
            if (!line.startsWith("|")) {
                header = List.of();
                continue;
            }
            List<String> cells = cells(line);
            try {
                if (header.isEmpty()) {
                    header = checkedHeader(cells);
                } else if (!cells.get(0).matches("-+")) {
                    table.take(header, cells);
                }
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException("who-sees-what.md, line " + number + ": " + e.getMessage(), e);
            }
        }
        return table;
    }

    private static List<String> cells(String line) {
        String inner = line.strip();
        inner = inner.substring(1, inner.endsWith("|") ? inner.length() - 1 : inner.length());
        return Arrays.stream(inner.split("\\|", -1)).map(String::strip).toList();
    }

    private static List<String> checkedHeader(List<String> cells) {
        int firstRole = firstRole(cells.get(0));
        if (firstRole > cells.size()) {
            return cells;
        }
        for (String role : cells.subList(firstRole, cells.size())) {
            if (firstRole < 3 && !role.equals(PUBLIC) && !Role.ALL.contains(role)) {
                throw new IllegalArgumentException("there is no role " + role);
            }
        }
        List<String> told = cells.subList(firstRole, cells.size());
        if (firstRole < 3 && (!told.containsAll(Role.ALL) || !told.contains(PUBLIC))) {
            throw new IllegalArgumentException("a role has no column");
        }
        return cells;
    }

    private static int firstRole(String table) {
        return switch (table) {
            case "operation" -> 1;
            case "resource" -> 2;
            case "records", LEGEND -> 4;
            default -> throw new IllegalArgumentException("no table begins with the column " + table);
        };
    }

    private void take(List<String> header, List<String> cells) {
        if (cells.size() != header.size()) {
            throw new IllegalArgumentException(cells.size() + " cells under " + header.size() + " columns");
        }
        switch (header.get(0)) {
            case "operation" -> takeOperation(header, cells);
            case "resource" -> takeFields(header, cells);
            case LEGEND -> {}
            default -> takeHeld(cells);
        }
    }

    private void takeOperation(List<String> header, List<String> cells) {
        Set<String> roles = new LinkedHashSet<>();
        for (int i = 1; i < cells.size(); i++) {
            switch (cells.get(i)) {
                case "yes" -> roles.add(header.get(i));
                case "–" -> {}
                default -> throw new IllegalArgumentException("an operation is yes or –, not " + cells.get(i));
            }
        }
        if (rolesByOperation.put(cells.get(0), roles) != null) {
            throw new IllegalArgumentException(cells.get(0) + " has two rows");
        }
    }

    private void takeFields(List<String> header, List<String> cells) {
        Map<String, Right> row = new LinkedHashMap<>();
        for (int i = 2; i < cells.size(); i++) {
            row.put(header.get(i), Right.of(cells.get(i)));
        }
        Map<String, Map<String, Right>> fields = rights.computeIfAbsent(cells.get(0), name -> new LinkedHashMap<>());
        for (String field : cells.get(1).split(" +")) {
            if (!field.matches("[a-z][A-Za-z0-9]*")) {
                throw new IllegalArgumentException("no field has the name \"" + field + "\"");
            }
            if (fields.put(field, row) != null) {
                throw new IllegalArgumentException(cells.get(0) + " " + field + " has two rows");
            }
        }
    }

    private void takeHeld(List<String> cells) {
        Held row = new Held(given(cells.get(1)), given(cells.get(2)), given(cells.get(3)));
        if (held.put(cells.get(0), row) != null) {
            throw new IllegalArgumentException(cells.get(0) + " has two rows");
        }
    }

    private static @Nullable String given(String cell) {
        if (cell.equals("–")) {
            return null;
        }
        if (!cell.matches("[a-z_]+|/[a-z/-]+")) {
            throw new IllegalArgumentException("this is neither a path nor a view: " + cell);
        }
        return cell;
    }

    /** Operations as {@code METHOD /path}, in the order of the table. */
    public Set<String> operations() {
        return rolesByOperation.keySet();
    }

    /** Who may call an operation; {@link #PUBLIC} among them where everybody may. */
    public Set<String> rolesOf(String operation) {
        return rolesByOperation.getOrDefault(operation, Set.of());
    }

    /** Resources and their fields, in the order of the table. */
    public Map<String, Set<String>> fields() {
        Map<String, Set<String>> fields = new LinkedHashMap<>();
        rights.forEach((resource, rows) -> fields.put(resource, rows.keySet()));
        return fields;
    }

    /** Whether a role never sees a field, or the field has no row. */
    public boolean neverShows(String resource, String field, String role) {
        return right(resource, field, List.of(role)).isNothing();
    }

    /** The widest right of some roles, those of everybody included. */
    Right right(String resource, String field, Collection<String> roles) {
        Map<String, Right> row = rights.getOrDefault(resource, Map.of()).get(field);
        if (row == null) {
            return Right.NONE;
        }
        Right widest = row.getOrDefault(PUBLIC, Right.NONE);
        for (String role : roles) {
            widest = widest.or(row.getOrDefault(role, Right.NONE));
        }
        return widest;
    }

    /** Whether some roles see fields of a resource in their own records, and none in others'. */
    boolean showsOwnOnly(String resource, Collection<String> roles) {
        boolean own = false;
        for (String field : rights.getOrDefault(resource, Map.of()).keySet()) {
            Right right = right(resource, field, roles);
            if (right.exact() == Right.Exact.ALWAYS || right.otherwise() != Right.Otherwise.NOTHING) {
                return false;
            }
            own |= right.exact() == Right.Exact.OWN;
        }
        return own;
    }

    /** Whether some roles see any field of a resource generalised. */
    boolean generalisesAny(String resource, Collection<String> roles) {
        return rights.getOrDefault(resource, Map.of()).keySet().stream()
                .anyMatch(field -> right(resource, field, roles).otherwise() != Right.Otherwise.NOTHING);
    }

    Optional<Held> findHeld(String resource) {
        return Optional.ofNullable(held.get(resource));
    }

    /** The resource whose single records are under a path, and where the identifier stands in it. */
    Optional<HeldPath> findHeldPath(String path) {
        for (Map.Entry<String, Held> entry : held.entrySet()) {
            String base = entry.getValue().path();
            if (base != null && entry.getValue().holders() != null && path.startsWith(base + "/")) {
                String rest = path.substring(base.length() + 1);
                int slash = rest.indexOf('/');
                return Optional.of(new HeldPath(entry.getKey(), slash < 0 ? rest : rest.substring(0, slash)));
            }
        }
        return Optional.empty();
    }

    record HeldPath(String resource, String id) {}

    /** Database views that the table names. */
    public List<String> views() {
        List<String> views = new ArrayList<>();
        held.values().forEach(row -> {
            if (row.holders() != null) {
                views.add(row.holders());
            }
            if (row.sensitivity() != null) {
                views.add(row.sensitivity());
            }
        });
        return views;
    }
}
