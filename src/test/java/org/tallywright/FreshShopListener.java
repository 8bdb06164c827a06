package org.tallywright;

import jakarta.servlet.Filter;
import java.util.IdentityHashMap;
import java.util.Map;
import org.springframework.context.ApplicationContext;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.test.context.TestContext;
import org.springframework.test.context.support.AbstractTestExecutionListener;
import org.springframework.test.context.transaction.TransactionalTestExecutionListener;
import org.springframework.test.util.ReflectionTestUtils;

/** Empties the shop and sets the clock back before a test, ahead of the transaction that a test may open. */
class FreshShopListener extends AbstractTestExecutionListener {
    private static final Map<CsrfFilter, Object> OWN_TOKENS = new IdentityHashMap<>();

    @Override
    public int getOrder() {
        return TransactionalTestExecutionListener.ORDER - 1;
    }

    @Override
    public void beforeTestClass(TestContext test) {
        refresh(test);
    }

    @Override
    public void beforeTestMethod(TestContext test) {
        if (!test.getTestClass().isAnnotationPresent(KeepsRows.class)) {
            refresh(test);
        }
    }

    private static void refresh(TestContext test) {
        test.getApplicationContext().getBean(DatabaseReset.class).emptyShop();
        test.getApplicationContext().getBean(TestClock.class).reset();
        keepFormTokensInTheirCookie(test.getApplicationContext());
    }

    /**
     * The first request {@code with(csrf())} puts a repository of its own into the filter for good, and that one opens a
     * session for everybody who reads a page. The application's own is put back.
     */
    private static void keepFormTokensInTheirCookie(ApplicationContext context) {
        for (Filter filter : context.getBean(SecurityFilterChain.class).getFilters()) {
            if (filter instanceof CsrfFilter csrf) {
                Object now = ReflectionTestUtils.getField(csrf, "tokenRepository");
                OWN_TOKENS.putIfAbsent(csrf, now);
                ReflectionTestUtils.setField(csrf, "tokenRepository", OWN_TOKENS.get(csrf));
            }
        }
    }
}
