package org.culvert.platform.sight;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.lang.annotation.Annotation;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.lang.reflect.WildcardType;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;

/** What the operations of this server answer with, read from its classes. */
final class Outgoing {
    private static final List<Class<? extends Annotation>> VERBS =
            List.of(GET.class, POST.class, PUT.class, PATCH.class, DELETE.class);

    private static final Map<String, Method> OPERATIONS = Collections.unmodifiableMap(read());

    private Outgoing() {}

    /** The method behind each operation, by {@code METHOD /path}. */
    static Map<String, Method> operations() {
        return OPERATIONS;
    }

    /** What an operation answers with: what its method returns, or what it says in the contract where that tells nothing. */
    static Type answer(Method method) {
        APIResponseSchema told = method.getAnnotation(APIResponseSchema.class);
        return method.getReturnType() == Response.class && told != null ? told.value() : method.getGenericReturnType();
    }

    private static Map<String, Method> read() {
        Map<String, Method> operations = new TreeMap<>();
        new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.culvert").stream()
                        .filter(type -> type.isAnnotatedWith(Path.class))
                        .map(type -> type.reflect())
                        .forEach(type -> Arrays.stream(type.getDeclaredMethods())
                                .forEach(method -> verbs(method)
                                        .forEach(verb -> operations.put(
                                                verb + " "
                                                        + path(
                                                                type.getAnnotation(Path.class),
                                                                method.getAnnotation(Path.class)),
                                                method))));
        return operations;
    }

    private static List<String> verbs(Method method) {
        return VERBS.stream()
                .filter(method::isAnnotationPresent)
                .map(verb -> verb.getAnnotation(HttpMethod.class).value())
                .toList();
    }

    private static String path(Path ofClass, Path ofMethod) {
        String path = "/" + ofClass.value() + "/" + (ofMethod == null ? "" : ofMethod.value());
        path = path.replaceAll("\\{ *(\\w+) *:[^}]*\\}+", "{$1}").replaceAll("/+", "/");
        return path.length() > 1 && path.endsWith("/") ? path.substring(0, path.length() - 1) : path;
    }

    /** Records of ours that can be reached from a type, that of the type itself included. */
    static Set<Class<?>> records(Type type) {
        Set<Class<?>> found = new LinkedHashSet<>();
        collect(type, found);
        return found;
    }

    /** Whether a type stands for one of several records. */
    static boolean isOurChoice(Class<?> type) {
        return type.isSealed() && type.getName().startsWith("org.culvert.");
    }

    private static void collect(Type type, Set<Class<?>> found) {
        if (type instanceof ParameterizedType parameterized) {
            collect(parameterized.getRawType(), found);
            Arrays.stream(parameterized.getActualTypeArguments()).forEach(argument -> collect(argument, found));
        } else if (type instanceof GenericArrayType array) {
            collect(array.getGenericComponentType(), found);
        } else if (type instanceof WildcardType wildcard) {
            Arrays.stream(wildcard.getUpperBounds()).forEach(bound -> collect(bound, found));
        } else if (type instanceof Class<?> plain) {
            if (plain.isArray()) {
                collect(plain.getComponentType(), found);
            } else if (isOurChoice(plain)) {
                Arrays.stream(plain.getPermittedSubclasses()).forEach(one -> collect(one, found));
            } else if (SightModule.isOurs(plain) && found.add(plain)) {
                for (RecordComponent component : plain.getRecordComponents()) {
                    collect(component.getGenericType(), found);
                }
            }
        } else if (!(type instanceof TypeVariable)) {
            throw new IllegalStateException("no such kind of type is known: " + type);
        }
    }
}
