package org.tallywright.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationManager;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerExecutionChain;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.util.ServletRequestPathUtils;

/**
 * Decides by the {@link Access} annotation of the handler that will serve the request. A path that no handler serves
 * is let through for signed-in people, who get the "not here" page; everybody else is sent to sign in.
 */
@Component
class RouteAccess implements AuthorizationManager<RequestAuthorizationContext> {
    private final ObjectProvider<RequestMappingHandlerMapping> mappings;

    RouteAccess(@Qualifier("requestMappingHandlerMapping") ObjectProvider<RequestMappingHandlerMapping> mappings) {
        this.mappings = mappings;
    }

    @Override
    public AuthorizationDecision authorize(
            Supplier<? extends @Nullable Authentication> who, RequestAuthorizationContext context) {
        SignedIn me = signedIn(who.get());
        HandlerMethod handler = handlerOf(context.getRequest());
        if (handler == null) {
            return new AuthorizationDecision(me != null);
        }
        Access access = accessOf(handler);
        boolean granted = access != null && (access.open() || (me != null && me.is(access.value())));
        return new AuthorizationDecision(granted);
    }

    static @Nullable Access accessOf(HandlerMethod handler) {
        Access own = AnnotatedElementUtils.findMergedAnnotation(handler.getMethod(), Access.class);
        return own != null ? own : AnnotatedElementUtils.findMergedAnnotation(handler.getBeanType(), Access.class);
    }

    private static @Nullable SignedIn signedIn(@Nullable Authentication authentication) {
        return authentication != null && authentication.getPrincipal() instanceof SignedIn me ? me : null;
    }

    private @Nullable HandlerMethod handlerOf(HttpServletRequest request) {
        try {
            ServletRequestPathUtils.parseAndCache(request);
            HandlerExecutionChain chain = mappings.getObject().getHandler(request);
            return chain != null && chain.getHandler() instanceof HandlerMethod method ? method : null;
        } catch (Exception noSuchRoute) {
            // Another method, media type or a malformed path: the dispatcher answers it with 4xx.
            return null;
        }
    }
}
