package org.tallywright.bench.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Several users at once, each with a session of its own and no pause between requests. */
final class ManyUsers {
    private ManyUsers() {}

    static Times measure(Page page, List<Visitor> visitors, int each) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(visitors.size());
        try {
            List<Callable<Times>> users = new ArrayList<>();
            for (Visitor visitor : visitors) {
                users.add(() -> {
                    Times times = new Times();
                    for (int n = 0; n < each; n++) {
                        long start = System.nanoTime();
                        page.visit(visitor);
                        times.add(System.nanoTime() - start);
                    }
                    return times;
                });
            }
            Times all = new Times();
            for (Future<Times> user : threads.invokeAll(users)) {
                all.addAll(user.get());
            }
            return all;
        } finally {
            threads.shutdownNow();
        }
    }
}
