package org.tallywright.web;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Who may use a route. On the handler or its controller, the handler's wins; a route without it is refused for all. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
public @interface Access {
    Role[] value() default {};

    /** Also without signing in: sign-in, set-up, invitation, client link. */
    boolean open() default false;
}
