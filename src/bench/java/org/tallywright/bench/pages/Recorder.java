package org.tallywright.bench.pages;

import java.sql.Connection;
import java.util.List;
import java.util.Set;
import javax.sql.DataSource;
import net.ttddyy.dsproxy.ExecutionInfo;
import net.ttddyy.dsproxy.QueryInfo;
import net.ttddyy.dsproxy.listener.MethodExecutionContext;
import net.ttddyy.dsproxy.listener.MethodExecutionListener;
import net.ttddyy.dsproxy.listener.QueryExecutionListener;
import net.ttddyy.dsproxy.support.ProxyDataSourceBuilder;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.config.BeanPostProcessor;

/** Stands between the application and its pool and notes, while asked to, what web requests say to the database. */
final class Recorder implements BeanPostProcessor, QueryExecutionListener, MethodExecutionListener {
    private static final Set<String> KEPT = Set.of("commit", "rollback", "setAutoCommit", "setReadOnly", "close");

    private volatile @Nullable Statements tape;

    void start(Statements fresh) {
        tape = fresh;
    }

    void stop() {
        tape = null;
    }

    @Override
    public Object postProcessAfterInitialization(Object bean, String name) {
        return bean instanceof DataSource source
                ? ProxyDataSourceBuilder.create(source)
                        .listener(this)
                        .methodListener(this)
                        .build()
                : bean;
    }

    @Override
    public void beforeQuery(ExecutionInfo info, List<QueryInfo> queries) {}

    @Override
    public void afterQuery(ExecutionInfo info, List<QueryInfo> queries) {
        Statements now = tape();
        if (now != null) {
            queries.forEach(
                    query -> now.statement(info.getConnectionId(), query.getQuery(), query.getParametersList()));
        }
    }

    @Override
    public void beforeMethod(MethodExecutionContext call) {}

    @Override
    public void afterMethod(MethodExecutionContext call) {
        Statements now = tape();
        if (now != null
                && call.getTarget() instanceof Connection
                && KEPT.contains(call.getMethod().getName())) {
            Object[] args = call.getMethodArgs();
            now.method(
                    call.getConnectionInfo().getConnectionId(),
                    call.getMethod().getName(),
                    args == null ? new Object[0] : args.clone());
        }
    }

    private @Nullable Statements tape() {
        Statements now = tape;
        return now != null && Thread.currentThread().getName().startsWith("http-nio") ? now : null;
    }
}
