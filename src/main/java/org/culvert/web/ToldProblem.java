package org.culvert.web;

import io.quarkiverse.resteasy.problem.HttpProblem;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.ProblemMapping;
import org.culvert.platform.watch.RequestId;
import org.jspecify.annotations.Nullable;

/**
 * A problem as a page tells it.
 *
 * @param type name of its type, which has a page
 * @param remedy what to do about problems of the type
 * @param requestId what the log calls the request, or null where it has no name
 */
public record ToldProblem(
        String type,
        String title,
        int status,
        @Nullable String detail,
        List<FieldError> errors,
        List<String> reasons,
        @Nullable String remedy,
        @Nullable String requestId) {

    static ToldProblem of(HttpProblem problem) {
        String address = String.valueOf(problem.getType());
        String type =
                address.startsWith(ProblemMapping.TYPES) ? address.substring(ProblemMapping.TYPES.length()) : "other";
        return new ToldProblem(
                type,
                Objects.requireNonNullElse(problem.getTitle(), "Something is not right"),
                problem.getStatusCode(),
                problem.getDetail(),
                listed(problem, "errors", FieldError.class),
                listed(problem, "reasons", Object.class).stream()
                        .map(Object::toString)
                        .toList(),
                remedy(type),
                Optional.ofNullable(problem.getParameters().get(RequestId.KEY))
                        .map(Object::toString)
                        .orElse(null));
    }

    private static <T> List<T> listed(HttpProblem problem, String name, Class<T> type) {
        Object value = problem.getParameters().get(name);
        return value instanceof List<?> list
                ? list.stream().filter(type::isInstance).map(type::cast).toList()
                : List.of();
    }

    static @Nullable String remedy(String type) {
        return ProblemPage.ALL.stream()
                .filter(page -> page.type().equals(type))
                .findFirst()
                .map(ProblemPage::remedy)
                .orElse(null);
    }
}
