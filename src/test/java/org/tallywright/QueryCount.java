package org.tallywright;

import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import net.ttddyy.dsproxy.ExecutionInfo;
import net.ttddyy.dsproxy.QueryInfo;
import net.ttddyy.dsproxy.listener.QueryExecutionListener;
import net.ttddyy.dsproxy.support.ProxyDataSource;
import net.ttddyy.dsproxy.support.ProxyDataSourceBuilder;
import org.springframework.beans.factory.config.BeanPostProcessor;

/**
 * The SQL statements that a piece of work sends from its own thread, such as a request by MockMvc:
 * {@code QueryCount.of(() -> mvc.perform(get("/jobs")))}. Sees every statement, of JPA and of plain JDBC.
 */
public class QueryCount implements BeanPostProcessor {
    private static final ThreadLocal<List<String>> SEEN = new ThreadLocal<>();

    /** Anything that may throw. */
    public interface Work {
        void run() throws Exception;
    }

    /** Every statement, in order. */
    public static List<String> of(Work work) throws Exception {
        List<String> seen = new ArrayList<>();
        SEEN.set(seen);
        try {
            work.run();
        } finally {
            SEEN.remove();
        }
        return seen;
    }

    @Override
    public Object postProcessAfterInitialization(Object bean, String name) {
        return bean instanceof DataSource source && !(bean instanceof ProxyDataSource)
                ? ProxyDataSourceBuilder.create(source)
                        .listener(new Listening())
                        .build()
                : bean;
    }

    private static final class Listening implements QueryExecutionListener {
        @Override
        public void beforeQuery(ExecutionInfo execution, List<QueryInfo> queries) {}

        @Override
        public void afterQuery(ExecutionInfo execution, List<QueryInfo> queries) {
            List<String> seen = SEEN.get();
            if (seen != null) {
                queries.forEach(query -> seen.add(query.getQuery().replaceAll("\\s+", " ")));
            }
        }
    }
}
