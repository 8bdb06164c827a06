package org.tallywright.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.modulith.ApplicationModule;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;

/**
 * A view reads only tables that its module may know: its own, or those of modules that its package-info lists. The
 * database is asked what a view uses; who owns a table is the module named by the migration that created it.
 */
@AppTest
class ViewOwnershipTest {
    private static final Pattern CREATED = Pattern.compile("(?im)^create table (\\w+)");
    private static final Pattern VIEW = Pattern.compile("(?i)create (?:or replace )?(?:materialized )?view (\\w+)");

    /** Modules whose tables lie in a migration of another name, and the names of early ones. */
    private static final Map<String, String> ELSEWHERE =
            Map.of("audit_entry", "trail", "setup_code", "setup", "review", "costing");

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Test
    void viewsReadOnlyWhatTheirModuleMayKnow() throws Exception {
        Map<String, String> owners = owners();
        List<String> wrong = new ArrayList<>();
        for (Resource file : files("classpath:db/view/*.sql")) {
            String module = String.valueOf(file.getFilename()).replaceFirst("R__([a-z]+).*", "$1");
            Matcher view = VIEW.matcher(text(file));
            assertThat(view.find()).as("%s creates a view", file.getFilename()).isTrue();
            wrong.addAll(foreign(module, view.group(1), owners));
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void findsAViewThatReadsWhatItsModuleMayNotKnow() throws Exception {
        Map<String, String> owners = owners();
        List<String> wrong = transaction.execute(status -> {
            status.setRollbackOnly();
            jdbc.sql("create view planted_peek as select c.name, w.wage_amount from client c cross join wage w")
                    .update();
            return foreign("clients", "planted_peek", owners);
        });
        assertThat(wrong).containsExactly("planted_peek of clients reads wage of people");
    }

    /** What a view of that module reads beyond its own tables and those of the modules it may know. */
    private List<String> foreign(String module, String view, Map<String, String> owners) {
        Set<String> known = new HashSet<>(allowed(module));
        known.add(module);
        List<String> foreign = new ArrayList<>();
        for (String used : used(view)) {
            String owner = owners.getOrDefault(used, "view " + used);
            if (!known.contains(owner)) {
                foreign.add(view + " of " + module + " reads " + used + " of " + owner);
            }
        }
        return foreign;
    }

    @Test
    void everyTableHasAnOwnerAmongTheModules() throws Exception {
        Map<String, String> owners = owners();
        for (String table : jdbc.sql(
                        "select relname from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'"
                                + " and relname not like 'spring_session%' and relname <> 'flyway_schema_history'")
                .query(String.class)
                .list()) {
            assertThat(owners).as(table).containsKey(table);
            assertThat(allowed(owners.get(table)))
                    .as("%s of %s", table, owners.get(table))
                    .isNotNull();
        }
    }

    private static Map<String, String> owners() throws IOException {
        Map<String, String> owners = new HashMap<>();
        for (Resource file : files("classpath:db/migration/*.sql")) {
            String module = String.valueOf(file.getFilename()).replaceFirst("V\\d+__([a-z]+).*", "$1");
            Matcher table = CREATED.matcher(text(file));
            while (table.find()) {
                owners.put(table.group(1), ELSEWHERE.getOrDefault(table.group(1), module));
            }
        }
        return owners;
    }

    private Set<String> used(String view) {
        return new HashSet<>(jdbc.sql("""
                        select distinct used.relname from pg_rewrite r join pg_depend d on d.objid = r.oid and d.classid = 'pg_rewrite'::regclass
                        join pg_class used on used.oid = d.refobjid and d.refclassid = 'pg_class'::regclass
                        where r.ev_class = ?::regclass and used.oid <> r.ev_class""").param(view).query(String.class).list());
    }

    private static List<String> allowed(String module) {
        ApplicationModule listed;
        try {
            listed =
                    Class.forName("org.tallywright." + module + ".package-info").getAnnotation(ApplicationModule.class);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException("no module " + module, e);
        }
        return listed == null ? List.of() : Arrays.asList(listed.allowedDependencies());
    }

    private static Resource[] files(String pattern) throws IOException {
        return new PathMatchingResourcePatternResolver().getResources(pattern);
    }

    private static String text(Resource file) throws IOException {
        return file.getContentAsString(StandardCharsets.UTF_8);
    }
}
