package org.tallywright;

import org.springframework.test.context.TestContext;
import org.springframework.test.context.support.AbstractTestExecutionListener;
import org.springframework.test.context.transaction.TransactionalTestExecutionListener;

/** Empties the shop and sets the clock back before a test, ahead of the transaction that a test may open. */
class FreshShopListener extends AbstractTestExecutionListener {
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
    }
}
