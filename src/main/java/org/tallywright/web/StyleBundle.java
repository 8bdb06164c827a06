package org.tallywright.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.web.servlet.resource.AbstractResourceResolver;
import org.springframework.web.servlet.resource.ResourceResolverChain;
import org.springframework.web.servlet.resource.TransformedResource;

/**
 * The style sheets one after another as the one file {@code all.css}: on a phone's line each file of its own costs the
 * headers of a request, which together weighed more than the sheets. Tokens come first, as they set the order of the
 * cascade layers.
 */
final class StyleBundle extends AbstractResourceResolver {
    static final String NAME = "all.css";
    private static final List<String> SHEETS = List.of(
            "tokens",
            "reset",
            "base",
            "layout",
            "button",
            "form",
            "table",
            "tabs",
            "flash",
            "tag",
            "pager",
            "empty",
            "figure",
            "titleblock",
            "list",
            "find",
            "daysheet",
            "daylog",
            "queue",
            "stick",
            "ladder",
            "jobs",
            "review",
            "rates",
            "takeoff",
            "measuring",
            "photos",
            "past",
            "print",
            "utility");

    private final Resource all = read();

    private static Resource read() {
        try {
            return new TransformedResource(sheet(SHEETS.get(0)), content());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] content() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (String sheet : SHEETS) {
            bytes.write(sheet(sheet).getContentAsByteArray());
        }
        return bytes.toByteArray();
    }

    private static Resource sheet(String name) {
        return new ClassPathResource("static/css/" + name + ".css");
    }

    @Override
    protected @Nullable Resource resolveResourceInternal(
            @Nullable HttpServletRequest request,
            String requestPath,
            List<? extends Resource> locations,
            ResourceResolverChain chain) {
        return requestPath.equals(NAME) ? all : chain.resolveResource(request, requestPath, locations);
    }

    @Override
    protected @Nullable String resolveUrlPathInternal(
            String resourceUrlPath, List<? extends Resource> locations, ResourceResolverChain chain) {
        return resourceUrlPath.equals(NAME) ? NAME : chain.resolveUrlPath(resourceUrlPath, locations);
    }
}
