package org.tallywright.proof;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.http.server.PathContainer;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.util.pattern.PathPattern;
import org.tallywright.Application;

/** The routes as written in {@code authorisation/*.csv} and as the application has them. */
final class Routes {
    private Routes() {}

    /** All rows, in the order of the files; a row that cannot be read fails. */
    static List<Route> written() throws IOException {
        return written("classpath:authorisation/*.csv");
    }

    /** What is served without a handler of ours: by the security chain itself, from files, by the framework. */
    static List<Route> unmapped() throws IOException {
        return written("classpath:authorisation-unmapped/*.csv");
    }

    private static List<Route> written(String where) throws IOException {
        List<Route> routes = new ArrayList<>();
        Resource[] files = new PathMatchingResourcePatternResolver().getResources(where);
        for (Resource file : files) {
            for (String line : file.getContentAsString(StandardCharsets.UTF_8).split("\\R")) {
                String[] cells = line.split(",", -1);
                if (line.isBlank() || cells[0].equals("method")) {
                    continue;
                }
                if (cells.length != 3) {
                    throw new IllegalStateException(file.getFilename() + ": three cells wanted in " + line);
                }
                routes.add(new Route(cells[0], cells[1], Set.of(cells[2].strip().split(" +"))));
            }
        }
        return routes;
    }

    /** Method and pattern of each handler of ours, as in {@code GET /jobs/{number}}; all methods of one that names none. */
    static Set<String> mapped(RequestMappingHandlerMapping mapping) {
        Set<String> mapped = new TreeSet<>();
        mapping.getHandlerMethods().forEach((info, handler) -> {
            if (ours(handler.getBeanType())) {
                Set<RequestMethod> methods = info.getMethodsCondition().getMethods();
                for (RequestMethod method : methods.isEmpty() ? Set.of(RequestMethod.values()) : methods) {
                    info.getPatternValues().forEach(pattern -> mapped.add(method + " " + pattern));
                }
            }
        });
        return mapped;
    }

    /** Patterns of handlers that came with the framework. */
    static Set<String> foreign(RequestMappingHandlerMapping mapping) {
        Set<String> patterns = new TreeSet<>();
        mapping.getHandlerMethods().forEach((info, handler) -> {
            if (!handler.getBeanType().getName().startsWith("org.tallywright.")) {
                patterns.addAll(info.getPatternValues());
            }
        });
        return patterns;
    }

    private static boolean ours(Class<?> controller) {
        return controller
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .equals(Application.class.getProtectionDomain().getCodeSource().getLocation());
    }

    /** The pattern that serves this path, or empty when none does. */
    static String serving(RequestMappingHandlerMapping mapping, RequestMethod method, String path) {
        PathContainer parsed = PathContainer.parsePath(path);
        return mapping.getHandlerMethods().keySet().stream()
                .filter(info -> info.getMethodsCondition().getMethods().contains(method))
                .flatMap(info -> patterns(info).stream())
                .filter(pattern -> pattern.matches(parsed))
                .sorted(PathPattern.SPECIFICITY_COMPARATOR)
                .map(PathPattern::getPatternString)
                .findFirst()
                .orElse("");
    }

    private static Set<PathPattern> patterns(RequestMappingInfo info) {
        var condition = info.getPathPatternsCondition();
        return condition == null ? Set.of() : condition.getPatterns();
    }
}
